// What stays between visits, and the page without it.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { ends, kit, readout, slide } from "./support/washpath.js";
import { drawn } from "./support/launch.js";
import { visits } from "./support/visit.js";

const visit = visits();

/** Until the page has written: it waits for a pause in what one does. */
const kept = (page, sign) => page.waitForFunction((sign) => localStorage.getItem("washpath")?.includes(sign), sign);

const everything = async (page) => ({
  kit: await kit(page),
  ends: await ends(page),
  readout: await readout(page),
  dim: await page.getByRole("button", { name: "Dim" }).getAttribute("aria-pressed"),
  shelf: await page.getByLabel("Show the shelf on the wheel").isChecked(),
});

visit("a reload keeps kit, ends, mix and settings", {}, async ({ page }) => {
  const first = await everything(page);
  await page.locator("#tin .paint").first().click();
  await slide(page, "Load", 300);
  await page.getByRole("button", { name: "Dim" }).click();
  await page.getByLabel("Show the shelf on the wheel").check();
  await page.getByLabel("Paper").selectOption({ label: "Cream" });
  const title = page.getByLabel("Title of the kit");
  await title.fill("Æbleskov, σήμερα");
  await title.press("Enter");
  await page.locator("#sheet .cell").nth(12).click();
  const before = await everything(page);
  for (const part of Object.keys(first)) assert.notDeepEqual(before[part], first[part], part);
  await kept(page, '"dim":true');
  await page.waitForTimeout(400);
  await page.reload();
  await drawn(page);
  assert.deepEqual(await everything(page), before);
});

const deny = () => {
  for (const verb of ["getItem", "setItem", "removeItem"]) {
    Storage.prototype[verb] = () => {
      throw new DOMException("denied", "SecurityError");
    };
  }
};
const denyAll = () =>
  Object.defineProperty(window, "localStorage", {
    get() {
      throw new DOMException("denied", "SecurityError");
    },
  });

for (const [how, script] of [["its verbs fail", deny], ["it may not even be named", denyAll]]) {
  visit(`the page works where storage is denied: ${how}`, { script }, async ({ page }) => {
    assert.equal((await kit(page)).pans.length, 12);
    await page.locator("#tin .paint").first().click();
    assert.match((await ends(page))[0], /PY184$/);
    await page.locator("#notice").waitFor();
    assert.match(await page.locator("#notice").textContent(), /does not let the page keep anything/);
    await page.locator("#notice").getByRole("button", { name: "Close" }).click();
    await slide(page, "Load", 300);
    await page.waitForTimeout(400);
    assert.ok(await page.locator("#notice").isHidden(), "it is said once");
  });
}

visit("a full store is said, and what follows is kept once there is room", {}, async ({ page }) => {
  await page.evaluate(() => {
    const { setItem } = Storage.prototype;
    Storage.prototype.setItem = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
    globalThis.makeRoom = () => (Storage.prototype.setItem = setItem);
  });
  await page.locator("#tin .paint").first().click();
  await page.locator("#notice").waitFor();
  assert.match(await page.locator("#notice").textContent(), /no room left/);
  await page.evaluate(() => globalThis.makeRoom());
  await slide(page, "Load", 300);
  await kept(page, '"load":0.25');
});

visit("a damaged store brings the state before it, and the damage is handed out", {}, async ({ page }) => {
  const title = page.getByLabel("Title of the kit");
  await title.fill("Quay");
  await title.press("Enter");
  await kept(page, '"ends"');
  await page.reload();
  await drawn(page);
  const good = await page.evaluate(() => localStorage.getItem("washpath"));
  for (const text of [good.slice(0, 40), good.replace(/"kit":"....../, '"kit":"AQzzzz')]) {
    await page.evaluate((text) => localStorage.setItem("washpath", text), text);
    await page.reload();
    await drawn(page);
    assert.equal((await kit(page)).title, "Quay");
    assert.match(await page.locator("#notice").textContent(), /could not be read/);
    const [file] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save what was kept" }).click()]);
    assert.equal(await readFile(await file.path(), "utf8"), text);
    await page.evaluate((text) => localStorage.setItem("washpath", text), good);
  }
});

visit("closing the page at once loses nothing", {}, async ({ page }) => {
  const title = page.getByLabel("Title of the kit");
  await title.fill("Written late");
  await title.press("Enter");
  await page.reload();
  await drawn(page);
  assert.equal((await kit(page)).title, "Written late");
});

visit("two tabs at once: neither's kit is lost", {}, async ({ page, visitor, address }) => {
  const other = await visitor.newPage();
  await other.goto(address);
  await drawn(other);
  const rename = async (page, name) => {
    await page.getByLabel("Title of the kit").fill(name);
    await page.getByLabel("Title of the kit").press("Enter");
  };
  await rename(other, "Of the other tab");
  await page.locator("#notice").waitFor();
  assert.match(await page.locator("#notice").textContent(), /Another tab changed/);
  await rename(page, "Of this tab");
  await page.locator("#kits option", { hasText: "Of the other tab" }).waitFor({ state: "attached" });
  await page.reload();
  await drawn(page);
  assert.equal((await kit(page)).title, "Of this tab");
  assert.deepEqual(await page.locator("#kits option").allTextContents(), ["Of this tab", "Of the other tab"]);
});

visit("two tabs at once: a record of the other tab's own paint comes in with its paint", {}, async ({ page, visitor, address }) => {
  const other = await visitor.newPage();
  await other.goto(address);
  await drawn(other);
  await other.locator(".switch").getByRole("button", { name: "Swatches" }).click();
  await other.getByRole("button", { name: "New from the mix at hand" }).click();
  await other.locator("#own-form [name=name]").fill("Harbour grey");
  await other.getByRole("button", { name: "Put it on my shelf" }).click();
  await other.locator("#mine .take").click();
  await other.locator("#record .typed input[type=text]").fill("lab(40 2 -6)");
  await other.getByRole("button", { name: "Record it" }).click();
  await page.locator("#notice").waitFor();
  await page.getByLabel("Title of the kit").fill("Of this tab");
  await page.getByLabel("Title of the kit").press("Enter");
  await page.locator(".switch").getByRole("button", { name: "Swatches" }).click();
  await page.locator("#log tbody tr").waitFor();
  assert.match(await page.locator("#mine").textContent(), /Harbour grey/);
});

visit("when the core breaks the page says so and starts again from what is kept", {}, async ({ page, log }) => {
  await page.evaluate(() => setTimeout(() => {
    throw new WebAssembly.RuntimeError("unreachable");
  }));
  await page.locator("#notice").getByRole("button", { name: "Start again" }).click();
  await drawn(page);
  assert.match(log.complaints.join(), /unreachable/);
  log.complaints.length = 0;
});

const garbage = {
  "no JSON": "{",
  "no object": "7",
  "nothing": "null",
  "a list": "[1,2]",
  "a kit that is none": '{"kit":{"pans":7}}',
  "a damaged kit and unknown paints": '{"kit":"AQwAA","ends":[99999,"x"],"share":"NaN","load":-3}',
  "wrong kinds throughout": '{"kit":12,"ends":{"0":1},"share":{},"load":null,"showShelf":"yes","dim":"no"}',
  "too few ends": '{"ends":[]}',
  "numbers beyond their ranges": '{"share":1e9,"load":1e-9,"ends":[1,72]}',
};
visit("storage that holds something else is passed over", {}, async ({ page }) => {
  for (const [what, text] of Object.entries(garbage)) {
    await page.evaluate((text) => localStorage.setItem("washpath", text), text);
    await page.reload();
    await drawn(page);
    assert.equal((await kit(page)).title, "North Sea harbour, October", what);
    await page.locator("#tin .paint").first().click();
    await page.locator("#tin .paint").last().click();
    const { ratio, numbers } = await readout(page);
    assert.match(ratio, /^\d+ : \d+$/, what);
    assert.match(numbers["Value L*"], /^\d+$/, what);
    // Until the page has written once more, so that it cannot write over the next.
    await kept(page, '"ends"');
    await page.waitForTimeout(250);
  }
});
