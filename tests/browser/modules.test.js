// The page's modules that only compute, each by itself; and with them the core that the page imports.

import assert from "node:assert/strict";
import { readdir, readFile } from "node:fs/promises";
import { posix } from "node:path";
import { test } from "node:test";
import * as kit from "../../target/sources/js/state/kit.js";
import { linkText } from "../../target/sources/js/state/link-text.js";
import * as pans from "../../target/sources/js/state/pans.js";
import { createStore } from "../../target/sources/js/state/store.js";
import { grade } from "../../target/sources/js/words/ratings.js";
import { count, crossingSentence, loadName, recipe } from "../../target/sources/js/words/terms.js";

/** Verbs on kits and their pans. */
const kits = { ...kit, ...pans };

/** The half of the core for the page, as the build put it beside the page's sources. */
async function core() {
  const built = new URL("../../target/sources/pkg/", import.meta.url);
  const { default: init, ...core } = await import(new URL("studio.js", built));
  await init({ module_or_path: await readFile(new URL("studio_bg.wasm", built)) });
  return core;
}

test("verbs on kits answer new kits and leave the old as they were", () => {
  const freeze = (kit) =>
    Object.freeze({ ...kit, pans: Object.freeze(kit.pans.map((pan) => Object.freeze([...pan]))) });
  const plain = { title: "Tin", capacity: 4, stock: 1, pans: [[1], [2, 3], [4]] };
  const kit = freeze(plain);
  assert.deepEqual(kits.pack(kit, 9), { ...plain, pans: [[1], [2, 3], [4], [9]] });
  assert.deepEqual(kits.remove(kit, 1), { ...plain, pans: [[1], [4]] });
  assert.deepEqual(kits.remove(kit, 7), plain);
  assert.deepEqual(kits.move(kit, 0, 1).pans, [[2, 3], [1], [4]]);
  assert.deepEqual(kits.move(kit, 2, -1).pans, [[1], [4], [2, 3]]);
  assert.deepEqual(kits.move(kit, 0, 99).pans, [[2, 3], [4], [1]]);
  assert.deepEqual(kits.move(kit, 2, -99).pans, [[4], [1], [2, 3]]);
  assert.deepEqual(kits.refill(kit, 0, [7, 8]).pans, [[7, 8], [2, 3], [4]]);
  assert.deepEqual(kits.refill(kit, 1, [2]).pans, [[1], [2], [4]]);
  assert.deepEqual(kits.join(kit, 0, 2).pans, [
    [2, 3],
    [4, 1],
  ]);
  assert.deepEqual(kits.join(kit, 2, 0).pans, [
    [1, 4],
    [2, 3],
  ]);
  assert.deepEqual(kits.part(kit, 1).pans, [[1], [2], [3], [4]]);
  assert.deepEqual(kits.resize(kit, 6), { ...plain, capacity: 6 });
  assert.deepEqual(kits.retitle(kit, "Other"), { ...plain, title: "Other" });
  assert.deepEqual(kits.paintsOf({ ...kit, pans: [[1], [2, 1], [2]] }), [1, 2]);
  assert.deepEqual(
    [1, 3, 9].map((paint) => kits.holds(kit, paint)),
    [true, true, false],
  );
  assert.deepEqual(kit, plain, "frozen, and no verb minded");
});

test("a verb that has nothing to do answers the same kit", () => {
  const kit = { title: "Tin", capacity: 2, stock: 0, pans: [[1], [2]] };
  const same = {
    packFull: kits.pack(kit, 9),
    joinItself: kits.join(kit, 1, 1),
    joinBeyond: kits.join(kit, 0, 2),
    partFull: kits.part({ ...kit, pans: [[1, 2], [3]] }, 0).pans.length === 2 && kit,
    moveFirstEarlier: kits.move(kit, 0, -1),
    moveLastLater: kits.move(kit, 1, 1),
    resize: kits.resize(kit, 2),
    resizeTooSmall: kits.resize(kit, 1),
    retitle: kits.retitle(kit, "  Tin\n"),
  };
  for (const [verb, answered] of Object.entries(same)) assert.equal(answered, kit, verb);
});

test("tins hold 1 to 48, whatever is asked", () => {
  const sizes = [5, 0, -3, 48, 49, 1e9, 2.5, NaN].map(
    (size) => kits.resize({ ...kits.emptyKit(), capacity: 7 }, size).capacity,
  );
  assert.deepEqual(sizes, [5, 1, 1, 48, 48, 48, 3, 1]);
});

test("titles lose control characters and what is beyond 60", async () => {
  const texts = [
    "  Harbour ",
    "a\u0000b\tc\nd",
    "x".repeat(61),
    "🖌".repeat(61),
    `${"y".repeat(59)} z`,
    "\u0085",
    "<b>&",
  ];
  const titles = texts.map((text) => kits.retitle(kits.emptyKit("was"), text).title);
  assert.deepEqual(titles, ["Harbour", "a b c d", "x".repeat(60), "🖌".repeat(60), "y".repeat(59), "", "<b>&"]);
  // The core refuses what is longer: every title must go into a link.
  const { decode_kit, encode_kit } = await core();
  assert.deepEqual(
    titles.map((title) => decode_kit(encode_kit({ title, capacity: 1, stock: 0, pans: [] })).title),
    titles,
  );
});

test("words say parts, loads and crossings", () => {
  const shelf = new Map([
    [1, { name: "Blue" }],
    [2, { name: "Brown" }],
    [3, { name: "Green" }],
  ]);
  const recipes = [
    [
      [1, 2],
      [2, 1],
    ],
    [
      [1, 1],
      [2, 2],
      [3, 12],
    ],
    [[1, 1]],
  ].map((parts) => recipe(parts, shelf));
  assert.deepEqual(recipes, ["2 parts Blue, 1 part Brown", "1 part Blue, 2 parts Brown, 12 parts Green", "Blue"]);
  assert.deepEqual([count(1), count(2)], ["1 part", "2 parts"]);
  assert.deepEqual([1, 0.8, 0.7, 0.5, 0.13, 1 / 16, 1 / 32].map(loadName), [
    "masstone",
    "masstone",
    "strong wash",
    "strong wash",
    "light wash",
    "pale wash",
    "pale wash",
  ]);
  const grades = [
    grade("staining", 0),
    grade("transparency", 3),
    grade("transparency", 1),
    grade("granulation", 9),
    grade("granulation", null),
    grade("granulation", undefined),
  ];
  assert.deepEqual(grades, ["lifts well", "transparent", "opaque", "granulates strongly", null, null]);
  const crossing = (kind) =>
    crossingSentence(
      { kind, lean: "green", mix: { parts: [3, 2], share: 0.4, swatch: { lightness: 41.6, chroma: 7.4 } } },
      ["Blue", "Brown"],
    );
  assert.match(crossing("pure"), /a pure grey at 3:2 \(L\*\s42\)/);
  assert.match(crossing("near"), /3:2 \(L\*\s42\), leaning green/);
  assert.match(crossing("dull"), /Comes close to grey at 3:2 .*leaning .*\(C\*\s7\)/);
  assert.match(crossing("none"), /than Blue alone/);
});

test("views of the store hear only of what changed", () => {
  const heard = [];
  const store = createStore({ a: 1, b: [2] });
  const stop = store.subscribe((state, changed, before) => heard.push([state.a, [...changed], before.a]));
  store.set({ a: 1 });
  store.set({ a: 5, b: store.get().b });
  stop();
  store.set({ a: 6 });
  assert.deepEqual(heard, [[5, ["a"], 1]]);
});

test("a link's text is found in an address's fragment alone", () => {
  assert.deepEqual(["#kit=AQ", "#kit=", "#other=AQ", "", "#kit"].map(linkText), ["AQ", "", null, null, null]);
});

/** The folders of the page's modules, as `www/README.md` describes them; what lies beside the folders starts the page. */
const FOLDERS = ["words", "page", "state", "core", "wheel", "mix", "kit", "match", "swatches", "send", "."];

/** What a module imports though it is of a later folder, or of none. What the build makes of the core stands below them all. */
function importsUp(name, text) {
  const place = (module) => FOLDERS.indexOf(posix.dirname(module));
  return [...text.matchAll(/\b(?:from|import)[\s(]*"(\.[^"]+)"/g)]
    .map(([, path]) => posix.join(posix.dirname(name), path))
    .filter((imported) => !imported.startsWith("../pkg/"))
    .filter((imported) => place(imported) < 0 || place(imported) > place(name));
}

test("each folder of modules imports only from those before it", async () => {
  const scripts = new URL("../../target/sources/js/", import.meta.url);
  const names = (await readdir(scripts, { recursive: true })).filter((name) => name.endsWith(".js"));
  assert.deepEqual([...new Set(names.map((name) => posix.dirname(name)))].sort(), [...FOLDERS].sort());
  const ups = await Promise.all(
    names.map(async (name) => [name, importsUp(name, await readFile(new URL(name, scripts), "utf8"))]),
  );
  assert.deepEqual(
    ups.filter(([, imported]) => imported.length),
    [],
  );
});

test("an import of a later folder is found however it is written", () => {
  const ways = [
    'import { save } from "../send/save.js";',
    'import {\n  one,\n  two,\n} from "../send/save.js";',
    'import "../send/save.js";',
    'export * from "../send/save.js";',
    'const { save } = await import("../send/save.js");',
  ];
  for (const text of ways) assert.deepEqual(importsUp("mix/mix.js", text), ["send/save.js"], text);
  assert.deepEqual(importsUp("mix/mix.js", 'import { join } from "../state/a.js";\nimport "./b.js";'), []);
  assert.deepEqual(importsUp("mix/mix.js", 'import "../main.js";'), ["main.js"]);
  assert.deepEqual(importsUp("main.js", 'import "./elsewhere/a.js";'), ["elsewhere/a.js"]);
  assert.deepEqual(importsUp("core/core.js", 'import "../../pkg/studio.js";'), []);
});
