// Verbs on kits. A kit is never changed: each verb answers a new one, or the same where nothing is to do.

/** @import { Kit, KitContent, Paper, Puddle } from "./types.js" */

import { LONGEST_TITLE, MOST_PANS } from "../../pkg/facts.js";
import { untitled } from "../words/terms.js";

/**
 * The paper of a kit as the core asks for it: one of the stocks, or the painter's own.
 *
 * @type {(kit: KitContent) => Paper}
 */
export const paperOf = ({ stock, paper }) => ({ stock, own: paper });

/** Most kits that are kept. */
export const MOST_KITS = 20;

/**
 * Whether two kits hold the same, whatever their ids.
 *
 * @type {(a: Partial<Kit>, b: Partial<Kit>) => boolean}
 */
export const sameKit = (a, b) => contentOf(a) === contentOf(b);

/** @type {(kit: Partial<Kit>) => string} */
const contentOf = ({ title, capacity, stock, paper, pans, puddles, places, brief }) =>
  JSON.stringify([title, capacity, stock, paper, pans, puddles, places, brief ?? null]);

/** @type {(kit: { title: string }) => string} */
export const nameOf = (kit) => kit.title || untitled;

/**
 * A kit without an id; whoever keeps it gives it one.
 *
 * @type {(title?: string) => KitContent}
 */
export const emptyKit = (title = "") => ({
  title,
  capacity: 12,
  stock: 0,
  paper: null,
  pans: [],
  puddles: [],
  places: [],
});

/** @type {<K extends KitContent>(kit: K, puddle: Puddle) => K} */
export const keepPuddle = (kit, puddle) => ({ ...kit, puddles: [...kit.puddles, puddle] });

/** @type {<K extends KitContent>(kit: K, index: number) => K} */
export const wipePuddle = (kit, index) => ({ ...kit, puddles: kit.puddles.filter((_, i) => i !== index) });

/**
 * Every paint packed, each once.
 *
 * @type {(kit: Pick<KitContent, "pans">) => number[]}
 */
export const paintsOf = (kit) => [...new Set(kit.pans.flat())];

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

/**
 * The title trimmed to what a link carries.
 *
 * @type {<K extends KitContent>(kit: K, text: string) => K}
 */
export function retitle(kit, text) {
  const title = [...text.replace(/\p{Cc}/gu, " ").trim()].slice(0, LONGEST_TITLE).join("").trim();
  return title === kit.title ? kit : { ...kit, title };
}
