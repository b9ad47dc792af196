// Verbs on the kits that are kept: one in hand, the others waiting. Each answers what changes, or throws why it cannot be. Pure: no page.

/** @import { KitContent, Shelf, State } from "./types.js" */
/** @typedef {Pick<State, "kit" | "others">} Kits */

import * as words from "../words/state.js";
import { isUntouchedDemo } from "./demo.js";
import { newId } from "./ids.js";
import { emptyKit, MOST_KITS, nameOf, retitle } from "./kit.js";

/**
 * How many more kits are kept. The demo takes no room as long as nobody has changed it.
 *
 * @type {(state: Kits, shelf: Shelf) => number}
 */
export const roomFor = ({ kit, others }, shelf) =>
  MOST_KITS - [kit, ...others].filter((kit) => !isUntouchedDemo(kit, shelf)).length;

/**
 * The title, or the next one of the same name that no other kit bears.
 *
 * @type {(kit: { title: string }, others: { title: string }[]) => string}
 */
export function freeTitle(kit, others) {
  const taken = new Set(others.map(({ title }) => title));
  for (let count = 1; ; count += 1) {
    const tried = count === 1 ? kit.title : words.numbered([...nameOf(kit)].slice(0, 56).join(""), count);
    if (!taken.has(tried)) return tried;
  }
}

/**
 * Takes a kit in hand that was not kept before; the one in hand waits on top of the others.
 *
 * @type {(state: Kits, kit: KitContent, shelf: Shelf) => Kits}
 */
export function addKit(state, kit, shelf) {
  if (roomFor(state, shelf) <= 0) throw new Error(words.tooManyKits(MOST_KITS));
  return { kit: { ...kit, id: newId() }, others: [state.kit, ...state.others] };
}

/**
 * The same under a title that tells it from the others.
 *
 * @type {(state: Kits, kit: KitContent, title: string, shelf: Shelf) => Kits}
 */
export const addNamed = (state, kit, title, shelf) => {
  const named = retitle(kit, kit.title || title);
  return addKit(state, retitle(named, freeTitle(named, [state.kit, ...state.others])), shelf);
};

/** @type {(state: Kits, shelf: Shelf) => Kits} */
export const startKit = (state, shelf) => addKit(state, emptyKit(), shelf);

/** @type {(state: Kits, shelf: Shelf) => Kits} */
export const copyKit = (state, shelf) =>
  addKit(state, retitle(state.kit, words.copyOf([...nameOf(state.kit)].slice(0, 52).join(""))), shelf);

/**
 * The kit in hand goes first among the others; so the last ones used stand on top.
 *
 * @type {(state: Kits, i: number) => Kits}
 */
export const takeKit = ({ kit, others }, i) => ({ kit: others[i], others: [kit, ...others.filter((_, j) => j !== i)] });

/** @type {(state: Kits) => Kits} */
export const throwKit = ({ others }) => ({ kit: others[0], others: others.slice(1) });

/**
 * Where an equal kit stands: 0 in hand, from 1 on among the others; -1 where there is none. `textOf` writes kits.
 *
 * @type {(state: Kits, wanted: KitContent, textOf: (kit: KitContent) => string) => number}
 */
export function indexOfKit({ kit, others }, wanted, textOf) {
  const text = textOf(wanted);
  return [kit, ...others].findIndex((known) => textOf(known) === text);
}
