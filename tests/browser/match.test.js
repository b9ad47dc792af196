// A colour seen, and the recipes that come nearest.

import assert from "node:assert/strict";
import { visits } from "./support/visit.js";
import { ends, readout, slide } from "./support/washpath.js";

const visit = visits();

const press = (page, name) => page.getByRole("button", { name, exact: true }).click();
const open = (page) => page.locator(".switch").getByRole("button", { name: "Match" }).click();
const recipes = (page) => page.locator("#recipes li");
const errors = async (page) =>
  (await recipes(page).locator(".traits").allTextContents()).map((text) => Number(text.match(/off by (\d+\.\d)/)[1]));

/** Types a colour and waits for its recipes. */
async function seek(page, colour) {
  const before = await page.locator("#recipes").textContent();
  await page.locator("#target-text").fill(colour);
  await page.waitForFunction(
    (before) => document.getElementById("recipes").textContent !== before && document.querySelector("#recipes li"),
    before,
  );
}

visit("a typed colour gets up to ten recipes, the nearest first, and one goes on the path", {}, async ({ page }) => {
  await open(page);
  await page
    .locator("#recipes")
    .getByText(/Set a colour to match/)
    .waitFor();
  await seek(page, "lab(45 -12 10)");
  const found = await errors(page);
  assert.ok(found.length > 1 && found.length <= 10, `${found.length} recipes`);
  // Within what is known of real paint, a few CIEDE2000, fewer paints go first.
  const counts = (await recipes(page).locator(".name").allTextContents()).map((text) => text.split(" + ").length);
  const doubt = Number((await recipes(page).first().textContent()).match(/±\s(\d+)/)[1]);
  const isInOrder = (i) => counts[i] > counts[i - 1] || found[i] >= found[i - 1];
  found.forEach((error, i) =>
    assert.ok(i === 0 || isInOrder(i) || error > Math.min(...found) + doubt - 0.5, `${found}, paints ${counts}`),
  );
  assert.match(await recipes(page).first().textContent(), /wash|masstone.*load \d.*off by \d+\.\d ±\s\d+/);
  await recipes(page).first().locator(".take").click();
  const { numbers, words } = await readout(page);
  assert.ok(Math.abs(Number(numbers["Value L*"]) - 45) <= 3, `L* ${numbers["Value L*"]}`);
  assert.match(words, /green/);
});

visit("a mix's own colour brings its recipe back, or one as near", {}, async ({ page }) => {
  await page.locator('#sheet .cell[aria-label^="2:1, medium wash"]').click();
  await open(page);
  await press(page, "The mix at hand");
  await recipes(page).first().waitFor();
  assert.ok(Math.min(...(await errors(page))) <= 0.5, `${await errors(page)}`);
});

visit("colours are typed in several notations, and refused in words", {}, async ({ page }) => {
  await open(page);
  const said = () => page.locator("#target-said").textContent();
  const first = {
    "#d97b2c": /orange/i,
    "lch(50 40 270)": /blue/i,
    "L*80 a*0 b*0": /grey/i,
    "rgb(10, 120, 60)": /green/i,
  };
  for (const [text, words] of Object.entries(first)) {
    await page.locator("#target-text").fill(text);
    assert.match(await said(), words, text);
  }
  for (const wrong of ["#12", "lab(500 0 0)", "teal?", "lab(50 x 3)"]) {
    await page.locator("#target-text").fill(wrong);
    assert.doesNotMatch(await said(), /^(Dark|Light|Muted|Bright|Pale|Grey|Green)/, wrong);
    assert.ok((await said()).length > 10);
  }
  await page.locator("#target-text").fill("");
  assert.match(await said(), /recipes/);
});

visit("what no paint of the kit reaches is said", {}, async ({ page }) => {
  await open(page);
  await seek(page, "lab(8 0 0)");
  assert.match(await page.locator("#recipes").textContent(), /No recipe is exact, as the colour is darker/);
  await seek(page, "lab(60 95 60)");
  assert.match(
    await page.locator("#recipes").textContent(),
    /No recipe is exact, as the colour is (brighter|of a hue)/,
  );
});

visit("recipes may come from what is owned or from the whole shelf", {}, async ({ page }) => {
  await open(page);
  await seek(page, "lab(60 -45 10)");
  const kit = Math.min(...(await errors(page)));
  await page.getByLabel("Recipes from").selectOption("owned");
  await page.waitForFunction(() => document.getElementById("recipes").textContent.includes("Mark the paints you own"));
  await page.getByLabel("Recipes from").selectOption("shelf");
  await page.waitForFunction(() => document.querySelector("#recipes li"), null, { timeout: 60_000 });
  // Within half a CIEDE2000 fewer paints go first.
  assert.ok(Math.min(...(await errors(page))) <= kit + 0.5, "the shelf comes as near as the kit");
});

visit("on a phone the wheel comes into view to be pointed at, then the answer", { size: "phone" }, async ({ page }) => {
  await page.locator(".tabs").getByRole("button", { name: "Match" }).tap();
  const inView = (selector) =>
    page.locator(selector).evaluate((node) => {
      const { top, bottom } = node.getBoundingClientRect();
      return top >= 0 && bottom <= innerHeight - 60;
    });
  assert.ok(await inView("#target"), "what was asked for comes first");
  await page.getByRole("button", { name: "From the wheel" }).tap();
  const box = await page.locator("#wheel-path").boundingBox();
  assert.ok(box.y >= 0 && box.y + box.height <= 844 - 60, `the wheel is from ${box.y} on`);
  await page.touchscreen.tap(box.x + 0.3 * box.width, box.y + 0.5 * box.height);
  assert.match(await page.locator("#target-said").textContent(), /green/i);
  assert.ok(await inView("#target"), "the answer is in view");
});

visit("hue and chroma are picked on the wheel, the value stays", {}, async ({ page }) => {
  await open(page);
  await seek(page, "lab(70 5 5)");
  await press(page, "From the wheel");
  const before = await ends(page);
  const box = await page.locator("#wheel-path").boundingBox();
  await page.mouse.click(box.x + 0.3 * box.width, box.y + 0.5 * box.height);
  const said = await page.locator("#target-said").textContent();
  assert.match(said, /green.*: L\* 70, a\* -\d+/i);
  assert.deepEqual(await ends(page), before, "no end is chosen meanwhile");
  await slide(page, "Value L*", 40);
  assert.match(await page.locator("#target-said").textContent(), /L\* 40/);
});
