// Kits: what they are called and hold. A kit is never changed: a verb answers a new one, or the same where nothing is to do.

/** @import { Kit, KitContent, Paper } from "./types.js" */

import { LONGEST_TITLE } from "../../pkg/facts.js";
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

/**
 * Every paint packed, each once.
 *
 * @type {(kit: Pick<KitContent, "pans">) => number[]}
 */
export const paintsOf = (kit) => [...new Set(kit.pans.flat())];

/**
 * The title trimmed to what a link carries.
 *
 * @type {<K extends KitContent>(kit: K, text: string) => K}
 */
export function retitle(kit, text) {
  const title = [...text.replace(/\p{Cc}/gu, " ").trim()].slice(0, LONGEST_TITLE).join("").trim();
  return title === kit.title ? kit : { ...kit, title };
}
