// Mixes that match in daylight only: said of the mix at hand, and of no other.

import assert from "node:assert/strict";
import { visits } from "./support/visit.js";
import { dabs, slide } from "./support/washpath.js";

const visit = visits();

/** The wait for a hand at rest, a quarter of a second, is left out. */
const script = () => {
  const later = setTimeout;
  globalThis.setTimeout = (act, time, ...words) => later(act, time === 250 ? 0 : time, ...words);
};
const rested = (page) => page.evaluate(() => new Promise((resolve) => setTimeout(() => setTimeout(resolve, 0), 0)));
const shift = (page) => page.locator("#readout .shift").evaluate((line) => (line.hidden ? "" : line.textContent));

async function choose(page, ...names) {
  const spots = await dabs(page);
  for (const name of names) await page.mouse.click(spots[name].x, spots[name].y);
}

visit("it is said of a mix once the hand rests, and taken back with the next move", { script }, async ({ page }) => {
  await choose(page, "Bismuth yellow PY184", "Burnt sienna PBr7");
  await slide(page, "Load", 500);
  await slide(page, "Ratio", 700);
  await rested(page);
  assert.match(
    await shift(page),
    /^Looks the same in daylight as .*, but differs (under an? .* lamp|in warm daylight) \(/,
  );
  // In the task of the change itself: what was found belongs to the mix before.
  const shown = await page.evaluate(() => {
    const input = document.querySelector('input[type="range"][aria-label="Ratio"]');
    input.value = "300";
    input.dispatchEvent(new Event("input", { bubbles: true }));
    return !document.querySelector("#readout .shift").hidden;
  });
  assert.equal(shown, false, "the words of the former mix");
});

visit("a paint alone is no mix that could match", { script }, async ({ page }) => {
  await choose(page, "Yellow iron oxide PY42", "Burnt sienna PBr7");
  for (const load of [500, 300]) {
    await slide(page, "Load", load);
    for (const ratio of [0, 1000]) {
      await slide(page, "Ratio", ratio);
      await rested(page);
      assert.equal(await shift(page), "", `ratio ${ratio}, load ${load}`);
    }
  }
});
