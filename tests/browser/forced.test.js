// Forced colours: what is pressed, chosen or marked must not be told by a colour of the page alone.

import assert from "node:assert/strict";
import { PNG } from "pngjs";
import { visits } from "./support/visit.js";

const visit = visits();

/** How many pixels of an element differ once an attribute is as given, in a picture with a rim of 3 px. */
async function changed(page, element, attribute, other) {
  const box = await element.boundingBox();
  const clip = { x: box.x - 3, y: box.y - 3, width: box.width + 6, height: box.height + 6 };
  const look = async () => PNG.sync.read(await page.screenshot({ clip })).data;
  const before = await look();
  const was = await element.getAttribute(attribute);
  await element.evaluate(
    (node, [name, value]) => (value === null ? node.removeAttribute(name) : node.setAttribute(name, value)),
    [attribute, other],
  );
  const after = await look();
  await element.evaluate((node, [name, value]) => node.setAttribute(name, value), [attribute, was]);
  return before.filter(
    (value, i) =>
      i % 4 === 0 &&
      Math.abs(value - after[i]) + Math.abs(before[i + 1] - after[i + 1]) + Math.abs(before[i + 2] - after[i + 2]) > 60,
  ).length;
}

visit(
  "pressed, chosen and marked things show in forced colours",
  { context: { forcedColors: "active" } },
  async ({ page }) => {
    await page.getByRole("button", { name: "All loads", exact: true }).click();
    await page.mouse.move(1, 1);
    const marked = {
      "the part beside the wheel": [page.locator('.switch [data-show="mix"]'), "aria-pressed", "false"],
      "a toggle": [page.getByRole("button", { name: "All loads", exact: true }), "aria-pressed", "false"],
      "the next end": [page.locator('#ends .end[aria-pressed="true"]'), "aria-pressed", "false"],
      "a pan that is an end": [page.locator("#tin .paint[data-end]").first(), "data-end", null],
      "the cell of the mix": [page.locator('#sheet .cell[aria-pressed="true"]'), "aria-pressed", "false"],
    };
    for (const [what, [locator, attribute, other]] of Object.entries(marked)) {
      await locator.scrollIntoViewIfNeeded();
      // The element and not its locator, which asks for the very attribute that is taken away.
      const pixels = await changed(page, await locator.elementHandle(), attribute, other);
      assert.ok(pixels > 100, `${what} is told by ${pixels} pixels`);
    }
  },
);
