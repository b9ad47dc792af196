// Random sequences of what a painter does, over two tabs that share one storage: the page always starts, nothing that is kept is lost,
// undo undoes. Faults of the kind that such sequences are to find are put in one by one, and each must be found.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, before, test } from "node:test";
import fc from "fast-check";
import { openModel } from "./model/host.js";
import { MUTANTS } from "./model/mutants.js";
import { startBrowser } from "./support/launch.js";

/** Sequences of a run; a longer one is asked for by WASHPATH_SEQUENCES, another one by WASHPATH_SEED. */
const SEQUENCES = Number(process.env.WASHPATH_SEQUENCES ?? 2000);
const SEED = Number(process.env.WASHPATH_SEED ?? 1);

/** Sequences after which a fault that was put in must have been found. */
const MOST = 400;

/** Verbs by how often they are drawn. */
const OFTEN = [
  "choosePaint",
  "chooseMix",
  "keepPuddle",
  "pack",
  "record",
  "openLink",
  "packGuest",
  "makeOwn",
  "reload",
  "both",
];
const ALL = [
  "choosePuddle",
  "slide",
  "swap",
  "pinPath",
  "pinReach",
  "wipePuddle",
  "removePan",
  "movePan",
  "refill",
  "retitle",
  "emptyTin",
  "demo",
  "startKit",
  "copyKit",
  "takeKit",
  "throwKit",
  "packChosen",
  "keepMine",
  "deleteRecord",
  "importLog",
  "exportLog",
  "editOwn",
  "doubleOwn",
  "dropOwn",
  "hold",
  "owned",
  "tick",
  "place",
  "openFile",
  "undo",
  "redo",
  "full",
  "spoil",
  ...OFTEN,
  ...OFTEN,
];

/** Sequences of steps, some verbs drawn more often than others. */
function sequences(verbs) {
  const often = verbs.flatMap((verb) => Array(Math.ceil(ALL.length / verbs.length)).fill(verb));
  const step = fc.tuple(fc.nat(1), fc.constantFrom(...ALL, ...often), fc.nat(999));
  return fc.array(step, { minLength: 1, maxLength: 16, size: "max" });
}

const links = (
  await Promise.all(
    ["links_v1.csv", "links_v2.csv", "links_own.csv", "links_ids.csv", "links_class.csv"].map((name) =>
      readFile(new URL(`../../crate/core/tests/reference/${name}`, import.meta.url), "utf8"),
    ),
  )
).flatMap((text) =>
  text
    .split("\n")
    .map((line) => line.split(",")[0])
    .filter((text) => /^A[\w-]{9,}$/.test(text)),
);

let browser;
before(async () => (browser = await startBrowser()));
after(() => browser.close());

/** Plays sequences until one fails; answers the shortest form of it, or nothing. */
async function firstFault(mutant, count) {
  const visitor = await browser.newContext();
  try {
    const { play } = await openModel(visitor, mutant);
    const property = fc.asyncProperty(sequences(mutant?.verbs ?? []), async (steps) => {
      const fault = await play(steps, links);
      if (fault) throw new Error(fault);
    });
    // A fault that was put in need not be made short.
    const found = await fc.check(property, { seed: SEED, numRuns: count, endOnFailure: mutant !== null });
    return found.failed
      ? `${JSON.stringify(found.counterexample?.[0])}\n${found.errorInstance?.message ?? found.error}`
      : null;
  } finally {
    await visitor.close();
  }
}

test(`${SEQUENCES} random sequences over two tabs lose nothing`, async () => {
  assert.equal(await firstFault(null, SEQUENCES), null);
});

/** A bit of everything that writes. */
const BUSY = [
  "chooseMix",
  "keepPuddle",
  "makeOwn",
  "makeOwn",
  "pack",
  "record",
  "owned",
  "hold",
  "copyKit",
  "openLink",
  "packGuest",
  "editOwn",
  "importLog",
  "openFile",
  "dropOwn",
  "throwKit",
  "undo",
  "redo",
  "slide",
  "packChosen",
].map((verb, i) => [0, verb, 7 * i + 1]);

test("a write that fails, whichever it is, loses nothing once there is room", async () => {
  const visitor = await browser.newContext();
  try {
    const { playFailing } = await openModel(visitor);
    let count = 0;
    for (; ; count += 1) {
      const { fault, isOver } = await playFailing(BUSY, links, count);
      assert.equal(fault, null, `write ${count}`);
      if (!isOver) break;
    }
    assert.ok(count > 15, `${count} writes`);
  } finally {
    await visitor.close();
  }
});

for (const mutant of MUTANTS) {
  test(`found where ${mutant.name}`, async () => {
    assert.notEqual(await firstFault(mutant, MOST), null, "no sequence finds it");
  });
}
