// What in the state refers to paints, and the state without what refers to a paint that is gone. Pure: no page.

/** @import { KitContent, Part, Patch, Work } from "./types.js" */
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
const only = (list, may) => (list.every(may) ? list : list.filter(may));

/** @type {(isKnown: IsKnown) => (parts: Part[]) => boolean} */
const partsWith = (isKnown) => (parts) => inParts(parts).every(isKnown);

/**
 * A kit without paints that are not known: they leave their pans, and puddles of them go.
 *
 * @type {(isKnown: IsKnown) => <K extends KitContent>(kit: K) => K}
 */
export function kitWith(isKnown) {
  const mayStay = partsWith(isKnown);
  return (kit) => {
    const pans = kit.pans.every((pan) => pan.every(isKnown))
      ? kit.pans
      : kit.pans.map((pan) => pan.filter(isKnown)).filter((pan) => pan.length);
    const puddles = only(kit.puddles, ({ parts }) => mayStay(parts));
    return pans === kit.pans && puddles === kit.puddles ? kit : { ...kit, pans, puddles };
  };
}

/**
 * How each key of the state is rid of paints that are not known.
 *
 * @type {{ [key: string]: (value: any, isKnown: IsKnown) => any }}
 */
const RESOLVERS = {
  kit: (kit, isKnown) => kitWith(isKnown)(kit),
  others: (kits, isKnown) => mapped(kits, kitWith(isKnown)),
  guest: (kit, isKnown) => kit && kitWith(isKnown)(kit),
  records: (records, isKnown) => only(records, ({ parts }) => partsWith(isKnown)(parts)),
  held: only,
  owned: only,
  ends: (ends, isKnown) => mapped(ends, (end) => (end && partsWith(isKnown)(end.parts) ? end : null)),
  pins: (pins, isKnown) => only(pins, ({ pair }) => pair.ends.every(partsWith(isKnown))),
  pinnedKit: (paints, isKnown) => paints && only(paints, isKnown),
  cursor: (paint, isKnown) => (paint === 0 || isKnown(paint) ? paint : 0),
};

/**
 * The same list where no item changes.
 *
 * @type {<T>(list: T[], change: (item: T) => T) => T[]}
 */
function mapped(list, change) {
  const after = list.map(change);
  return after.every((item, i) => item === list[i]) ? list : after;
}

/**
 * Those keys of the state that change when it is rid of every paint that is not known. `mayRefer` says which keys are looked at.
 *
 * @type {(state: any, isKnown: IsKnown, mayRefer?: (key: string) => boolean) => Patch}
 */
export function resolved(state, isKnown, mayRefer = () => true) {
  /** @type {any} */
  const patch = {};
  for (const [key, resolve] of Object.entries(RESOLVERS)) {
    if (!mayRefer(key)) continue;
    const after = resolve(state[key], isKnown);
    if (after !== state[key]) patch[key] = after;
  }
  return patch;
}
