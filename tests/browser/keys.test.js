// Everything by keyboard, and said aloud.

import assert from "node:assert/strict";
import { visits } from "./support/visit.js";
import { ends, readout, shareOf } from "./support/washpath.js";

const visit = visits();

const said = (page) => page.locator("#wheel-said").textContent();
const focused = (page) => page.evaluate(() => document.activeElement.id || document.activeElement.textContent.trim());

/** Presses Tab until it stands on the element of this id; answers what it passed. */
async function tabTo(page, id) {
  const passed = [];
  for (let i = 0; i < 60; i += 1) {
    await page.keyboard.press("Tab");
    const now = await focused(page);
    if (now === id) return passed;
    passed.push(now);
  }
  assert.fail(`Tab does not reach ${id}: ${passed.join(", ")}`);
}

/** Goes round the wheel until it says this code, and takes the paint. */
async function take(page, code, key = "ArrowUp") {
  for (let i = 0; i < 20; i += 1) {
    await page.keyboard.press(key);
    if (!(await said(page)).endsWith(`, ${code}`)) continue;
    const name = await said(page);
    await page.keyboard.press("Enter");
    return name.replace(/, (?=[^,]*$)/, " ");
  }
  return assert.fail(`the wheel never says ${code}`);
}

visit("Tab reaches the wheel, and keys choose both ends", {}, async ({ page }) => {
  await tabTo(page, "wheel-path");
  assert.ok(await page.locator(".for-keys").isVisible(), "the keys are told to who uses them");
  const a = await take(page, "PY184");
  const b = await take(page, "PG18", "ArrowDown");
  assert.deepEqual(await ends(page), [a, b]);
  assert.match(await page.locator("#said").textContent(), /is B$/);
});

visit("up and down go once round all paints of the kit", {}, async ({ page }) => {
  await page.locator("#wheel-path").focus();
  const heard = async (key) => {
    const names = [];
    for (let i = 0; i < 14; i += 1) {
      await page.keyboard.press(key);
      names.push(await said(page));
    }
    return names;
  };
  const up = await heard("ArrowUp");
  assert.equal(new Set(up).size, 14, "fourteen paints");
  await page.keyboard.press("ArrowUp");
  assert.equal(await said(page), up[0], "and round again");
  const down = await heard("ArrowDown");
  assert.deepEqual(down.slice(0, 13), up.slice(1).toReversed());
});

visit("left and right move along the path and say the mix", {}, async ({ page }) => {
  await page.locator("#wheel-path").focus();
  await page.keyboard.press("Home");
  assert.equal((await readout(page)).ratio, "1 : 0");
  let last = 0;
  for (let i = 0; i < 8; i += 1) {
    await page.keyboard.press("Shift+ArrowRight");
    const { ratio, parts, words, load } = await readout(page);
    assert.ok(shareOf(ratio) >= last, `${ratio} after a share of ${last}`);
    last = shareOf(ratio);
    assert.equal(await said(page), `${parts}, ${load}: ${words}`);
  }
  assert.ok(last > 0.05);
  await page.keyboard.press("ArrowLeft");
  assert.ok(shareOf((await readout(page)).ratio) <= last);
  await page.keyboard.press("End");
  assert.equal((await readout(page)).ratio, "0 : 1");
  await page.keyboard.press("ArrowRight");
  assert.equal((await readout(page)).ratio, "0 : 1", "the path ends there");
  for (let i = 0; i < 9; i += 1) await page.keyboard.press("PageUp");
  assert.match((await readout(page)).load, /masstone/);
  await page.keyboard.press("PageDown");
  assert.match(await said(page), /strong wash/);
});

visit("Home and End say where they go", {}, async ({ page }) => {
  await page.locator("#wheel-path").focus();
  await page.keyboard.press("End");
  assert.match(await said(page), /^Burnt sienna, /);
  await page.keyboard.press("Home");
  assert.match(await said(page), /^Ultramarine blue, /);
});

visit("a list chooses the same ends as the wheel", {}, async ({ page }) => {
  await page.locator("#wheel-path").focus();
  const byWheel = [await take(page, "PO73"), await take(page, "PB15:3")];
  const mix = await readout(page);
  const others = () =>
    page.locator("#tin .paint").evaluateAll(([first, second]) => [first, second].forEach((paint) => paint.click()));
  await others();
  assert.notDeepEqual(await ends(page), byWheel);
  for (const name of byWheel) await page.locator(`#tin .paint[title="${name}"]`).press("Enter");
  assert.deepEqual(await ends(page), byWheel);
  assert.deepEqual({ ...(await readout(page)), crossing: 0 }, { ...mix, crossing: 0 });
  await others();
  for (const name of byWheel) await page.locator("#shelf-list .take").filter({ hasText: name }).press("Space");
  assert.deepEqual(await ends(page), byWheel);
});

visit("arrows go through the sheet, and Tab passes it in one step", {}, async ({ page }) => {
  await page.locator('#sheet .cell[aria-label^="1:1, masstone"]').press("ArrowRight");
  for (const [key, expected] of [
    ["ArrowRight", "1:4, masstone"],
    ["ArrowDown", "1:4, strong wash"],
    ["ArrowLeft", "1:2, strong wash"],
    ["ArrowUp", "1:2, masstone"],
  ]) {
    await page.keyboard.press(key);
    const label = await page.evaluate(() => document.activeElement.getAttribute("aria-label"));
    assert.ok(label.startsWith(expected), `${key} leads to ${label}`);
    const { ratio, words } = await readout(page);
    assert.equal(label.slice(label.indexOf(": ") + 2), words);
    assert.equal(ratio.replaceAll(" ", ""), label.split(",")[0]);
  }
  await page.keyboard.press("ArrowUp");
  assert.match(
    await page.evaluate(() => document.activeElement.getAttribute("aria-label")),
    /^1:2, masstone/,
    "the sheet has an upper edge",
  );
  assert.equal(await page.locator('#sheet .cell[tabindex="0"]').count(), 1);
  await page.keyboard.press("Tab");
  assert.equal(await page.evaluate(() => Boolean(document.activeElement.closest("#sheet"))), false);
});

visit("an arrow at a row's edge stays in its row", {}, async ({ page }) => {
  await page.locator('#sheet .cell[aria-label^="B, masstone"]').press("ArrowRight");
  assert.match(await page.evaluate(() => document.activeElement.getAttribute("aria-label")), /^B, masstone/);
});

for (const [opener, dialog] of [
  ["Share", "#share-dialog"],
  ["Help", "#help"],
]) {
  visit(`Escape closes what ${opener} opens, and focus returns`, {}, async ({ page }) => {
    await page.getByRole("button", { name: opener, exact: true }).press("Enter");
    await page.locator(dialog).waitFor();
    for (let i = 0; i < 6; i += 1) {
      await page.keyboard.press("Tab");
      const outside = await page.evaluate(
        () => document.activeElement !== document.body && !document.activeElement.closest("dialog"),
      );
      assert.equal(outside, false, "Tab stays in the dialog");
    }
    await page.keyboard.press("Escape");
    assert.ok(await page.locator(dialog).isHidden());
    assert.equal((await focused(page)).toLowerCase().replace("-open", ""), opener.toLowerCase());
  });
}

visit("the first Tab offers a way past the header", {}, async ({ page }) => {
  await page.keyboard.press("Tab");
  assert.equal(await focused(page), "Skip to the mix");
  await page.waitForFunction(() => document.activeElement.getBoundingClientRect().top >= 0);
  await page.keyboard.press("Enter");
  assert.equal(await focused(page), "mix");
  await page.keyboard.press("Tab");
  assert.ok(await page.evaluate(() => Boolean(document.activeElement.closest("#mix"))));
});

visit("an end that is chosen by keyboard keeps focus", {}, async ({ page }) => {
  const second = page.locator("#ends .end").nth(1);
  await second.press("Enter");
  assert.equal(await second.getAttribute("aria-pressed"), "true");
  assert.ok(await second.evaluate((node) => node === document.activeElement));
  await page.locator("#tin .paint").first().press("Enter");
  assert.match((await ends(page))[1], /PY184$/);
  assert.ok(
    await page
      .locator("#tin .paint")
      .first()
      .evaluate((node) => node === document.activeElement),
  );
});
