// The whole job by keyboard alone: no mouse, and no focus but by Tab.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { enter, tabTo } from "./support/keyboard.js";
import { visits } from "./support/visit.js";
import { ends, pans, readout, sharedLink, shareOf } from "./support/washpath.js";

const visit = visits();

const count = (page, selector) => page.locator(selector).count();

/** Goes round the wheel until it says this code, and takes the paint. */
async function take(page, code) {
  for (let i = 0; i < 20; i += 1) {
    await page.keyboard.press("ArrowUp");
    if ((await page.locator("#wheel-said").textContent()).endsWith(`, ${code}`)) return page.keyboard.press("Enter");
  }
  return assert.fail(`the wheel never says ${code}`);
}

visit("the whole job is done by keyboard alone", {}, async ({ page }) => {
  // Ends, path and load on the wheel.
  await tabTo(page, "Hue wheel of the kit");
  await take(page, "PG18");
  await take(page, "PR254");
  assert.deepEqual(
    (await ends(page)).map((end) => end.split(" ").at(-1)),
    ["PG18", "PR254"],
  );
  await page.keyboard.press("Home");
  for (let i = 0; i < 5; i += 1) await page.keyboard.press("Shift+ArrowRight");
  assert.ok(shareOf((await readout(page)).ratio) > 0);
  await page.keyboard.press("PageDown");
  assert.match((await readout(page)).load, /medium wash/);

  // The same by the sliders.
  const thinner = Number((await readout(page)).numbers["Value L*"]);
  await tabTo(page, "Load");
  for (let i = 0; i < 3; i += 1) await page.keyboard.press("PageDown");
  assert.ok(Number((await readout(page)).numbers["Value L*"]) > thinner);

  // A puddle.
  await enter(page, "Keep this mix");
  assert.equal(await count(page, "#puddles li"), 1);

  // A paint from the shelf, once there is room.
  await tabTo(page, "Tin holds");
  await page.keyboard.press("Control+A");
  await page.keyboard.type("13");
  await page.keyboard.press("Enter");
  await tabTo(page, "Find a paint");
  await page.keyboard.type("PG50");
  await enter(page, /^Pack /);
  assert.ok((await pans(page)).includes("PG50"), (await pans(page)).join(" "));

  // A swatch.
  await enter(page, "Swatches", { back: true });
  await tabTo(page, /^What it looks like, dry/);
  await page.keyboard.type("lab(50 4 -6)");
  await enter(page, "Record it");
  assert.equal(await count(page, "#log tbody tr"), 1);

  // A sheet as PDF.
  await enter(page, "Print", { back: true });
  await page.locator("#print-proof svg").waitFor();
  await tabTo(page, "Save PDF");
  const [download] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Enter")]);
  assert.equal((await readFile(await download.path())).subarray(0, 5).toString(), "%PDF-");
  await page.keyboard.press("Escape");

  // The link.
  await enter(page, "Share");
  assert.match(await sharedLink(page), /#kit=/);
  await page.keyboard.press("Escape");
  assert.ok(await page.locator("#share-dialog").isHidden());
});
