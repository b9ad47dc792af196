// What records teach, and what to paint next.

import { number, percent, plural } from "./form.js";
import { loadName } from "./terms.js";

export const title = "What they teach";
export const planTitle = "Worth painting next";
/** @type {(reason: string) => string} */
export const failed = (reason) => `Nothing could be learned: ${reason}.`;
export const heldSaid = "As on the shelf";
export const learningSaid = "Learning again";
/** @type {(recipe: string, load: number) => string} */
export const paintIt = (recipe, load) => `${recipe}, ${loadName(load)}: paint it, let it dry, record it`;

// What was learned.

export const noRecords = "Two washes of each paint already bring predictions nearer to yours. Nothing is recorded yet.";
export const learning = "Learning …";
export const predict = "Predict with what was learned";
export const offBy = "off by";
export const uncorrected = "Shelf paints, uncorrected";
export const unrecorded = "Corrected, for mixes you have not recorded";
export const unrecordedTitle = "Each record is predicted from all the other records, never from itself.";
export const corrected = "Corrected, for the mixes you recorded";
export const correctedTitle =
  "Each record is predicted from all records, itself included, so this looks better than it is.";
/** @type {(error: number) => string} */
export const figure = (error) => number(error, 1);
export const tooFew = "Medians of CIEDE2000. Too few records to tell whether predictions became better.";
export const better =
  "Medians of CIEDE2000; 1 is just visible. Mixes you have not recorded are predicted better than before.";
export const notBetter =
  "Medians of CIEDE2000; 1 is just visible. Mixes you have not recorded are not yet predicted better than before.";
/** @type {(records: number) => string} */
export const doubted = (records) =>
  plural(records, {
    one: "One record does not fit the others and counts little; the log marks it.",
    other: `${records} records do not fit the others and count little; the log marks them.`,
  });

/**
 * How strong a paint has become beside the shelf's, and how much more certain. Nothing is said of what did not change.
 *
 * @type {(times: number | null, more: number | null) => string}
 */
export function changed(times, more) {
  const strong = times === null ? "as strong as on the shelf" : `${number(times, 2)} times as strong as on the shelf`;
  return more === null ? `${strong} · no more certain than before` : `${strong} · ${percent(more)} more certain`;
}
export const reset = "Reset";
/** @type {(name: string) => string} */
export const resetIt = (name) => `Reset ${name} to the shelf`;
export const held = "reset: as on the shelf";
export const learn = "Learn";
/** @type {(name: string) => string} */
export const learnIt = (name) => `Let records teach of ${name} again`;

// What to paint next.

export const noKit = "Pack a kit to see which swatches would teach most about it.";
export const working = "Working it out …";
/**
 * How far off mixes may be, those of recorded paints apart from the rest.
 *
 * @type {(lesson: { now: number, recorded: number | null | undefined }) => string}
 */
export const expectation = ({ now, recorded }) =>
  recorded == null
    ? `Mixes of this kit are expected to be off by ${number(now, 1)} (CIEDE2000, half of them by less). ${LOWERS}`
    : `Mixes of the paints you have recorded are expected to be off by ${number(recorded, 1)}, all mixes of this kit by ${number(now, 1)} (CIEDE2000, half of them by less). ${LOWERS}`;
const LOWERS = "Painting and recording these lowers that most; begin at the top.";
/** @type {(load: number, before: number, after: number) => string} */
export const becomes = (load, before, after) => `${loadName(load)} · ${number(before, 2)} becomes ${number(after, 2)}`;
