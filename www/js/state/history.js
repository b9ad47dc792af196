// Undo and redo of kits, own paints, records, marks and the path's ends. A drag along a path is a look, not a step.

/** @import { Own, Patch, State, Store } from "./types.js" */
/** @typedef {{ [list: string]: any[] }} Lists */
/** @typedef {{ was: any, is: any }} Step */

import { SHOWN, STEPS } from "./keys.js";

const MOST = 200;

/** @type {(own: Own) => number} */
const numberOf = ([number]) => number;
/** @type {(item: { id: string }) => string} */
const idOf = ({ id }) => id;
/** @type {<T>(value: T) => T} */
const itself = (value) => value;

/**
 * Lists that a step changes, and what tells their items apart. The kit in hand is the first of the kits.
 *
 * @type {[string, (item: any) => unknown][]}
 */
const LISTS = Object.entries({ kits: idOf, own: numberOf, records: idOf, held: itself, owned: itself });

/** @type {(state: State) => Lists} */
const listsOf = ({ kit, others, own, records, held, owned }) => ({ kits: [kit, ...others], own, records, held, owned });

/** @type {(state: State) => Patch} */
const looksOf = (state) => Object.fromEntries(SHOWN.map((key) => [key, state[key]]));

/**
 * `now` with what changed from `from` to `to`. Where it is not `from` any more, as another tab changed it since, only what
 * is still as it was is put back: `{list, kept}` counts the items that were let be.
 *
 * @type {(now: any[], from: any[], to: any[], idOf: (item: any) => unknown) => { list: any[], kept: number }}
 */
function stepped(now, from, to, idOf) {
  if (now.length === from.length && now.every((item, i) => item === from[i])) return { list: to, kept: 0 };
  const [was, wanted] = [from, to].map((list) => new Map(list.map((item) => [idOf(item), item])));
  let kept = 0;
  const list = now.flatMap((item) => {
    const id = idOf(item);
    if (was.get(id) === wanted.get(id)) return [item];
    if (item !== was.get(id)) {
      kept += 1;
      return [item];
    }
    return wanted.has(id) ? [wanted.get(id)] : [];
  });
  to.forEach((item, i) => {
    const id = idOf(item);
    if (was.has(id) || list.some((other) => idOf(other) === id)) return;
    const before = to.slice(0, i).map(idOf);
    const place = list.findLastIndex((other) => before.includes(idOf(other)));
    list.splice(place + 1, 0, item);
  });
  return { list, kept };
}

/**
 * Follows the store. Answers `{undo, redo, canUndo, canRedo}`; `undo` and `redo` answer how many items were let be.
 *
 * @type {(store: Store, onchange?: () => void) => { undo: () => number, redo: () => number, canUndo: () => boolean, canRedo: () => boolean }}
 */
export function createHistory(store, onchange = () => {}) {
  /** @type {Step[]} */
  let past = [];
  /** @type {Step[]} */
  let future = [];

  store.subscribe((state, changed, before, { from } = {}) => {
    // What another tab did is its own to take back.
    if (from === "history" || from === "elsewhere" || !STEPS.some((key) => changed.has(key))) return;
    const [was, is] = [listsOf(before), listsOf(state)];
    past = [...past, { was: { ...was, looks: looksOf(before) }, is: { ...is, looks: looksOf(state) } }].slice(-MOST);
    future = [];
    onchange();
  });

  /** @type {(source: Step[], target: Step[], from: "was" | "is", to: "was" | "is") => number} */
  function step(source, target, from, to) {
    const entry = source.at(-1);
    if (!entry) return 0;
    const state = store.get();
    const now = listsOf(state);
    /** @type {any} */
    const patch = { ...entry[to].looks };
    let kept = 0;
    for (const [key, idOf] of LISTS) {
      if (entry[from][key] === entry[to][key]) continue;
      const done = stepped(now[key], entry[from][key], entry[to][key], idOf);
      kept += done.kept;
      if (key !== "kits") patch[key] = done.list;
      else if (done.list.length) [patch.kit, ...patch.others] = done.list;
    }
    // Looks of the last moment before the step come back with a later redo.
    target.push({ ...entry, [from]: { ...entry[from], looks: looksOf(state) } });
    source.pop();
    store.set(patch, { from: "history" });
    onchange();
    return kept;
  }

  return {
    undo: () => step(past, future, "is", "was"),
    redo: () => step(future, past, "was", "is"),
    canUndo: () => past.length > 0,
    canRedo: () => future.length > 0,
  };
}
