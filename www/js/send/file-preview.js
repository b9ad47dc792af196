// What is in a kit file, in words, before it is added.

import { element } from "../page/dom.js";

const some = (count, one, many = `${one}s`) => (count ? `${count} ${count === 1 ? one : many}` : "");
const listed = (...words) => words.filter(Boolean).join(", ") || "nothing";

/** "2 kits, 1 own paint, 3 records". */
export const things = ({ kits, own, records }) =>
  listed(some(kits, "kit"), some(own, "own paint"), some(records, "record"));

/** What came new of a file, counted. */
export const thingsNew = ({ kits, own, records }) => things({ kits: kits.length, own: own.length, records });

/** How many marks a patch of the state adds, in words. */
export const marksOf = (patch, { held, owned }) =>
  [
    some(patch.held.length - held.length, "paint held to the shelf", "paints held to the shelf"),
    some(patch.owned.length - owned.length, "paint you own", "paints you own"),
  ].filter(Boolean);

/** What is new, a line for each kind that there is something of. */
export const newsOf = ({ kits, own, records }, marks) =>
  [
    ["Kits", kits],
    ["Own paints", own],
    ["Records", records ? [String(records)] : []],
    ["Marks", marks],
  ]
    .filter(([, names]) => names.length > 0)
    .map(([what, names]) => element("li", {}, element("b", {}, `${what}: `), names.join(", ")));

/** What is left out and why: for want of room, or because it cannot be read. Nothing where all is taken. */
export function leftOut(left, faults) {
  const isFull = left.kits + left.own + left.records > 0;
  const missed = [...(isFull ? [`${things(left)}: no room is left for more`] : []), ...faults];
  if (missed.length === 0) return "";
  return element(
    "details",
    { class: "fault", open: missed.length < 6 },
    element("summary", {}, "Left out"),
    element("ul", {}, ...missed.map((fault) => element("li", {}, fault))),
  );
}
