// Files: those that are dropped, kit files on their way out and in, and exports.

import { number, plural } from "./form.js";

/** @typedef {{ kits: number, own: number, records: number }} Counts */

// What is dropped.

/** @type {(name: string) => string} */
export const cannotOpen = (name) =>
  `“${name}” cannot be opened here. What can be dropped: a photo, a kit file (.json), a swatch log (.csv), a meter’s file (.txt, .cgats).`;
/** @type {(name: string) => string} */
export const oneOpened = (name) => `“${name}” is opened; the others are not. Drop files one after the other.`;

// How a text was read.

export const utf16 = "It is written in UTF-16.";
export const windows1252 =
  "It is not written in UTF-8 and was read as Windows-1252: look whether its letters are right.";

// Kit files.

/** @type {(reason: string) => string} */
export const unreadable = (reason) => `This file could not be read: ${reason}. Nothing was changed.`;
export const unreadableSaid = "The file could not be read";
/** @type {(bytes: number, most: number) => string} */
export const tooLarge = (bytes, most) =>
  `it has ${number(bytes / 1e6, 1)} MB, and no kit file has more than ${number(most / 1e6)}`;
/** @type {(name: string) => string} */
export const inFile = (name) => `In ${name}`;
export const nothingNew = "Nothing that is not here already.";
/** @type {(counts: Counts) => string} */
export const known = (counts) => `Here already: ${things(counts)}.`;
/** @type {(counts: Counts) => string} */
export const newThings = (counts) => `The file holds ${things(counts)} that are new`;
/** @type {(counts: Counts) => string} */
export const noRoom = (counts) => `${things(counts)}: no room is left for more`;
export const leftOut = "Left out";
export const cancel = "Cancel";
export const add = "Add to what is here";
/** @type {(name: string, counts: Counts) => string} */
export const added = (name, counts) =>
  counts.kits
    ? `Added from ${name}: ${things(counts)}. Kits stand in the list above the tin.`
    : `Added from ${name}: ${things(counts)}.`;

/** Kinds of what is new. */
export const kinds = { kits: "Kits", own: "Own paints", records: "Records", marks: "Marks" };
/** @type {(kind: string) => string} */
export const kind = (kind) => `${kind}: `;
/** @type {(paints: number) => string} */
export const marksHeld = (paints) =>
  plural(paints, { one: `${paints} paint held to the shelf`, other: `${paints} paints held to the shelf` });
/** @type {(paints: number) => string} */
export const marksOwned = (paints) =>
  plural(paints, { one: `${paints} paint you own`, other: `${paints} paints you own` });

/**
 * "2 kits, 1 own paint, 3 records".
 *
 * @type {(counts: Counts) => string}
 */
function things({ kits, own, records }) {
  const some = [
    kits && plural(kits, { one: `${kits} kit`, other: `${kits} kits` }),
    own && plural(own, { one: `${own} own paint`, other: `${own} own paints` }),
    records && plural(records, { one: `${records} record`, other: `${records} records` }),
  ];
  return some.filter(Boolean).join(", ") || "nothing";
}

// Exports.

/** @type {(title: string) => string} */
export const colours = (title) => `${title || "A kit of watercolours"}: colours in daylight, sRGB.`;

/** @type {(reason: string) => string} */
export const notMade = (reason) => `It could not be made: ${reason}.`;
