// A class: a note and tasks that a teacher sends with a kit, and the ticks of whoever does them.

import assert from "node:assert/strict";
import { assertAccessible } from "./support/axe.js";
import { drawn, open } from "./support/launch.js";
import { controls, overflow } from "./support/layout.js";
import { visits } from "./support/visit.js";
import { hostAt, sharedLink } from "./support/washpath.js";

const visit = visits();

const press = (page, name) => page.getByRole("button", { name, exact: true }).click();
const guest = (page) => page.getByRole("region", { name: "A kit came with this link" });

const NOTE = "Half an hour, on “scrap” paper & <b>no black</b>.";
const TASKS = ["find three greys", "the darkest mix you can lay", "<script>alert(1)</script>"];

async function setTasks(page, note = NOTE, tasks = TASKS) {
  await press(page, "Share");
  const fold = page.locator("#class summary");
  if (!(await page.locator("#class").evaluate((fold) => fold.open))) await fold.click();
  await page.getByLabel("Note, up to 280").fill(note);
  await page.getByLabel("Tasks, one per line").fill(tasks.join("\n"));
  await page.getByLabel("Note, up to 280").click();
}

visit("tasks travel with the link; ticks stay with the kit on this device", {}, async ({ page, visitor, address }) => {
  const before = await (await press(page, "Share"), sharedLink(page));
  await page.keyboard.press("Escape");
  // A class's kit has a name of its own, so that it needs none to be told from the visitor's.
  await page.getByLabel("Title of the kit").fill("Tuesday class");
  await page.getByLabel("Title of the kit").press("Enter");
  await setTasks(page);
  const sent = await sharedLink(page);
  assert.ok(sent.length > before.length);
  await page.keyboard.press("Escape");
  assert.match(await page.locator("#brief").textContent(), /Tasks: 0 of 3 done/);

  const other = await visitor.browser().newContext();
  try {
    const { page: theirs, log } = await open(other, `${address}#${sent.split("#")[1]}`);
    await guest(theirs).waitFor();
    assert.ok(await theirs.locator("#brief").isHidden(), "their own kit has no tasks");
    const said = await guest(theirs).textContent();
    for (const text of [NOTE, ...TASKS]) assert.ok(said.includes(text), text);
    assert.equal(await guest(theirs).locator("script, b").count(), 0);
    await guest(theirs).getByLabel("the darkest mix").check();
    await guest(theirs).getByRole("button", { name: "Pack the shared kit" }).click();
    const brief = theirs.locator("#brief");
    assert.match(await brief.textContent(), /Tasks: 1 of 3 done/);
    assert.ok(await brief.getByLabel("the darkest mix").isChecked());
    await brief.getByLabel("find three greys").check();
    assert.match(await brief.textContent(), /Tasks: 2 of 3 done/);
    await theirs.reload();
    await drawn(theirs);
    assert.match(await brief.textContent(), /Tasks: 2 of 3 done/);
    await press(theirs, "Share");
    assert.equal((await sharedLink(theirs)).split("#")[1], sent.split("#")[1], "ticks are not in the link");
    assert.deepEqual(log.complaints, []);
  } finally {
    await other.close();
  }
});

visit("tasks are a step that is undone, kept for the next visit, and taken away again", {}, async ({ page }) => {
  await setTasks(page);
  await page.keyboard.press("Escape");
  await press(page, "Undo");
  await press(page, "Undo");
  assert.ok(await page.locator("#brief").isHidden());
  await press(page, "Redo");
  await press(page, "Redo");
  await page.reload();
  await drawn(page);
  assert.match(await page.locator("#brief").textContent(), /find three greys/);
  await setTasks(page, "", []);
  await page.keyboard.press("Escape");
  assert.ok(await page.locator("#brief").isHidden());
});

visit("what goes beyond the limits is said, and the link stays", {}, async ({ page }) => {
  await setTasks(page);
  const good = await sharedLink(page);
  const tasks = page.getByLabel("Tasks, one per line");
  await tasks.fill(Array(9).fill("x").join("\n"));
  await page.getByLabel("Note, up to 280").click();
  assert.match(await page.locator("#class-said").textContent(), /there are 9 tasks, and room for 8/i);
  await tasks.fill("x".repeat(121));
  await page.getByLabel("Note, up to 280").click();
  assert.match(await page.locator("#class-said").textContent(), /longer than 120/);
  assert.equal(await sharedLink(page), good);
});

visit("a link that programs may cut is told of, without a code, and a file is offered", {}, async ({ page }) => {
  await setTasks(
    page,
    "é".repeat(280),
    Array.from({ length: 8 }, (_, i) => `${i} ${"ä".repeat(110)}`),
  );
  await hostAt(page, "https://school.example/");
  assert.ok((await sharedLink(page)).length > 2000);
  assert.match(await page.locator("#share-said").textContent(), /\d,\d{3} characters: mail and chat programs may cut/);
  assert.ok(await page.locator("#share-code").isHidden());
  assert.match(await page.locator("#share-code-said").textContent(), /No QR code/);
  const [download] = await Promise.all([page.waitForEvent("download"), press(page, "Save the kit as a file")]);
  assert.equal(download.suggestedFilename(), "north-sea-harbour-october-kit.json");
});

for (const size of ["desktop", "phone"]) {
  visit(`tasks are in reach and free of faults, ${size}`, { size }, async ({ page, address }) => {
    const { width } = page.viewportSize();
    await setTasks(page);
    await assertAccessible(page);
    assert.deepEqual(
      (await controls(page)).filter(({ covered }) => covered),
      [],
    );
    const sent = await sharedLink(page);
    await page.keyboard.press("Escape");
    await page.locator("#brief").getByLabel("find three greys").check();
    await assertAccessible(page);
    assert.ok((await overflow(page, width)) <= 0);
    await setTasks(page, "", []);
    await page.keyboard.press("Escape");
    await page.goto(`${address}#${sent.split("#")[1]}`);
    await guest(page).waitFor();
    assert.ok(await guest(page).getByLabel("find three greys").isChecked());
    await assertAccessible(page);
    assert.ok((await overflow(page, width)) <= 0);
  });
}
