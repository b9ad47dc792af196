// The wheel looks as it did when it was last looked at.

import assert from "node:assert/strict";
import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { PNG } from "pngjs";
import { painted, slide } from "./support/washpath.js";
import { visits } from "./support/visit.js";

const visit = visits();

const file = (name) => fileURLToPath(new URL(`../golden/${name}.png`, import.meta.url));

/** Edges of letters and lines differ between versions of a browser; areas, places and colours do not. */
const NEAR = 1;
const LEAST_NEAR = 0.95;
const MOST_MEAN = 0.5;

/** How two pictures differ, in steps of 255: `{near, mean}`, the share of samples within `NEAR` and the mean difference. */
function difference(seen, golden) {
  let near = 0;
  let sum = 0;
  for (let i = 0; i < seen.data.length; i += 1) {
    const by = Math.abs(seen.data[i] - golden.data[i]);
    near += by <= NEAR;
    sum += by;
  }
  return { near: near / seen.data.length, mean: sum / seen.data.length };
}

/** Compares with the golden picture; makes it where there is none, which a person must then look at. */
function assertGolden(name, picture) {
  if (!existsSync(file(name))) {
    writeFileSync(file(name), picture);
    console.log(`tests/golden/${name}.png was missing and is made anew: look at it`);
    return assert.ok(!process.env.CI, `tests/golden/${name}.png is missing`);
  }
  const [seen, golden] = [picture, readFileSync(file(name))].map((bytes) => PNG.sync.read(bytes));
  const same = seen.width === golden.width && seen.height === golden.height;
  const { near, mean } = same ? difference(seen, golden) : { near: 0, mean: 255 };
  const changed = file(`${name}-changed`);
  if (near >= LEAST_NEAR && mean <= MOST_MEAN) return rmSync(changed, { force: true });
  writeFileSync(changed, picture);
  return assert.fail(`${name}: ${(near * 100).toFixed(1)} % within ${NEAR}, mean ${mean.toFixed(2)}; see ${name}-changed.png beside it`);
}

const wheels = {
  "wheel-demo": async () => {},
  "wheel-dim-shelf-tan": async (page) => {
    await page.getByLabel("Paper").selectOption({ label: "Tan" });
    await page.getByRole("button", { name: "Dim" }).click();
    await page.getByLabel("Show the shelf on the wheel").check();
    for (const name of ["Bismuth yellow PY184", "Perylene maroon PR179"]) await page.locator(`#tin .paint[title="${name}"]`).click();
    await slide(page, "Load", 400);
    await slide(page, "Ratio", 300);
  },
};
for (const [name, act] of Object.entries(wheels)) {
  visit(`${name} looks as it did`, {}, async ({ page }) => {
    await act(page);
    const stage = page.locator(".stage");
    await stage.evaluate((node) => {
      Object.assign(node.style, { width: "600px", height: "600px" });
      return document.fonts.ready.then(() => {});
    });
    await page.waitForFunction(() => document.getElementById("wheel-path").clientWidth === 600);
    await page.mouse.move(1, 1);
    await painted(page);
    assertGolden(name, await stage.screenshot());
  });
}
