// The page's modules that only compute, each by itself, in the hosted page.

import assert from "node:assert/strict";
import { visits } from "./support/visit.js";

const visit = visits({ hosted: true });

/** Runs `act(module, input)` in the page with one of its modules. */
const within = (page, name, act, input) =>
  page.evaluate(
    // The page's policy lets no text be run: the function comes as part of this one.
    `(async () => (${act})(await import(new URL(${JSON.stringify(`./js/${name}`)}, location.href)), ${JSON.stringify(input ?? null)}))()`,
  );

visit("verbs on kits answer new kits and leave the old as they were", {}, async ({ page }) => {
  const results = await within(page, "kit.js", (kits) => {
    const freeze = (kit) => Object.freeze({ ...kit, pans: Object.freeze(kit.pans.map((pan) => Object.freeze([...pan]))) });
    const kit = freeze({ title: "Tin", capacity: 4, stock: 1, pans: [[1], [2, 3], [4]] });
    return {
      pack: kits.pack(kit, 9),
      remove: kits.remove(kit, 1),
      removeNothing: kits.remove(kit, 7).pans,
      later: kits.move(kit, 0, 1).pans,
      earlier: kits.move(kit, 2, -1).pans,
      farLater: kits.move(kit, 0, 99).pans,
      farEarlier: kits.move(kit, 2, -99).pans,
      refill: kits.refill(kit, 0, [7, 8]).pans,
      join: kits.refill(kit, 1, [2]).pans,
      resize: kits.resize(kit, 6),
      retitle: kits.retitle(kit, "Other"),
      paints: kits.paintsOf({ ...kit, pans: [[1], [2, 1], [2]] }),
      holds: [1, 3, 9].map((paint) => kits.holds(kit, paint)),
      kit,
    };
  });
  const kit = { title: "Tin", capacity: 4, stock: 1, pans: [[1], [2, 3], [4]] };
  assert.deepEqual(results.pack, { ...kit, pans: [[1], [2, 3], [4], [9]] });
  assert.deepEqual(results.remove, { ...kit, pans: [[1], [4]] });
  assert.deepEqual(results.removeNothing, kit.pans);
  assert.deepEqual(results.later, [[2, 3], [1], [4]]);
  assert.deepEqual(results.earlier, [[1], [4], [2, 3]]);
  assert.deepEqual(results.farLater, [[2, 3], [4], [1]]);
  assert.deepEqual(results.farEarlier, [[4], [1], [2, 3]]);
  assert.deepEqual(results.refill, [[7, 8], [2, 3], [4]]);
  assert.deepEqual(results.join, [[1], [2], [4]]);
  assert.deepEqual(results.resize, { ...kit, capacity: 6 });
  assert.deepEqual(results.retitle, { ...kit, title: "Other" });
  assert.deepEqual(results.paints, [1, 2]);
  assert.deepEqual(results.holds, [true, true, false]);
  assert.deepEqual(results.kit, kit, "frozen, and no verb minded");
});

visit("a verb that has nothing to do answers the same kit", {}, async ({ page }) => {
  const same = await within(page, "kit.js", (kits) => {
    const kit = { title: "Tin", capacity: 2, stock: 0, pans: [[1], [2]] };
    return {
      packFull: kits.pack(kit, 9) === kit,
      moveFirstEarlier: kits.move(kit, 0, -1) === kit,
      moveLastLater: kits.move(kit, 1, 1) === kit,
      resize: kits.resize(kit, 2) === kit,
      resizeTooSmall: kits.resize(kit, 1) === kit,
      retitle: kits.retitle(kit, "  Tin\n") === kit,
    };
  });
  for (const [verb, held] of Object.entries(same)) assert.ok(held, verb);
});

visit("tins hold 1 to 48, whatever is asked", {}, async ({ page }) => {
  const sizes = await within(page, "kit.js", (kits, asked) => asked.map((size) => kits.resize({ ...kits.emptyKit(), capacity: 7 }, size === null ? NaN : size).capacity), [5, 0, -3, 48, 49, 1e9, 2.5, null]);
  assert.deepEqual(sizes, [5, 1, 1, 48, 48, 48, 3, 1]);
});

visit("titles lose control characters and what is beyond 60", {}, async ({ page }) => {
  const texts = ["  Harbour ", "a\u0000b\tc\nd", "x".repeat(61), "🖌".repeat(61), `${"y".repeat(59)} z`, "\u0085", "<b>&"];
  const titles = await within(page, "kit.js", (kits, texts) => texts.map((text) => kits.retitle(kits.emptyKit("was"), text).title), texts);
  assert.deepEqual(titles, ["Harbour", "a b c d", "x".repeat(60), "🖌".repeat(60), "y".repeat(59), "", "<b>&"]);
  // The core refuses what is longer: every title must go into a link.
  const lengths = await within(page, "core.js", async ({ ready }, titles) => {
    const { decode_kit, encode_kit } = await ready();
    return titles.map((title) => decode_kit(encode_kit({ title, capacity: 1, stock: 0, pans: [] })).title);
  }, titles);
  assert.deepEqual(lengths, titles);
});

visit("words say parts, loads and crossings", {}, async ({ page }) => {
  const words = await within(page, "words.js", ({ recipe, count, loadName, grade, crossingSentence }) => {
    const shelf = new Map([[1, { name: "Blue" }], [2, { name: "Brown" }], [3, { name: "Green" }]]);
    const crossing = (kind) => crossingSentence({ kind, lean: "green", mix: { parts: [3, 2], share: 0.4, swatch: { lightness: 41.6, chroma: 7.4 } } }, ["Blue", "Brown"]);
    return {
      recipes: [[[1, 2], [2, 1]], [[1, 1], [2, 2], [3, 12]], [[1, 1]]].map((parts) => recipe(parts, shelf)),
      counts: [count(1), count(2)],
      loads: [1, 0.8, 0.7, 0.5, 0.13, 1 / 16, 1 / 32].map(loadName),
      grades: [grade("staining", 0), grade("transparency", 3.6), grade("granulation", 9), grade("granulation", null), grade("granulation", undefined)],
      crossings: ["pure", "near", "dull", "none"].map(crossing),
    };
  });
  assert.deepEqual(words.recipes, ["2 parts Blue, 1 part Brown", "1 part Blue, 2 parts Brown, 12 parts Green", "Blue"]);
  assert.deepEqual(words.counts, ["1 part", "2 parts"]);
  assert.deepEqual(words.loads, ["masstone", "masstone", "strong wash", "strong wash", "light wash", "pale wash", "pale wash"]);
  assert.deepEqual(words.grades, ["lifts well", "very transparent", "granulates strongly", null, null]);
  assert.match(words.crossings[0], /3:2, L\* 42: a pure grey/);
  assert.match(words.crossings[1], /3:2, L\* 42, leaning green/);
  assert.match(words.crossings[2], /3:2, L\* 42, still green at C\* 7/);
  assert.match(words.crossings[3], /than Blue alone/);
});

visit("views of the store hear only of what changed", {}, async ({ page }) => {
  const heard = await within(page, "store.js", ({ createStore }) => {
    const heard = [];
    const store = createStore({ a: 1, b: [2] });
    const stop = store.subscribe((state, changed, before) => heard.push([state.a, [...changed], before.a]));
    store.set({ a: 1 });
    store.set({ a: 5, b: store.get().b });
    stop();
    store.set({ a: 6 });
    return heard;
  });
  assert.deepEqual(heard, [[5, ["a"], 1]]);
});

visit("a link's text is found in an address's fragment alone", {}, async ({ page }) => {
  const texts = await within(page, "share.js", ({ linkText }) => ["#kit=AQ", "#kit=", "#other=AQ", "", "#kit"].map(linkText));
  assert.deepEqual(texts, ["AQ", "", null, null, null]);
});
