// What most people come for, in WebKit too: from a disk and hosted.

import assert from "node:assert/strict";
import { linkText } from "./support/link.js";
import { dabs, ends, markAt, pans, readout, shareOf, slide } from "./support/washpath.js";
import { webkitVisits } from "./support/webkit.js";

const places = { "from a disk": webkitVisits(), hosted: webkitVisits({ hosted: true }) };

for (const [where, visit] of Object.entries(places)) {
  visit(`two paints are chosen, and the path is dragged along, WebKit, ${where}`, {}, async ({ page }) => {
    assert.equal((await pans(page)).length, 12);
    const spots = await dabs(page);
    const of = (code) => Object.keys(spots).find((name) => name.endsWith(` ${code}`));
    for (const code of ["PY184", "PV19"]) await page.click(spots[of(code)]);
    assert.deepEqual(await ends(page), [of("PY184"), of("PV19")]);
    const [from, to] = [await markAt(page, 300), await markAt(page, 700)];
    await slide(page, "Ratio", 300);
    const before = shareOf((await readout(page)).ratio);
    await page.drag(from, to);
    const after = shareOf((await readout(page)).ratio);
    assert.ok(after > before + 0.1, `from a share of ${before} to ${after}`);
    assert.deepEqual(await ends(page), [of("PY184"), of("PV19")], "a drag chooses no paint");
    const cell = await page.evaluate(
      () => document.querySelector('#sheet .cell[aria-label^="2:1, light wash:"]').ariaLabel,
    );
    await page.press(cell);
    const { words, ratio } = await readout(page);
    assert.equal(`${ratio}, ${words}`, `2 : 1, ${cell.split(": ")[1]}`);
  });

  visit(`the worker reports on the kit and finds recipes, WebKit, ${where}`, {}, async ({ page }) => {
    await page.press("Report");
    await page.until(() => document.querySelector("#report-said li"));
    assert.match(await page.text("#report-said li"), /^Reaches \d+\s% of real surface colours/);
    await page.press("Match");
    await page.type("#target-text", "#7a6a55");
    await page.until(() => document.querySelector("#recipes li"));
    assert.match(await page.text("#recipes li"), /off by \d/);
  });

  visit(`a swatch is recorded, a kit changed, and both are kept, WebKit, ${where}`, {}, async ({ page }) => {
    await page.press("Edit pans");
    await page.press("Remove: Bismuth yellow");
    await page.press("Swatches");
    await page.type("#record .typed input[type=text]", "lab(36 4 -6)");
    await page.press("Record it");
    await page.until(() => document.querySelector("#lesson .figures"));
    await page.reload();
    assert.equal(await page.evaluate(() => document.querySelectorAll("#log tbody tr").length), 1);
    assert.equal((await pans(page)).length, 11);
  });

  visit(`a sheet to print is laid out, WebKit, ${where}`, {}, async ({ page }) => {
    await page.press("Print");
    await page.until(() => document.querySelector("#print-proof svg"));
    assert.equal(await page.evaluate(() => document.querySelector("#print-proof svg").getAttribute("width")), "210mm");
  });

  visit(
    `a link opens beside the visitor's own kit, WebKit, ${where}`,
    { hash: `#kit=${linkText({ pans: [[1], [3], [15]], title: "Three" })}` },
    async ({ page }) => {
      await page.until(() => document.querySelector("#guest:not([hidden])"));
      assert.equal((await pans(page)).length, 12, "the visitor's own kit is as it was");
      assert.equal(await page.evaluate(() => location.hash), "", "the link is taken off the address");
      await page.press("Pack the shared kit");
      assert.equal((await pans(page)).length, 3);
    },
  );
}
