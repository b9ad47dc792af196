// What most people come for, in Firefox too: from a disk and hosted.

import assert from "node:assert/strict";
import { firefoxVisits, visitor } from "./support/firefox.js";
import { dabs, ends, markAt, painted, pans, pixels, readout, shareOf, slide } from "./support/washpath.js";

const places = { "from a disk": firefoxVisits(), hosted: firefoxVisits({ hosted: true }) };

/** Clicks the button of this name by the mouse. */
const press = (page, name) =>
  page.locator(`::-p-xpath(//button[normalize-space()="${name}" or @aria-label="${name}"])`).click();
const text = (page, selector) => page.$eval(selector, (node) => node.textContent);
const count = (page, selector) => page.$$eval(selector, (all) => all.length);

/** Goes round the wheel by keys until it says this code, and takes the paint. */
async function takeByKeys(page, code) {
  for (let i = 0; i < 20; i += 1) {
    await page.keyboard.press("ArrowUp");
    if (!(await text(page, "#wheel-said")).endsWith(`, ${code}`)) continue;
    return page.keyboard.press("Enter");
  }
  return assert.fail(`the wheel never says ${code}`);
}

for (const [where, visit] of Object.entries(places)) {
  visit(`two paints are chosen by mouse and by keys, Firefox, ${where}`, async ({ page }) => {
    assert.equal((await pans(page)).length, 12);
    const spots = await dabs(page);
    const of = (code) => Object.keys(spots).find((name) => name.endsWith(` ${code}`));
    const layer = await pixels(page, "wheel-path");
    for (const name of [of("PY184"), of("PV19")]) await page.mouse.click(spots[name].x, spots[name].y);
    assert.deepEqual(await ends(page), [of("PY184"), of("PV19")]);
    assert.notEqual(await pixels(page, "wheel-path"), layer, "another path is drawn");
    await page.focus("#wheel-path");
    await takeByKeys(page, "PG18");
    await takeByKeys(page, "PO73");
    assert.deepEqual(
      (await ends(page)).map((end) => end.split(" ").at(-1)),
      ["PG18", "PO73"],
    );
    await page.keyboard.press("Home");
    assert.equal((await readout(page)).ratio, "1 : 0");
    await page.keyboard.down("Shift");
    await page.keyboard.press("ArrowRight");
    await page.keyboard.up("Shift");
    assert.ok(shareOf((await readout(page)).ratio) > 0);
    // A cross on the path: Enter takes the kit's nearest mix as an end.
    await page.keyboard.press("p");
    await page.keyboard.press("Enter");
    assert.ok(
      (await ends(page)).some((end) => end.startsWith("A colour of the wheel ")),
      "the place becomes an end",
    );
  });

  visit(`a drag along the path, a load and a cell set the mix, Firefox, ${where}`, async ({ page }) => {
    const [from, to] = [await markAt(page, 300), await markAt(page, 700)];
    await slide(page, "Ratio", 300);
    await painted(page);
    const chosen = await ends(page);
    const before = shareOf((await readout(page)).ratio);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 6 });
    await page.mouse.up();
    const after = shareOf((await readout(page)).ratio);
    assert.ok(after > before + 0.1, `from a share of ${before} to ${after}`);
    assert.deepEqual(await ends(page), chosen, "a drag chooses no paint");
    const lightness = async () => Number((await readout(page)).numbers["Value L*"]);
    const dark = await lightness();
    await page.focus('input[aria-label="Load"]');
    for (let i = 0; i < 4; i += 1) await page.keyboard.press("PageDown");
    assert.ok((await lightness()) > dark + 5, "less paint is lighter");
    const cell = '#sheet .cell[aria-label^="2:1, light wash:"]';
    await page.click(cell);
    const { words, ratio } = await readout(page);
    assert.equal(ratio, "2 : 1");
    assert.equal(await page.$eval(cell, (node) => node.getAttribute("aria-label")), `2:1, light wash: ${words}`);
  });

  visit(`a link opens beside a second visitor's kit, Firefox, ${where}`, async ({ page, browser, address }) => {
    await press(page, "Edit pans");
    await press(page, "Remove: Bismuth yellow");
    const sent = await pans(page);
    await press(page, "Share");
    await page.waitForSelector("#share-dialog[open]");
    const link = await page.$eval("#share-link", (area) => area.value);
    assert.ok(link.startsWith(`${address}#kit=`), link);
    const other = await visitor(browser, link);
    try {
      await other.page.waitForSelector("#guest:not([hidden])");
      assert.equal((await pans(other.page)).length, 12, "their own kit is as it was");
      await press(other.page, "Pack the shared kit");
      assert.deepEqual(await pans(other.page), sent);
      assert.deepEqual(other.log.complaints, []);
    } finally {
      await other.close();
    }
  });

  visit(`a swatch is recorded and kept, Firefox, ${where}`, async ({ page }) => {
    await press(page, "Swatches");
    await page.locator("#record .typed input[type=text]").fill("lab(36 4 -6)");
    await press(page, "Record it");
    await page.waitForSelector("#log tbody tr");
    await page.waitForSelector("#lesson .figures");
    await page.reload();
    await page.waitForSelector("html[data-whole=true]");
    assert.equal(await count(page, "#log tbody tr"), 1);
  });

  visit(`the worker reports on the kit, Firefox, ${where}`, async ({ page }) => {
    await press(page, "Report");
    await page.waitForSelector("#report-said li");
    assert.match(await text(page, "#report-said li"), /^Reaches \d+\s% of real surface colours/);
    assert.ok((await page.evaluate(() => globalThis.answered)) > 0, "it is a worker that answers");
  });
}
