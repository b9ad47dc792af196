// The one table of the state: what each part is before anything is read, whether and how it is kept, which values it may
// have, what becomes of it when a paint is gone, and what undo does with it. Pure: no page.

/** @import { Plain, Shelf } from "./types.js" */
/** @import { IsKnown } from "./refs.js" */
/** @typedef {keyof Plain} Key */
/** @typedef {{ fits: (value: unknown) => boolean, count?: number, least?: number, most?: number }} Kind */
/**
 * `blank` in a first visit, or how the shelf gives it; `item` is the kind of item that it is kept as, `isLook` says that it is
 * kept with the looks; `is` which values fit; `without(value, isKnown)` the same without paints that are not known;
 * `undone` as a step, or put back with one. What is neither kept nor undone follows from the rest, or is of this visit alone.
 *
 * @typedef {{ blank: unknown, item?: string, isLook?: boolean, is?: Kind, without?: (value: any, isKnown: IsKnown) => unknown, undone?: "step" | "shown" }} Handling
 */

import { LEAST_LOAD, LIGHTS } from "../../pkg/facts.js";
import { builtIn, DEMO_ENDS, DEMO_LOAD, demoKit } from "./demo.js";
import { paintEnd } from "./end.js";
import { endsWith, kitsWith, kitWith, mixesWith, only, pathsWith } from "./refs.js";

/** @type {Kind} */
const flag = { fits: (value) => typeof value === "boolean" };

/**
 * One of so many, by its index.
 *
 * @type {(count: number) => Kind}
 */
const choice = (count) => ({
  count,
  fits: (value) => typeof value === "number" && Number.isInteger(value) && value >= 0 && value < count,
});

/**
 * A number that slides from one end to the other.
 *
 * @type {(least: number, most: number) => Kind}
 */
const range = (least, most) => ({
  least,
  most,
  fits: (value) => typeof value === "number" && value >= least && value <= most,
});

/** @type {(shelf: Shelf) => Plain["ends"]} */
const demoEnds = (shelf) => DEMO_ENDS.map((key) => paintEnd(builtIn(shelf, key)));

/** @type {{ [key in Key]: Handling }} */
const KEYS = {
  kit: { blank: demoKit, item: "kit", without: kitWith, undone: "step" },
  others: { blank: [], item: "kit", without: kitsWith, undone: "step" },
  own: { blank: [], item: "own", undone: "step" },
  records: { blank: [], item: "record", without: mixesWith, undone: "step" },
  held: { blank: [], item: "held", without: only, undone: "step" },
  owned: { blank: [], item: "owned", without: only, undone: "step" },
  ticked: { blank: [], item: "ticked" },
  ends: { blank: demoEnds, isLook: true, without: endsWith, undone: "step" },
  next: { blank: 0, undone: "shown", is: choice(2) },
  laid: { blank: 0, isLook: true, undone: "shown", is: choice(3) },
  share: { blank: 0.5, isLook: true, undone: "shown", is: range(0, 1) },
  load: { blank: DEMO_LOAD, isLook: true, undone: "shown", is: range(LEAST_LOAD, 1) },
  light: { blank: 0, isLook: true, is: choice(LIGHTS.length) },
  wet: { blank: false, isLook: true, is: flag },
  showShelf: { blank: false, isLook: true, is: flag },
  ribbon: { blank: false, isLook: true, is: flag },
  reach: { blank: false, isLook: true, is: flag },
  dim: { blank: null, isLook: true, is: flag },
  welcome: { blank: null, isLook: true, is: flag },
  learning: { blank: true, isLook: true, is: flag },
  films: { blank: [] },
  learned: { blank: [] },
  lesson: { blank: null },
  visiting: { blank: [] },
  guest: { blank: null, without: (kit, isKnown) => kit && kitWith(kit, isKnown) },
  pins: { blank: [], without: pathsWith },
  pinnedKit: { blank: null, without: (paints, isKnown) => paints && only(paints, isKnown) },
  cursor: { blank: 0, without: (paint, isKnown) => (isKnown(paint) ? paint : 0) },
  cross: { blank: null },
  target: { blank: null },
  picking: { blank: false },
  editing: { blank: false },
};

/** @type {[Key, Handling][]} */
const ALL = /** @type {any} */ (Object.entries(KEYS));

/** @type {(may: (how: Handling) => unknown) => Key[]} */
const those = (may) => ALL.flatMap(([key, how]) => (may(how) ? [key] : []));

/**
 * What the state is before anything is read.
 *
 * @type {(shelf: Shelf) => Plain}
 */
export const blank = (shelf) =>
  /** @type {any} */ (
    Object.fromEntries(ALL.map(([key, { blank }]) => [key, typeof blank === "function" ? blank(shelf) : blank]))
  );

/** What is kept as items. */
export const WORK = those(({ item }) => item);

/** Lists of what is kept. */
export const LISTS = those(({ item, blank }) => item && Array.isArray(blank));

/** Kinds of items. */
export const KINDS = new Set(ALL.map(([, { item }]) => item));

/** What of the work refers to paints, which then have to stay. */
export const REFERRING = those(({ item, without }) => item && without);

/** What refers to paints, and how it is rid of those that are not known. */
export const RESOLVERS = ALL.flatMap(([key, { without }]) => (without ? [{ key, without }] : []));

/** What a step of undo changes. */
export const STEPS = those(({ undone }) => undone === "step");

/** What is shown with a step, and put back as it was. */
export const SHOWN = /** @type {Key[]} */ (["ends", ...those(({ undone }) => undone === "shown")]);

/** @type {(may: (is: Kind, how: Handling) => unknown) => [Key, Kind][]} */
const kinds = (may) => ALL.flatMap(([key, how]) => (how.is && may(how.is, how) ? [[key, how.is]] : []));

/** Looks that are kept, and which values fit them. */
export const PLAIN = kinds((_, { isLook }) => isLook);

/** Numbers that choose. */
export const CHOICES = kinds(({ count }) => count);

/** Numbers that slide: brought within their range. */
export const SLIDES = kinds(({ most }) => most);
