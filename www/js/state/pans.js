// Verbs on the pans of a kit. A kit is never changed: each verb answers a new one, or the same where nothing is to do.

/** @import { KitContent } from "./types.js" */

import { MOST_PANS } from "../../pkg/facts.js";

/** @type {(kit: KitContent) => boolean} */
export const isFull = (kit) => kit.pans.length >= kit.capacity;

/** @type {(kit: KitContent, paint: number) => boolean} */
export const holds = (kit, paint) => kit.pans.some((pan) => pan.includes(paint));

/**
 * Packs a paint in a pan of its own. A full tin stays as it is.
 *
 * @type {<K extends KitContent>(kit: K, paint: number) => K}
 */
export const pack = (kit, paint) => (isFull(kit) ? kit : { ...kit, pans: [...kit.pans, [paint]] });

/** @type {<K extends KitContent>(kit: K, index: number) => K} */
export const remove = (kit, index) => ({ ...kit, pans: kit.pans.filter((_, i) => i !== index) });

/**
 * Puts another paint wherever one is packed; a pan never holds one paint twice.
 *
 * @type {<K extends KitContent>(kit: K, paint: number, by: number) => K}
 */
export const replace = (kit, paint, by) => ({
  ...kit,
  pans: kit.pans.map((pan) =>
    pan.includes(paint) ? [...new Set(pan.map((known) => (known === paint ? by : known)))] : pan,
  ),
});

/**
 * Moves a pan by a number of places, not beyond the ends.
 *
 * @type {<K extends KitContent>(kit: K, index: number, by: number) => K}
 */
export function move(kit, index, by) {
  const to = Math.min(Math.max(index + by, 0), kit.pans.length - 1);
  if (to === index) return kit;
  const pans = [...kit.pans];
  pans.splice(to, 0, ...pans.splice(index, 1));
  return { ...kit, pans };
}

/**
 * Whether two pans hold one paint each, and not the same.
 *
 * @type {(kit: KitContent, from: number, onto: number) => boolean}
 */
export const mayJoin = ({ pans }, from, onto) =>
  from !== onto && pans[from]?.length === 1 && pans[onto]?.length === 1 && pans[from][0] !== pans[onto][0];

/**
 * Puts the paint of one pan beside that of another.
 *
 * @type {<K extends KitContent>(kit: K, from: number, onto: number) => K}
 */
export const join = (kit, from, onto) =>
  mayJoin(kit, from, onto) ? remove(refill(kit, onto, [kit.pans[onto][0], kit.pans[from][0]]), from) : kit;

/**
 * Gives each paint of a pan a pan of its own. A full tin stays as it is.
 *
 * @type {<K extends KitContent>(kit: K, index: number) => K}
 */
export const part = (kit, index) =>
  isFull(kit)
    ? kit
    : { ...kit, pans: kit.pans.flatMap((pan, i) => (i === index ? pan.map((paint) => [paint]) : [pan])) };

/**
 * Fills a pan anew: one paint, or two side by side.
 *
 * @type {<K extends KitContent>(kit: K, index: number, paints: number[]) => K}
 */
export const refill = (kit, index, paints) => ({
  ...kit,
  pans: kit.pans.map((pan, i) => (i === index ? paints : pan)),
});

/**
 * A tin of another size, never smaller than what it holds.
 *
 * @type {<K extends KitContent>(kit: K, capacity: number) => K}
 */
export function resize(kit, capacity) {
  const least = Math.max(kit.pans.length, 1);
  const size = Math.min(Math.max(Math.round(capacity) || least, least), MOST_PANS);
  return size === kit.capacity ? kit : { ...kit, capacity: size };
}
