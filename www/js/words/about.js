// What to know of the paints at hand.

import { capital, number } from "./form.js";

export const empty = "Choose paints to read here how they behave.";
export const caution = "Caution. ";
/** @type {(traits: string[]) => string} */
export const traits = (traits) => `${capital(traits.join(", "))}. `;
/** @type {(grade: number) => string} */
export const lightfast = (grade) => `Lightfast tint: Blue Wool ${number(grade, 1, 0)} of 8.`;
/** @type {(tier: string, source: string) => string} */
export const spectrum = (tier, source) => `Spectrum ${tier}. Source: ${source}.`;

/**
 * What thinning does to a paint; `turn` is by how many degrees its hue turns, where that is seen.
 *
 * @type {(thick: string, thin: string, turn: number | null) => string}
 */
export const thinned = (thick, thin, turn) =>
  turn === null
    ? `From masstone to pale wash: ${thick} to ${thin}.`
    : `From masstone to pale wash: ${thick} to ${thin}; the hue turns ${number(turn)}°.`;

export const sources =
  "Ratings: B. MacEvoy, handprint.com/HP/WCL, averaged over makers. Cautions and most strengths: common practice; the label and the safety data sheet come first.";
