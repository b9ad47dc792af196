// Recording a swatch: what was painted, and what it looked like.

import { MOST_RECORDS } from "../../pkg/facts.js";
import { capital, number } from "./form.js";
import { loadName } from "./terms.js";

export const title = "Record a swatch";
export const explained =
  "Set the mix you painted in Mix; type, pick or measure what it looks like, or sample a photo of it in Match. From then on your paints are learned from it.";
export const seen = "What it looks like, dry";
export const date = "Date";
export const note = "Note";
export const noteExample = "brush, wetness";
export const record = "Record it";
export const recorded = "Recorded";
export const otherMix = "This is another mix. What you saw comes back when you return to the mix you saw it of.";
/** @type {(recipe: string, load: number) => string} */
export const mix = (recipe, load) => `${recipe}, ${loadName(load)}`;
export const noMix = "Choose two paints first, or the same paint twice.";
export const full = `There is room for ${MOST_RECORDS} records. Export the log and delete some.`;
/** @type {(reason: string) => string} */
export const failed = (reason) => `It could not be recorded: ${reason}.`;
export const predictedChip = "predicted";
export const seenChip = "seen";
export const asPredicted = "As predicted.";
/** @type {(difference: string, error: number) => string} */
export const apart = (difference, error) => `${capital(difference)} than predicted, by ${number(error)} (CIEDE2000).`;

// A colour that was seen.

export const example = "#7a6f6b, lab(48 2 4)";
export const pick = "Pick";
/** @type {(what: string) => string} */
export const pickOf = (what) => `Pick: ${what}`;
export const asInMatch = "As in Match";
export const asInMatchTitle = "The colour chosen in Match: sampled from a white-balanced photo of the swatch, for one";
export const fromMatch = "Taken from Match";
export const spectrum = "A measured spectrum.";

// A meter's file.

export const meterFile = "Meter’s file";
export const sample = "Sample of the file";
export const reading = "Reading …";
/** @type {(reason: string) => string} */
export const unreadable = (reason) => `This file could not be read: ${reason}.`;
/**
 * What of a file could not be read, and how many more faults it has than are told.
 *
 * @type {(samples: number, faults: string[], more: number) => string}
 */
export function amiss(samples, faults, more) {
  const told = faults.join("; ");
  return more
    ? `${samples} samples were read, with these faults: ${told} and ${more} more.`
    : `${samples} samples were read, with these faults: ${told}.`;
}
