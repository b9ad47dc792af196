// What stays between visits, and the page without it.

import assert from "node:assert/strict";
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
