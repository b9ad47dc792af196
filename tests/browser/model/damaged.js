// Starts of the page's state from storage in which one thing is spoilt.

import { frame } from "./run.js";
import { spoilt } from "./spoil.js";

const PREFIX = "washpath/";

/** Entries that are no work of the painter's: they are made anew. */
const MADE = ["film", "looks", "learned"];
const kindOf = (key) => key.split("/")[0];
const isWork = (key) => !MADE.includes(kindOf(key));

let tab = null;

function fill(entries) {
  localStorage.clear();
  for (const [key, text] of Object.entries(entries)) localStorage.setItem(key, text);
}

const stored = () => Object.fromEntries(Object.entries(localStorage).filter(([key]) => key.startsWith("washpath")));

/** What comes of a start from some entries: faults that were named, what the state holds, and what is stored after a change more. */
async function start(entries) {
  tab.close();
  fill(entries);
  const { faults } = await tab.open();
  const wrong = tab.check();
  const { items } = tab.facts();
  await tab.act("tick", 1);
  const { items: after } = tab.facts();
  wrong.push(...tab.check());
  tab.close();
  return { named: faults.map((fault) => fault.split(": ")[0]), wrong, items, after, stored: stored() };
}

/** What a former version kept as one text, as this one keeps it, with the demo changed beside it. */
async function whole(old) {
  tab ??= (await frame()).tab;
  tab.close();
  fill({});
  await tab.open();
  await tab.act("retitle", 1);
  tab.close();
  const demo = localStorage.getItem(`${PREFIX}kit/demo`);
  fill({ washpath: old });
  await tab.open();
  await tab.act("place", 1);
  tab.close();
  const entries = { ...stored(), [`${PREFIX}kit/demo`]: demo };
  return { entries, good: await start(entries) };
}

/** Spoils each kind of entry in each of its places; answers how many states there were, and what was wrong with which. */
export async function entriesSpoilt(old) {
  const { entries, good } = await whole(old);
  const faults = good.wrong.map((wrong) => `unspoilt: ${wrong}`);
  const seen = new Map();
  for (const key of Object.keys(entries)) {
    // Own paints of swatches are kept otherwise than mixtures.
    const kind =
      kindOf(key.slice(PREFIX.length)) +
      (entries[key].includes('"parts":[]') ? " of swatches" : "") +
      (key.endsWith("demo") ? " of the demo" : "");
    if (!seen.has(kind)) seen.set(kind, key);
  }
  let count = 0;
  for (const key of seen.values()) {
    for (const { how, at, text } of spoilt(entries[key])) {
      // That is how something is thrown away.
      if (isWork(key.slice(PREFIX.length)) && how === "value: null") continue;
      count += 1;
      const before = { ...entries, [key]: text };
      const result = await start(before).catch((error) => ({ wrong: [`no start: ${error.stack}`] }));
      const fault = result.wrong.join("; ") || judged(key.slice(PREFIX.length), before, result, good);
      if (fault) faults.push(`${key}, ${how}: ${fault}`);
      void at;
    }
  }
  return { count, kinds: [...seen.keys()], faults };
}

function judged(key, before, { named, items, stored }, good) {
  for (const [other, value] of Object.entries(good.items)) {
    if (items[other] === value || named.includes(other)) continue;
    // A kit is kept with the paints it holds, and shows them as they are now.
    if (kindOf(key) === "own" && kindOf(other) === "kit" && other in items) continue;
    if (other !== key) return `${other} is lost`;
    if (!(other in items) && kindOf(key) !== "ticked") return "it is neither read nor named";
  }
  for (const other of named) {
    // Records and marks of a paint go with it.
    const isOf = kindOf(key) === "own" && ["record", "held", "owned"].includes(kindOf(other));
    if (other !== key && !isOf) return `${other} is named`;
  }
  // A paint that cannot be read comes back by a kit that holds it.
  const isBack = kindOf(key) === "own" && named.includes(key) && key in items;
  const changed = Object.keys(before).filter(
    (other) =>
      isWork(other.slice(PREFIX.length)) && stored[other] !== before[other] && !(isBack && other === PREFIX + key),
  );
  return changed.length ? `it writes over ${changed.join(", ")}` : null;
}

/** The same with the one text of a former version. */
export async function formerSpoilt(old) {
  await whole(old);
  const good = await start({ washpath: old });
  const faults = good.wrong.map((wrong) => `unspoilt: ${wrong}`);
  let count = 0;
  for (const { how, at, text } of spoilt(old)) {
    // An empty list is a whole one, and a state may lack any.
    if (/^(all: \{.*\}|\w+: \[\])$/.test(how)) continue;
    count += 1;
    const result = await start({ washpath: text }).catch((error) => ({ wrong: [`no start: ${error.stack}`] }));
    const fault = result.wrong.join("; ") || (await judgedFormer(at ?? [], text, result, good));
    if (fault) faults.push(`${how}: ${fault}`);
  }
  return { count, faults };
}

const KINDS = {
  kit: ["kit"],
  others: ["kit"],
  own: ["own", "record", "held", "owned", "kit"],
  records: ["record"],
  held: ["held"],
  owned: ["owned"],
  ticked: ["ticked"],
};

async function judgedFormer([list], text, { named, items, after, stored }, good) {
  const count = (items, kind) => Object.keys(items).filter((key) => kindOf(key) === kind).length;
  const touched = list === undefined ? ["kit", "own", "record", "held", "owned", "ticked"] : (KINDS[list] ?? []);
  for (const [key, value] of Object.entries(good.items)) {
    if (items[key] === value) continue;
    if (!touched.includes(kindOf(key))) return `${key} is lost`;
    if (named.length === 0 && count(items, kindOf(key)) < count(good.items, kindOf(key)))
      return `${key} is lost without a word`;
  }
  if (named.length) return stored.washpath === text ? null : "what could not be read is gone";
  if (stored.washpath !== undefined) return "it is kept twice";
  const again = await start(stored);
  const differing = Object.keys({ ...after, ...again.items }).filter((key) => after[key] !== again.items[key]);
  return differing.length || again.named.length
    ? `a second start differs: ${[...differing, ...again.named].join(", ")}`
    : null;
}
