// Ends that are no paint: places of the wheel, and puddles.

import assert from "node:assert/strict";
import { tap } from "./support/touch.js";
import { visits } from "./support/visit.js";
import { ends, painted, pans, pixels, readout, sharedLink, slide } from "./support/washpath.js";

const visit = visits();

/** A spot on the wheel, as parts of its width and height. */
async function spot(page, x, y) {
  const box = await page.locator("#wheel-path").boundingBox();
  return { x: box.x + x * box.width, y: box.y + y * box.height };
}

/** A greenish place between the dabs of the demo kit. */
const EMPTY = [0.35, 0.38];

const puddles = (page) =>
  page.locator("#puddles .take .name").evaluateAll((names) => names.map((name) => name.firstChild.textContent));

visit("an empty place becomes an end: the kit's nearest mix, and how near it is", {}, async ({ page }) => {
  const { x, y } = await spot(page, ...EMPTY);
  await page.mouse.click(x, y);
  const [place] = await ends(page);
  assert.match(place, /^A colour of the wheel /);
  assert.match(place, /right where you pointed|the nearest this kit comes/);
  const name = place.replace("A colour of the wheel ", "").replace(/, (right|\d+ away|the nearest).*/, "");
  assert.ok(name.includes(" + "), `the mix is told: ${name}`);
  await slide(page, "Ratio", 0);
  assert.match((await readout(page)).words, /green/, "a place among the greens");
  await page.getByRole("button", { name: "Undo" }).click();
  assert.match((await ends(page))[0], /PB29$/);
});

visit("off the wheel there is no place", {}, async ({ page }) => {
  const before = await ends(page);
  const { x, y } = await spot(page, 0.02, 0.02);
  await page.mouse.click(x, y);
  assert.deepEqual(await ends(page), before);
});

visit("with an empty tin no place is reached, and that is said", {}, async ({ page }) => {
  await page.getByRole("button", { name: "Edit pans" }).click();
  await page.getByRole("button", { name: "Empty the tin" }).click();
  const { x, y } = await spot(page, ...EMPTY);
  await page.mouse.click(x, y);
  assert.match(await page.locator("#wheel-said").textContent(), /Pack a paint first/);
});

for (const size of ["phone", "tablet"]) {
  visit(`a tap on an empty place chooses it, ${size}`, { size }, async ({ page }) => {
    await tap(page, await spot(page, ...EMPTY));
    assert.match((await ends(page))[0], /^A colour of the wheel /);
  });
}

visit("a cross points at any place by keyboard", {}, async ({ page }) => {
  await page.locator("#wheel-path").focus();
  await page.keyboard.press("p");
  assert.match(await page.locator("#wheel-said").textContent(), /cross/);
  const start = await pixels(page, "wheel-mark");
  for (let i = 0; i < 4; i += 1) await page.keyboard.press("Shift+ArrowUp");
  await page.keyboard.press("ArrowLeft");
  assert.notEqual(await pixels(page, "wheel-mark"), start, "the cross moves");
  await page.keyboard.press("Enter");
  assert.match((await ends(page))[0], /^A colour of the wheel /);
  await page.keyboard.press("Escape");
  const before = await ends(page);
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Enter");
  assert.notDeepEqual(await ends(page), before, "without the cross the arrows go round the paints again");
});

visit("the cross never leaves the wheel", {}, async ({ page }) => {
  await page.locator("#wheel-path").focus();
  await page.keyboard.press("p");
  for (let i = 0; i < 40; i += 1) await page.keyboard.press("Shift+ArrowRight");
  const atRim = await pixels(page, "wheel-mark");
  await page.keyboard.press("ArrowRight");
  assert.equal(await pixels(page, "wheel-mark"), atRim);
});

visit("a kept mix is an end of another path: three paints come together", {}, async ({ page }) => {
  await page.locator('#sheet .cell[aria-label^="2:1, medium wash"]').click();
  await page.getByRole("button", { name: "Keep this mix" }).click();
  assert.deepEqual(await puddles(page), ["2 parts Ultramarine blue, 1 part Burnt sienna"]);
  await page.locator("#puddles .take").click();
  await page.locator('#tin .paint[title="Bismuth yellow PY184"]').click();
  assert.match((await ends(page))[0], /^A puddle 2 ultramarine blue \+ 1 burnt sienna$/);
  await page.locator('#sheet .cell[aria-label^="1:2, masstone"]').click();
  assert.equal((await readout(page)).parts, "2 parts Ultramarine blue, 1 part Burnt sienna, 6 parts Bismuth yellow");
  await page.locator("#sheet .cell").first().click();
  assert.equal(
    (await readout(page)).parts,
    "2 parts Ultramarine blue, 1 part Burnt sienna",
    "all A is the puddle itself",
  );
});

visit("a puddle is known again after a reload", {}, async ({ page }) => {
  // 2 to the power of -1/4, which no float holds: the link's reader and the page may not round it alike.
  await slide(page, "Load", 475);
  const keep = page.getByRole("button", { name: "Keep this mix" });
  await keep.click();
  await page.reload();
  await page.waitForSelector('html[data-whole="true"]');
  assert.equal((await puddles(page)).length, 1);
  await keep.click();
  assert.equal((await puddles(page)).length, 1);
});

visit("a puddle is not kept twice, is wiped, and comes back by undo", {}, async ({ page }) => {
  const keep = page.getByRole("button", { name: "Keep this mix" });
  await keep.click();
  await keep.click();
  assert.equal((await puddles(page)).length, 1);
  assert.match(await page.locator("#notice").textContent(), /already kept/);
  await page.getByRole("button", { name: "Wipe puddle 1" }).click();
  assert.equal((await puddles(page)).length, 0);
  await page.getByRole("button", { name: "Undo" }).click();
  assert.equal((await puddles(page)).length, 1);
});

visit("puddles stay over a reload and travel in the link", {}, async ({ page, visitor, address }) => {
  await page.getByRole("button", { name: "Keep this mix" }).click();
  await page.locator("#wheel-path").focus();
  await page.reload();
  await page.waitForSelector('html[data-whole="true"]');
  const kept = await puddles(page);
  assert.equal(kept.length, 1);
  await page.getByRole("button", { name: "Share", exact: true }).click();
  const link = await sharedLink(page);
  const other = await visitor.browser().newContext();
  const guest = await other.newPage();
  await guest.goto(address + link.slice(link.indexOf("#")));
  await guest.getByRole("button", { name: "Pack the shared kit" }).click();
  assert.deepEqual(await puddles(guest), kept);
  assert.equal((await pans(guest)).length, 12);
  await other.close();
});

visit("a drop on the wheel is taken by pointing at it", {}, async ({ page }) => {
  await slide(page, "Ratio", 300);
  await page.getByRole("button", { name: "Keep this mix" }).click();
  // Other ends, so that nothing but the drop lies there.
  for (const name of ["Perylene maroon PR179", "Bismuth yellow PY184"])
    await page.locator(`#tin .paint[title="${name}"]`).click();
  await painted(page);
  const drop = await page.evaluate(() => {
    const top = document.getElementById("wheel-path");
    const box = top.getBoundingClientRect();
    for (let y = box.top; y < box.bottom; y += 4) {
      for (let x = box.left; x < box.right; x += 4) {
        top.dispatchEvent(
          new PointerEvent("pointermove", { clientX: x, clientY: y, pointerType: "mouse", bubbles: true }),
        );
        if (top.title.startsWith("Puddle")) return { x, y };
      }
    }
    return null;
  });
  assert.ok(drop, "the pointer is told of the drop");
  await page.mouse.click(drop.x, drop.y);
  assert.ok((await ends(page)).some((end) => end.startsWith("A puddle")));
});
