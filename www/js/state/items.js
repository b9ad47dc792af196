// The state as items that are kept one by one, and read back one by one. Pure: no page.
//
// | key | what is kept |
// |---|---|
// | `kit/ID` | a kit, as the text of its link |
// | `own/ID` | an own paint |
// | `record/ID` | a record |
// | `held/PAINT`, `owned/PAINT` | that a paint is held to the shelf, or owned |
// | `ticked/ID` | a task of a class that is done |
//
// A paint of the shelf is named by its number, an own one by `o` and its id.

/** @import { Context, Kit, NumberOf, Own, Part, Ref, Refs, Work } from "./types.js" */

import * as words from "../words/state.js";
import { idOf } from "./ids.js";
import { KINDS } from "./keys.js";

/**
 * Writes and reads paints: `{refOf(number), numberOf(ref)}`; `numberOf` answers nothing for a ref that names no paint.
 *
 * @type {(own: Own[], numberOf: NumberOf, isBuiltIn: Context["isBuiltIn"]) => Refs}
 */
export function createRefs(own, numberOf, isBuiltIn) {
  const ids = new Map(own.map(([number, { id }]) => [number, id]));
  return {
    refOf: (number) => (ids.has(number) ? `o${ids.get(number)}` : number),
    numberOf: (ref) => {
      if (typeof ref === "string" && /^o[0-9a-f]{12}$/.test(ref)) return numberOf(ref.slice(1));
      return typeof ref === "number" && Number.isInteger(ref) && isBuiltIn(ref) ? ref : undefined;
    },
  };
}

/**
 * Parts with paints as they are kept.
 *
 * @type {(parts: Part[], refs: Refs) => [Ref, number][]}
 */
export const partsOut = (parts, { refOf }) => parts.map(([paint, count]) => [refOf(paint), count]);

/**
 * Parts as they were kept. Throws where a paint is not known.
 *
 * @type {(parts: any, refs: Refs) => Part[]}
 */
export function partsIn(parts, { numberOf }) {
  if (!Array.isArray(parts) || parts.length === 0) throw new Error(words.noParts);
  return parts.map((part) => {
    const paint = Array.isArray(part) && part.length === 2 ? numberOf(part[0]) : undefined;
    if (paint === undefined) throw new Error(words.gonePaint);
    return [paint, part[1]];
  });
}

/**
 * What of the state is kept as items: `[key, thing]`, where the thing is the same as long as the item is.
 *
 * @type {(work: Work, refs: Refs) => Map<string, any>}
 */
export function itemsOf({ kit, others, own, records, held, owned, ticked }, { refOf }) {
  /** @type {Map<string, any>} */
  const items = new Map();
  // Before what refers to them, so that another tab never meets a paint it does not know.
  for (const [, paint] of own) items.set(`own/${paint.id}`, paint);
  for (const each of [kit, ...others]) items.set(`kit/${each.id}`, each);
  for (const record of records) items.set(`record/${record.id}`, record);
  for (const paint of held) items.set(`held/${refOf(paint)}`, true);
  for (const paint of owned) items.set(`owned/${refOf(paint)}`, true);
  for (const tick of ticked) items.set(`ticked/${idOf(tick)}`, tick);
  return items;
}

/**
 * The value of an item as it is kept. `textOf` writes kits.
 *
 * @type {(key: string, thing: any, refs: Refs, textOf: (kit: Kit) => string) => any}
 */
export function valueOfKey(key, thing, refs, textOf) {
  switch (kindOf(key)) {
    case "kit":
      return textOf(thing);
    case "record": {
      const { id, ...record } = thing;
      return { ...record, parts: partsOut(record.parts, refs) };
    }
    default:
      return thing;
  }
}

/**
 * Whether a key is that of an item.
 *
 * @type {(key: string) => boolean}
 */
export const isItem = (key) => KINDS.has(kindOf(key));

/** @type {(key: string) => string} */
export const kindOf = (key) => key.slice(0, key.indexOf("/"));

/** @type {(key: string) => string} */
export const nameOfKey = (key) => key.slice(key.indexOf("/") + 1);

/**
 * The paint of a mark's key.
 *
 * @type {(key: string, refs: Refs) => number}
 */
export function paintOfKey(key, { numberOf }) {
  const name = nameOfKey(key);
  const number = numberOf(name.startsWith("o") ? name : Number(name));
  if (number === undefined) throw new Error(words.gonePaint);
  return number;
}
