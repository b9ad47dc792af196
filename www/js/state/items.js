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

import { idOf } from "./ids.js";

/** Writes and reads paints: `{refOf(number), numberOf(ref)}`; `numberOf` answers nothing for a ref that names no paint. */
export function createRefs(own, numberOf, isBuiltIn) {
  const ids = new Map(own.map(([number, { id }]) => [number, id]));
  return {
    refOf: (number) => (ids.has(number) ? `o${ids.get(number)}` : number),
    numberOf: (ref) => {
      if (typeof ref === "string" && /^o[0-9a-f]{12}$/.test(ref)) return numberOf(ref.slice(1));
      return Number.isInteger(ref) && isBuiltIn(ref) ? ref : undefined;
    },
  };
}

/** Parts with paints as they are kept. */
export const partsOut = (parts, { refOf }) => parts.map(([paint, count]) => [refOf(paint), count]);

/** Parts as they were kept. Throws where a paint is not known. */
export function partsIn(parts, { numberOf }) {
  if (!Array.isArray(parts) || parts.length === 0) throw new Error("it has no parts");
  return parts.map((part) => {
    const paint = Array.isArray(part) && part.length === 2 ? numberOf(part[0]) : undefined;
    if (paint === undefined) throw new Error("it is of a paint that is not here");
    return [paint, part[1]];
  });
}

/** What of the state is kept as items: `[key, thing]`, where the thing is the same as long as the item is. */
export function itemsOf({ kit, others, own, records, held, owned, ticked }, { refOf }) {
  return new Map([
    // Before what refers to them, so that another tab never meets a paint it does not know.
    ...own.map(([, paint]) => [`own/${paint.id}`, paint]),
    ...[kit, ...others].map((kit) => [`kit/${kit.id}`, kit]),
    ...records.map((record) => [`record/${record.id}`, record]),
    ...held.map((paint) => [`held/${refOf(paint)}`, true]),
    ...owned.map((paint) => [`owned/${refOf(paint)}`, true]),
    ...ticked.map((tick) => [`ticked/${idOf(tick)}`, tick]),
  ]);
}

/** The value of an item as it is kept. `textOf` writes kits. */
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

const KINDS = ["own", "kit", "record", "held", "owned", "ticked"];

/** Whether a key is that of an item. */
export const isItem = (key) => KINDS.includes(kindOf(key));

export const kindOf = (key) => key.slice(0, key.indexOf("/"));
export const nameOfKey = (key) => key.slice(key.indexOf("/") + 1);

/** The paint of a mark's key. */
export function paintOfKey(key, { numberOf }) {
  const name = nameOfKey(key);
  const number = numberOf(name.startsWith("o") ? name : Number(name));
  if (number === undefined) throw new Error("it is of a paint that is not here");
  return number;
}
