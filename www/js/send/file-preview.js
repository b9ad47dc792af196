// What is in a kit file, in words, before it is added.

/** @import { Patch, State } from "../state/types.js" */
/** @typedef {{ kits: number, own: number, records: number }} Counts */
/** @typedef {{ kits: string[], own: string[], records: number }} Came what came new, and how many records */

import { element } from "../page/dom.js";
import * as words from "../words/files.js";

/**
 * What came new of a file, counted.
 *
 * @param {Came} came
 */
export const countsOf = ({ kits, own, records }) => ({ kits: kits.length, own: own.length, records });

/**
 * How many marks a patch of the state adds, in words.
 *
 * @param {Patch} patch
 * @param {Pick<State, "held" | "owned">} state
 */
export function marksOf(patch, state) {
  /** @type {(key: "held" | "owned") => number} */
  const more = (key) => (patch[key]?.length ?? 0) - state[key].length;
  const [held, owned] = [more("held"), more("owned")];
  return [...(held ? [words.marksHeld(held)] : []), ...(owned ? [words.marksOwned(owned)] : [])];
}

/**
 * What is new, a line for each kind that there is something of.
 *
 * @param {Came} came
 * @param {string[]} marks
 */
export const newsOf = ({ kits, own, records }, marks) =>
  /** @type {[string, string[]][]} */ ([
    [words.kinds.kits, kits],
    [words.kinds.own, own],
    [words.kinds.records, records ? [String(records)] : []],
    [words.kinds.marks, marks],
  ])
    .filter(([, names]) => names.length > 0)
    .map(([what, names]) => element("li", {}, element("b", {}, words.kind(what)), names.join(", ")));

/**
 * What is left out and why: for want of room, or because it cannot be read. Nothing where all is taken.
 *
 * @param {Counts} left
 * @param {string[]} faults
 */
export function leftOut(left, faults) {
  const isFull = left.kits + left.own + left.records > 0;
  const missed = [...(isFull ? [words.noRoom(left)] : []), ...faults];
  if (missed.length === 0) return "";
  return element(
    "details",
    { class: "fault", open: missed.length < 6 },
    element("summary", {}, words.leftOut),
    element("ul", {}, ...missed.map((fault) => element("li", {}, fault))),
  );
}
