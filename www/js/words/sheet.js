// The sheet of mixes.

import { ENDS } from "./terms.js";

export const empty = "Choose two paints to see their sheet.";
export const recorded = "As you recorded it";

/**
 * Mixes of two paints, or glazes of one over the other.
 *
 * @type {(laid: number, names: string[]) => string}
 */
export function caption(laid, names) {
  const [a, b] = names.map((name, i) => `${name} (${ENDS[i]})`);
  return [`Mixes of ${a} and ${b}`, `Glazes of ${a} over ${b}`, `Glazes of ${b} over ${a}`][laid];
}

/** @type {(column: string, load: string, colour: string) => string} */
export const cell = (column, load, colour) => `${column}, ${load}: ${colour}`;
