// The kit a first visit shows. Invented: four days of sketching in a North Sea harbour in October.

/** @import { Kit, Shelf } from "./types.js" */

import * as words from "../words/state.js";
import { sameKit } from "./kit.js";

/** Slate and granite, kelp, rusted chain, a red oxide hull, fog over the breakwater. */
const PANS = [
  ["py184"],
  ["py42"],
  ["po73"],
  ["pr254"],
  ["pv19-rose"],
  ["pr101-light-red"],
  ["pbr7-burnt-sienna", "pbr7-raw-umber"],
  ["pr179"],
  ["pb29"],
  ["pb15-3"],
  ["pb60", "pv23"],
  ["pg18"],
];

/** The path it is shown with: ultramarine to burnt sienna, the grey of wet granite. */
export const DEMO_ENDS = ["pb29", "pbr7-burnt-sienna"];

/** A strong wash: heavy enough for a dark, thin enough to see its hue. */
export const DEMO_LOAD = 0.5;

/** The demo kit has the same id everywhere, so that no device ever holds two. */
export const DEMO = "demo";

/**
 * The number of a paint of the shelf that is always there.
 *
 * @type {(shelf: Shelf, key: string) => number}
 */
export function builtIn(shelf, key) {
  const paint = shelf.find(key);
  if (!paint) throw new Error(words.notOnShelf(key));
  return paint.number;
}

/** @type {(shelf: Shelf) => Kit} */
export function demoKit(shelf) {
  const pans = PANS.map((pan) => pan.map((key) => builtIn(shelf, key)));
  return { id: DEMO, title: words.demo, capacity: 12, stock: 0, paper: null, pans, puddles: [], places: [] };
}

/**
 * Whether a kit is the demo as a first visit shows it.
 *
 * @type {(kit: Partial<Kit> | undefined, shelf: Shelf) => boolean}
 */
export function isUntouchedDemo(kit, shelf) {
  return kit?.id === DEMO && sameKit(kit, demoKit(shelf));
}
