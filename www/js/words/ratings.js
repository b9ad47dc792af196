// A paint's ratings as words.

import { GRANULATION, STAINING, STRONG, TRANSPARENCY, TRANSPARENT, WEAK } from "../../pkg/facts.js";

const GRADES = { transparency: TRANSPARENCY, staining: STAINING, granulation: GRANULATION };

/**
 * A rating of 0 to 4 as a word, or nothing where it was not measured.
 *
 * @type {(property: "transparency" | "staining" | "granulation", rating: number | null | undefined) => string | null}
 */
export const grade = (property, rating) =>
  rating == null
    ? null
    : GRADES[property][property === "transparency" && rating >= TRANSPARENT ? 4 : Math.min(Math.round(rating), 4)];

/**
 * How much a volume of paint does in a mix, where it is far from the average paint's.
 *
 * @type {(strength: number) => string | null}
 */
export function strengthOf(strength) {
  if (strength >= STRONG) return "strong in mixes";
  return strength <= WEAK ? "weak in mixes" : null;
}

export const granulating = "granulating";
export const estimated = "estimated";
