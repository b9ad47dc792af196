// Accessibility by axe-core, in the open page.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";

const source = readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Fails with one line a fault that axe finds in the page as it is now; `without` names rules to leave out. */
export async function assertAccessible(page, without = []) {
  // Evaluated and not added as a script: the page's policy allows none.
  await page.evaluate(await source);
  const faults = await page.evaluate(async (without) => {
    const rules = Object.fromEntries(without.map((rule) => [rule, { enabled: false }]));
    const { violations } = await globalThis.axe.run({ rules });
    return violations.map(
      ({ id, nodes }) =>
        `${id}: ${nodes
          .slice(0, 4)
          .map(({ target }) => target.join(" "))
          .join(", ")} (${nodes.length})`,
    );
  }, without);
  assert.deepEqual(faults, []);
}
