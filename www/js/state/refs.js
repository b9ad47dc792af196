// What refers to paints, and the same without what refers to a paint that is not known. Pure: no page.

/** @import { End, KitContent, Pair, Part, Work } from "./types.js" */
/** @typedef {(paint: number) => boolean} IsKnown */

/** @type {(parts: Part[]) => number[]} */
const inParts = (parts) => parts.map(([paint]) => paint);

/**
 * Every paint a kit refers to, in pans and puddles.
 *
 * @type {(kit: Pick<KitContent, "pans" | "puddles">) => number[]}
 */
export const inKit = ({ pans, puddles }) => [...pans.flat(), ...puddles.flatMap(({ parts }) => inParts(parts))];

/**
 * Every paint that the painter's kept work refers to; looks, such as the ends of the path, do not count.
 *
 * @type {(work: Pick<Work, "kit" | "others" | "records" | "held" | "owned">) => Set<number>}
 */
export const inWork = ({ kit, others, records, held, owned }) =>
  new Set([...[kit, ...others].flatMap(inKit), ...records.flatMap(({ parts }) => inParts(parts)), ...held, ...owned]);

/**
 * The same list where everything may stay, else one of what may.
 *
 * @type {<T>(list: T[], may: (item: T) => boolean) => T[]}
 */
export const only = (list, may) => (list.every(may) ? list : list.filter(may));

/**
 * The same list where no item changes.
 *
 * @type {<T>(list: T[], change: (item: T) => T) => T[]}
 */
function mapped(list, change) {
  const after = list.map(change);
  return after.every((item, i) => item === list[i]) ? list : after;
}

/** @type {(parts: Part[], isKnown: IsKnown) => boolean} */
const areKnown = (parts, isKnown) => inParts(parts).every(isKnown);

/**
 * Mixes of known paints.
 *
 * @type {<M extends { parts: Part[] }>(mixes: M[], isKnown: IsKnown) => M[]}
 */
export const mixesWith = (mixes, isKnown) => only(mixes, ({ parts }) => areKnown(parts, isKnown));

/**
 * A kit without paints that are not known: they leave their pans, and puddles of them go.
 *
 * @type {<K extends KitContent>(kit: K, isKnown: IsKnown) => K}
 */
export function kitWith(kit, isKnown) {
  const pans = kit.pans.every((pan) => pan.every(isKnown))
    ? kit.pans
    : kit.pans.map((pan) => pan.filter(isKnown)).filter((pan) => pan.length);
  const puddles = mixesWith(kit.puddles, isKnown);
  return pans === kit.pans && puddles === kit.puddles ? kit : { ...kit, pans, puddles };
}

/** @type {<K extends KitContent>(kits: K[], isKnown: IsKnown) => K[]} */
export const kitsWith = (kits, isKnown) => mapped(kits, (kit) => kitWith(kit, isKnown));

/**
 * Ends of a path; one that is not known is empty.
 *
 * @type {(ends: (End | null)[], isKnown: IsKnown) => (End | null)[]}
 */
export const endsWith = (ends, isKnown) => mapped(ends, (end) => (end && areKnown(end.parts, isKnown) ? end : null));

/** @type {<P extends { pair: Pair }>(paths: P[], isKnown: IsKnown) => P[]} */
export const pathsWith = (paths, isKnown) =>
  only(paths, ({ pair }) => pair.ends.every((parts) => areKnown(parts, isKnown)));
