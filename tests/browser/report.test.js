// The report on the kit, the next paint, what one owns, several kits.

import assert from "node:assert/strict";
import { visits } from "./support/visit.js";
import { pans } from "./support/washpath.js";

const visit = visits();
const hosted = visits({ hosted: true });

const press = (page, name) => page.getByRole("button", { name, exact: true }).click();

/** Opens the report and answers its sentences once they stand. */
async function report(page) {
  await press(page, "Report");
  await page.locator("#report-said li").first().waitFor();
  return page.locator("#report-said li").allTextContents();
}

/** Waits until the sentences are others. */
const changed = (page, before) =>
  page
    .waitForFunction((before) => {
      const now = [...document.querySelectorAll("#report-said li")].map((line) => line.textContent);
      return now.length > 0 && JSON.stringify(now) !== JSON.stringify(before) ? now : false;
    }, before)
    .then((found) => found.jsonValue());

const near = (sentences) => Number(sentences[0].match(/Reaches (\d+)\s%/)[1]);

for (const [where, on] of [
  ["in the single file", visit],
  ["hosted", hosted],
]) {
  on(`the report stands by itself and follows the kit, ${where}`, {}, async ({ page }) => {
    const whole = await report(page);
    assert.match(
      whole[0],
      /^Reaches \d+\s% of real surface colours, \d+\s% so closely that the eye hardly sees a difference\.$/,
    );
    assert.ok(whole.some((line) => /pairs make greys, down to L\* \d+/.test(line)));
    assert.ok(whole.some((line) => /^Least lightfast: /.test(line)));
    assert.ok(whole.some((line) => /Handle with care: .*label and safety data sheet/.test(line)));
    await press(page, "Edit pans");
    await press(page, "Remove: Bismuth yellow");
    const less = await changed(page, whole);
    assert.ok(near(less) < near(whole), `without the yellow ${near(less)} of ${near(whole)} %`);
    await press(page, "Undo");
    assert.deepEqual(await changed(page, less), whole);
  });
}

visit("the page stays alive while the report is made", {}, async ({ page }) => {
  await report(page);
  const longest = await page.evaluate(async () => {
    const select = document.querySelector('[data-focus="paper"]');
    let isMade = false;
    new MutationObserver(() => (isMade = true)).observe(document.querySelector("#report-said"), { childList: true });
    let last = performance.now();
    let longest = 0;
    // Another paper: everything is computed anew, by the worker.
    select.selectedIndex = 2;
    select.dispatchEvent(new Event("change", { bubbles: true }));
    await new Promise((resolve) => requestAnimationFrame(resolve));
    last = performance.now();
    while (!isMade) {
      await new Promise((resolve) => setTimeout(resolve, 4));
      longest = Math.max(longest, performance.now() - last);
      last = performance.now();
    }
    return longest;
  });
  // The horizon alone takes the worker several times as long.
  assert.ok(longest < 400, `it stood still for ${longest.toFixed(0)} ms`);
});

visit("each paint's worth is told, and an idle double is named", {}, async ({ page }) => {
  const before = await report(page);
  await page.getByText("What each paint adds").click();
  const rows = page.locator("#worths .take");
  assert.equal(await rows.count(), 14);
  assert.match(await rows.first().textContent(), /Bismuth yellow PY184.*primary.* adds \d+\.\d\s%/);
  // Two yellows of nearly one colour.
  await page.getByLabel("Tin holds").fill("14");
  await page.getByLabel("Tin holds").press("Enter");
  await press(page, "Shelf");
  for (const code of ["PY151", "PY154"]) {
    await page.getByLabel("Find a paint").fill(code);
    await page
      .getByRole("button", { name: /^Pack / })
      .first()
      .click();
  }
  await press(page, "Report");
  const after = await changed(page, before);
  assert.ok(
    after.some((line) => /Benzimidazolone yellow.* and Benzimidazolone yellow.* are near-duplicates/.test(line)),
    after.join("\n"),
  );
});

visit("the next paint is ranked by what it is wanted for, and packed", {}, async ({ page }) => {
  await press(page, "Edit pans");
  for (const name of ["Bismuth yellow", "Viridian"]) await press(page, `Remove: ${name}`);
  await report(page);
  await page.getByText("The next paint").click();
  const rows = page.locator("#next .rows li");
  await rows.first().waitFor();
  const gains = async () =>
    (await rows.locator(".traits").allTextContents()).map((text) => Number(text.match(/\d+(\.\d+)?/)[0]));
  const colours = await gains();
  assert.deepEqual(
    colours,
    [...colours].sort((a, b) => b - a),
  );
  assert.match(await rows.first().textContent(), /yellow/i, "a kit without a clear yellow wants one");
  await page.getByLabel("What the next paint is for").selectOption("darks");
  await page.waitForFunction(() => document.querySelector("#next .traits")?.textContent.includes("deeper"));
  const name = await rows
    .first()
    .locator(".name")
    .evaluate((node) => node.firstChild.textContent.trim());
  const packed = (await pans(page)).length;
  await rows.first().getByRole("button").click();
  assert.equal((await pans(page)).length, packed + 1);
  await page.waitForFunction(
    (name) => ![...document.querySelectorAll("#next .name")].some((node) => node.textContent.startsWith(name)),
    name,
  );
});

visit("owned paints stand in for those of the kit", {}, async ({ page }) => {
  await report(page);
  await page.getByText("From what I own").click();
  await page.waitForFunction(() => document.getElementById("owned").textContent.includes("Mark the paints"));
  await press(page, "Shelf");
  for (const name of ["Ultramarine blue, PB29", "Pyrrole scarlet, PR255", "Benzimidazolone yellow H3G, PY154"]) {
    await page.getByRole("button", { name: `Own ${name}`, exact: true }).click();
  }
  await press(page, "Report");
  await page.locator("#owned li").first().waitFor();
  const rows = await page.locator("#owned li").allInnerTexts();
  assert.equal(rows.length, 13, "of fourteen paints one is owned");
  const red = rows.find((row) => row.startsWith("Pyrrole red"));
  assert.match(red, /off by \d+\.\d alone, \d+\.\d in mixes/);
  const green = rows.find((row) => row.startsWith("Viridian"));
  assert.match(green, /Nothing you own comes near: .* is off by \d\d/);
  await page.waitForFunction(() => document.getElementById("owned").textContent.includes("Benzimidazolone yellow H3G"));
  await press(page, "Turn the kit into what I own");
  const codes = new Set((await pans(page)).flatMap((pan) => pan.split("+")));
  assert.ok(codes.has("PR255") && !codes.has("PR254"), "a red that is owned stands in for a red");
  assert.ok(codes.has("PG18"), "nothing owned comes near viridian, so it stays");
  await page
    .getByText(/Paints you own have replaced the others, but for \d+ that nothing you own comes near/)
    .waitFor();
  await page.waitForFunction(() =>
    [...document.querySelectorAll("#owned li")].every((row) => row.textContent.includes("Nothing you own")),
  );
  await press(page, "Undo");
  assert.equal((await pans(page)).length, 12);
  await page.reload();
  await page.waitForSelector('html[data-whole="true"]');
  assert.equal(await page.locator('#shelf-list [aria-pressed="true"]').count(), 3, "what is owned stays");
});

visit("kits are copied, switched, thrown away and brought back", {}, async ({ page }) => {
  const title = () => page.getByLabel("Title of the kit").inputValue();
  await press(page, "Copy");
  assert.equal(await title(), "North Sea harbour, October, copy");
  await press(page, "New");
  assert.equal(await title(), "");
  assert.equal((await pans(page)).length, 0);
  const list = page.getByLabel("Kit in hand");
  await list.selectOption({ label: "North Sea harbour, October" });
  assert.equal((await pans(page)).length, 12);
  assert.deepEqual(await list.locator("option").allTextContents(), [
    "North Sea harbour, October",
    "untitled",
    "North Sea harbour, October, copy",
  ]);
  await page.reload();
  await page.waitForSelector('html[data-whole="true"]');
  assert.equal(await list.locator("option").count(), 3, "kits stay");
  await press(page, "Throw away");
  assert.equal(await list.locator("option").count(), 2);
  await page.locator("#notice").getByRole("button", { name: "Undo" }).click();
  assert.equal(await title(), "North Sea harbour, October");
  assert.equal(await list.locator("option").count(), 3);
});

visit("two kits are compared side by side", {}, async ({ page }) => {
  await press(page, "Copy");
  await press(page, "Edit pans");
  await press(page, "Remove: Bismuth yellow");
  await press(page, "Compare");
  const body = page.locator("#compare-body");
  await body.locator("table").waitFor();
  const [, mine, other] = await body.locator("tbody tr").first().locator("th, td").allTextContents();
  assert.ok(parseInt(mine, 10) < parseInt(other, 10), `${mine} against ${other}`);
  assert.match(await body.textContent(), /Only in North Sea harbour, October, copyNothing/);
  assert.match(await body.textContent(), /Only in North Sea harbour, OctoberBismuth yellow PY184/);
  await press(page, "Show both reaches on the wheel");
  assert.equal(await page.getByRole("button", { name: "Pin reach" }).getAttribute("aria-pressed"), "true");
});

visit("an empty tin is not reported on, and says so", {}, async ({ page }) => {
  await press(page, "New");
  await press(page, "Report");
  await page.waitForFunction(() =>
    document.getElementById("report-said").textContent.includes("Pack some paints to read here"),
  );
});

visit(
  "without a worker the page answers itself",
  { script: "globalThis.Worker = class { constructor() { throw new Error('none'); } };" },
  async ({ page }) => {
    assert.match((await report(page))[0], /^Reaches /);
  },
);
