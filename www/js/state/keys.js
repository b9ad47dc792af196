// What is done with each part of the state: whether it is kept, how it is read back, and what undo does with it.
// What stands in no line follows from the rest, or is of this visit alone. Pure: no page.

/** @import { State } from "./types.js" */
/** @typedef {{ fits: (value: unknown) => boolean, count?: number, least?: number, most?: number }} Kind */
/** @typedef {{ kept?: "item" | "look", undone?: "step" | "shown", is?: Kind }} Handling `kept` as items of their own or with the looks; `undone` as a step, or put back with one */

import { LEAST_LOAD, LIGHTS } from "../../pkg/facts.js";

/** @type {Kind} */
const flag = { fits: (value) => typeof value === "boolean" };

/**
 * One of so many, by its index.
 *
 * @type {(count: number) => Kind}
 */
const choice = (count) => ({
  count,
  fits: (value) => typeof value === "number" && Number.isInteger(value) && value >= 0 && value < count,
});

/**
 * A number that slides from one end to the other.
 *
 * @type {(least: number, most: number) => Kind}
 */
const range = (least, most) => ({
  least,
  most,
  fits: (value) => typeof value === "number" && value >= least && value <= most,
});

/** @type {{ [key in keyof State]?: Handling }} */
const KEYS = {
  kit: { kept: "item", undone: "step" },
  others: { kept: "item", undone: "step" },
  own: { kept: "item", undone: "step" },
  records: { kept: "item", undone: "step" },
  held: { kept: "item", undone: "step" },
  owned: { kept: "item", undone: "step" },
  ticked: { kept: "item" },
  ends: { kept: "look", undone: "step" },
  next: { undone: "shown", is: choice(2) },
  laid: { kept: "look", undone: "shown", is: choice(3) },
  share: { kept: "look", undone: "shown", is: range(0, 1) },
  load: { kept: "look", undone: "shown", is: range(LEAST_LOAD, 1) },
  light: { kept: "look", is: choice(LIGHTS.length) },
  wet: { kept: "look", is: flag },
  showShelf: { kept: "look", is: flag },
  ribbon: { kept: "look", is: flag },
  reach: { kept: "look", is: flag },
  dim: { kept: "look", is: flag },
  welcome: { kept: "look", is: flag },
  learning: { kept: "look", is: flag },
};

/** @type {[keyof State, Handling][]} */
const ALL = /** @type {any} */ (Object.entries(KEYS));

/** @type {(may: (how: Handling) => unknown) => (keyof State)[]} */
const those = (may) => ALL.flatMap(([key, how]) => (may(how) ? [key] : []));

/** What is kept as items. */
export const WORK = those(({ kept }) => kept === "item");

/** What a step of undo changes. */
export const STEPS = those(({ undone }) => undone === "step");

/** What is shown with a step, and put back as it was. */
export const SHOWN = /** @type {(keyof State)[]} */ (["ends", ...those(({ undone }) => undone === "shown")]);

/** @type {(may: (is: Kind) => unknown) => [keyof State, Kind][]} */
const kinds = (may) => ALL.flatMap(([key, { is }]) => (is && may(is) ? [[key, is]] : []));

/** Looks that are kept, and which values fit them. */
export const PLAIN = kinds(() => true).filter(([key]) => KEYS[key]?.kept);

/** Numbers that choose. */
export const CHOICES = kinds(({ count }) => count);

/** Numbers that slide: brought within their range. */
export const SLIDES = kinds(({ most }) => most);
