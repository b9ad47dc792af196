// How the page is looked at, as it is kept: each tab's own affair, and the last one's at the next visit. Pure: no page.

/** @import { Refs, State } from "./types.js" */

import { partsOut } from "./items.js";
import { PLAIN } from "./keys.js";

/** What of the state shows in the looks that are kept. */
export const LOOKS = ["ends", ...PLAIN.map(([key]) => key), "kit", "others"];

/**
 * Looks as they are kept.
 *
 * @type {(state: State, refs: Refs) => object}
 */
export const looksOf = (state, refs) => ({
  ends: state.ends.map((end) => end && { ...end, parts: partsOut(end.parts, refs) }),
  ...Object.fromEntries(PLAIN.map(([key]) => [key, state[key]])),
  order: [state.kit, ...state.others].map(({ id }) => id),
});

/**
 * What was learned as it is kept.
 *
 * @type {(state: State, refs: Refs) => object[]}
 */
export const learnedOf = ({ learned }, { refOf }) =>
  learned.map(({ number, ...film }) => ({ paint: refOf(number), ...film }));
