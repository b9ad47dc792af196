// "Choose for me".

import { number, percent } from "./form.js";

/** @typedef {{ name: string } | null} Place */

export const must = "Must have";
export const mustNot = "Must not have";
/** @type {(name: string) => string} */
export const picked = (name) => `${name} ×`;
/** @type {(name: string) => string} */
export const takeOff = (name) => `${name}: take off the list`;

/**
 * What a choice is for.
 *
 * @type {(place: Place) => string}
 */
export const aim = (place) =>
  place
    ? `The kit whose mixes come nearest to the colours of “${place.name || "this place"}”, all in all. ${SCORED}`
    : `The kit whose mixes come nearest to real surface colours, all in all. ${SCORED}`;
const SCORED =
  "The nearer the best mix comes to a colour, the more the colour counts: in full for a match, not at all where anyone sees the difference (CIEDE2000 10).";

export const howFar = "How far the choice is";
export const begun = "Mixing all pairs …";
/** @type {(score: number) => string} */
export const best = (score) => `The best kit so far comes to ${number(score, 1)} of 100`;
export const stop = "Stop";
export const stopped = "Stopped. Your kit is as it was.";

/** @type {(part: number, place: Place) => string} */
export const reaches = (part, place) =>
  place ? `Reaches ${percent(part)} of the place. ` : `Reaches ${percent(part)} of real surface colours. `;
export const nearest = "No other kit under these rules comes nearer, all colours taken together: all were tried.";
/** @type {(gap: number) => string} */
export const nearlyBest = (gap) =>
  gap < 0.05
    ? "It is proven that no kit under these rules comes noticeably nearer, all colours taken together."
    : `It is proven that no kit under these rules comes nearer by more than ${number(gap, 1)} of 100, all colours taken together.`;

/** @type {(hue: string, why: string) => string} */
export const reason = (hue, why) => `${hue} · ${why}`;
export const asked = "asked for";
export const byRule = "meets a rule or fills the last place";
/** @type {(score: number) => string} */
export const without = (score) => `without it ${number(score, 1)} of 100 are lost`;

export const packIt = "Pack this kit";
/** @type {(paints: number) => string} */
export const chosen = (paints) => `A kit of ${paints} paints is chosen`;
/** @type {(paints: number, place: Place) => string} */
export const title = (paints, place) =>
  place ? `${paints} paints for ${place.name || "a place"}` : `${paints} paints for real surface colours`;
