// Storage in which something is spoilt: the page starts, what is good is kept, what is not is named, and nothing is written over it.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, before, test } from "node:test";
import { openModel } from "./model/host.js";
import { startBrowser } from "./support/launch.js";

/** Everything of a painter's as a former version of the page kept it: three kits, two own paints, records, marks, ticks, a film, what was learned. */
const former = await readFile(new URL("../reference/kept_v1.json", import.meta.url), "utf8");

let browser;
before(async () => (browser = await startBrowser()));
after(() => browser.close());

/** In the state without its views, as only so hundreds of starts are quick. */
async function inModel(verb) {
  const visitor = await browser.newContext();
  try {
    const { page } = await openModel(visitor);
    return await page.evaluate(
      async ([verb, former]) => (await import("/model/damaged.js"))[verb](former),
      [verb, former],
    );
  } finally {
    await visitor.close();
  }
}

test("each kind of entry spoilt in each of its places takes nothing else with it", async () => {
  const { count, kinds, faults } = await inModel("entriesSpoilt");
  assert.equal(faults.slice(0, 20).join("\n"), "", `${faults.length} faults in ${count} states`);
  assert.ok(count > 400 && kinds.length > 10, `${count} states of ${kinds.join(", ")}`);
});

test("a former version's text spoilt in each of its places gives what is good of it", async () => {
  const { count, faults } = await inModel("formerSpoilt");
  assert.equal(faults.slice(0, 20).join("\n"), "", `${faults.length} faults in ${count} states`);
  assert.ok(count > 400, `${count} states`);
});
