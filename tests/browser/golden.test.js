// The wheel looks as it did when it was last looked at.

import assert from "node:assert/strict";
import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { PNG } from "pngjs";
import { visits } from "./support/visit.js";
import { painted, slide } from "./support/washpath.js";

const visit = visits();

const file = (name) => fileURLToPath(new URL(`../golden/${name}.png`, import.meta.url));

/** Pixels are compared by blocks: edges of letters differ between versions of a browser; areas, places and colours do not. */
const BLOCK = 4;
/** A block may differ by this many steps of 255 before it counts, and one block of a thousand may count. */
const NEAR = 12;
const LEAST_NEAR = 0.999;
/** Mean difference of all blocks in steps: holds what is slight and everywhere. */
const MOST_MEAN = 0.3;

/** Mean red, green and blue of each block, one list. */
function blocks({ width, height, data }) {
  const [across, down] = [Math.floor(width / BLOCK), Math.floor(height / BLOCK)];
  const means = new Float64Array(across * down * 3);
  for (let y = 0; y < down * BLOCK; y += 1) {
    for (let x = 0; x < across * BLOCK; x += 1) {
      const block = Math.floor(y / BLOCK) * across + Math.floor(x / BLOCK);
      for (let c = 0; c < 3; c += 1) means[block * 3 + c] += data[(y * width + x) * 4 + c] / BLOCK ** 2;
    }
  }
  return means;
}

/** How two pictures differ: `{near, mean}`, the share of blocks within `NEAR` and the mean difference. */
function difference(seen, golden) {
  const [a, b] = [blocks(seen), blocks(golden)];
  let near = 0;
  let sum = 0;
  for (let i = 0; i < a.length; i += 3) {
    const by = Math.max(...[0, 1, 2].map((c) => Math.abs(a[i + c] - b[i + c])));
    near += by <= NEAR;
    sum += by;
  }
  return { near: (3 * near) / a.length, mean: (3 * sum) / a.length };
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
  return assert.fail(
    `${name}: ${(near * 100).toFixed(2)} % of blocks within ${NEAR}, mean ${mean.toFixed(2)}; see ${name}-changed.png beside it`,
  );
}

const wheels = {
  "wheel-demo": async () => {},
  "wheel-dim-shelf-tan": async (page) => {
    await page.getByLabel("Paper").selectOption({ label: "Tan" });
    await page.getByRole("button", { name: "Dim" }).click();
    await page.getByLabel("Show the shelf on the wheel").check();
    for (const name of ["Bismuth yellow PY184", "Perylene maroon PR179"])
      await page.locator(`#tin .paint[title="${name}"]`).click();
    await slide(page, "Load", 400);
    await slide(page, "Ratio", 300);
  },
  "wheel-ribbon-reach-pin": async (page) => {
    await page.getByRole("button", { name: "Pin path" }).click();
    await page.getByRole("button", { name: "Keep this mix" }).click();
    for (const name of ["Bismuth yellow PY184", "Phthalo blue, green shade PB15:3"])
      await page.locator(`#tin .paint[title="${name}"]`).click();
    for (const name of ["All loads", "Reach"]) await page.getByRole("button", { name, exact: true }).click();
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
