// Two paints, their path and the kit, by finger on a phone and a tablet.

import assert from "node:assert/strict";
import { drag, tap } from "./support/touch.js";
import { visits } from "./support/visit.js";
import { dabs, ends, markAt, painted, pans, readout, shareOf, slide } from "./support/washpath.js";

const visit = visits();

for (const size of ["phone", "tablet"]) {
  visit(`taps on the wheel choose both ends, ${size}`, { size }, async ({ page }) => {
    const spots = await dabs(page);
    const names = Object.keys(spots);
    const chosen = [names.find((name) => name.endsWith(" PY184")), names.find((name) => name.endsWith(" PV19"))];
    for (const name of chosen) await tap(page, spots[name]);
    assert.deepEqual(await ends(page), chosen);
    assert.match((await readout(page)).parts, new RegExp(chosen[0].slice(0, chosen[0].lastIndexOf(" "))));
  });

  visit(`a finger along the path runs through the ratios one way, ${size}`, { size }, async ({ page }) => {
    const chosen = await ends(page);
    const stops = [];
    for (const value of [500, 550, 600, 650, 700]) stops.push(await markAt(page, value));
    await slide(page, "Ratio", 0);
    const shares = [];
    await drag(page, stops, async () => {
      await painted(page);
      shares.push(shareOf((await readout(page)).ratio));
    });
    assert.deepEqual(
      shares,
      [...shares].sort((a, b) => a - b),
    );
    assert.ok(new Set(shares).size >= 4, `the ratio follows: ${shares}`);
    assert.deepEqual(await ends(page), chosen, "a drag chooses no paint");
    assert.equal(await page.evaluate(() => scrollY), 0, "the page stays put under the finger");
  });

  visit(`a swipe that starts beside the path scrolls the page, ${size}`, { size }, async ({ page }) => {
    const before = await readout(page);
    const box = await page.locator("#wheel-path").boundingBox();
    const spot = (part) => ({ x: box.x + box.width * 0.2, y: box.y + box.height * part });
    // Far from every dab and the path.
    await drag(page, [0.72, 0.68, 0.6, 0.5, 0.4, 0.3].map(spot), () => painted(page));
    await page.waitForFunction(() => scrollY > 40);
    assert.deepEqual(await readout(page), before);
  });

  visit(`the mark of the mix can be taken wherever it stands, ${size}`, { size }, async ({ page }) => {
    const chosen = await ends(page);
    const middle = await markAt(page, 500);
    for (const value of [200, 500, 800]) {
      const mark = await markAt(page, value);
      await drag(page, [
        mark,
        { x: (mark.x + middle.x) / 2, y: (mark.y + middle.y) / 2 },
        { x: middle.x + 5, y: middle.y + 5 },
      ]);
      assert.deepEqual(await ends(page), chosen, `taken at ${value} of 1000, the mark and no paint moves`);
      const share = shareOf((await readout(page)).ratio);
      assert.ok(share > 0.15 && share < 0.85, `from ${value} of 1000 it is drawn to the middle, a share of ${share}`);
    }
  });

  visit(`sheet, swap and crossing answer to taps, ${size}`, { size }, async ({ page }) => {
    await page.locator('#sheet .cell[aria-label^="2:1, light wash"]').tap();
    const { ratio, load } = await readout(page);
    assert.equal(ratio, "2 : 1");
    assert.match(load, /light wash/);
    await page.getByRole("button", { name: "Swap A and B" }).tap();
    assert.equal((await readout(page)).ratio, "1 : 2");
    await page.getByRole("button", { name: "Go there" }).tap();
    const { ratio: there, crossing } = await readout(page);
    assert.ok(crossing.includes(there.replaceAll(" ", "")), `${crossing} at ${there}`);
  });
}

visit("the tabs show one part at a time on a phone", { size: "phone" }, async ({ page }) => {
  const parts = { Mix: ["#wheel", "#mix"], Match: ["#match"], Kit: ["#kit", "#report"], Shelf: ["#shelf"] };
  for (const [name, shown] of Object.entries(parts)) {
    const tab = page.locator(".tabs").getByRole("button", { name });
    await tab.tap();
    assert.equal(await tab.getAttribute("aria-pressed"), "true");
    // The wheel stands beside a colour to match, too: it is picked there.
    for (const part of Object.values(parts)
      .flat()
      .filter((part) => name !== "Match" || part !== "#wheel")) {
      assert.equal(await page.locator(part).isVisible(), shown.includes(part), `${part} while ${name} shows`);
    }
  }
});

visit("a kit is edited by taps on a phone", { size: "phone" }, async ({ page }) => {
  const tabs = page.locator(".tabs");
  await tabs.getByRole("button", { name: "Kit" }).tap();
  await page.getByRole("button", { name: "Edit pans" }).tap();
  await page.getByRole("button", { name: "Remove: Viridian" }).tap();
  assert.equal((await pans(page)).length, 11);
  await tabs.getByRole("button", { name: "Shelf" }).tap();
  await page.getByLabel("Find a paint").fill("PY129");
  await page.getByRole("button", { name: "Pack Green gold" }).tap();
  await page.locator("#shelf-list .take:visible").tap();
  await tabs.getByRole("button", { name: "Mix" }).tap();
  assert.match((await ends(page))[0], /PY129$/);
  for (let i = 0; i < 3; i += 1) await page.getByRole("button", { name: "Undo" }).tap();
  await tabs.getByRole("button", { name: "Kit" }).tap();
  assert.ok((await pans(page)).includes("PG18"));
});
