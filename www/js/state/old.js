// What the page kept before it kept items: everything as one text. Read for ever. Pure: no page.

/** @import { Context, Fault, KitContent, Own, Part, Ref } from "./types.js" */
/** @typedef {{ items: [string, any][], looks: any, learned: any, films: string[], isWhole: boolean }} Old */
/** @typedef {Old & { isWithoutKit: boolean }} OldText */

import * as words from "../words/state.js";
import { idOf } from "./ids.js";
import { createRefs, kindOf, valueOfKey } from "./items.js";
import { LISTS } from "./keys.js";
import { adopt, renumberedMix } from "./own.js";

/** @type {(key: string, value: any) => [string, any]} */
const entry = (key, value) => [key, value];

/** @type {(value: any) => any[]} */
const listOf = (value) => (Array.isArray(value) ? value : []);

/**
 * The items of the first of some texts that can be read, with the kits of a later one where none of its own can be:
 * `{items, looks, learned, films, isWhole}`, with the same ids each time it is read.
 * `fault(key, text, why)` hears of what cannot be; `isWhole` says that there was nothing of that kind.
 *
 * @type {(texts: string[], context: Context, fault: Fault) => Old}
 */
export function readOld(texts, context, fault) {
  let isWhole = true;
  /** @type {OldText | null} */
  let found = null;
  for (const text of texts) {
    try {
      const read = readOne(JSON.parse(text), context, fault);
      isWhole &&= read.isWhole;
      found = found ? withKits(found, read) : read;
      if (!found.isWithoutKit) break;
    } catch (error) {
      isWhole = false;
      fault("washpath", text, error.message);
    }
  }
  return { items: [], looks: null, learned: null, films: [], ...found, isWhole };
}

/**
 * What was read, with kits of another text, and the paints they hold.
 *
 * @type {(read: OldText, other: OldText) => OldText}
 */
function withKits(read, { items, looks, isWithoutKit }) {
  const known = new Set(read.items.map(([key]) => key));
  const brought = items.filter(([key]) => ["kit", "own"].includes(kindOf(key)) && !known.has(key));
  return { ...read, isWithoutKit, items: [...brought, ...read.items], looks: { ...read.looks, order: looks.order } };
}

/** @type {(kept: any, context: Context, fault: Fault) => OldText} */
function readOne(kept, { core, numberOf, isBuiltIn }, fault) {
  if (typeof kept !== "object" || kept === null || Array.isArray(kept)) throw new Error(words.noState);
  let isWhole = true;
  for (const key of LISTS) {
    if (kept[key] === undefined || Array.isArray(kept[key])) continue;
    isWhole = false;
    fault(`washpath ${key}`, JSON.stringify(kept[key]), words.noList);
  }
  /** @type {<T>(key: string, read: (value: any, i: number) => T) => T[]} */
  const each = (key, read) =>
    listOf(kept[key]).flatMap((value, i) => {
      try {
        return [read(value, i)];
      } catch (error) {
        isWhole = false;
        fault(`washpath ${key} ${i + 1}`, JSON.stringify(value) ?? "", error.message);
        return [];
      }
    });

  // Own paints had numbers; the first of a number is what records and ends mean by it.
  const numbers = new Map();
  /** @type {Own[]} */
  const own = each("own", ([number, paint]) => {
    const read = core.read_own(paint);
    if (!numbers.has(number)) numbers.set(number, numberOf(read.id));
    return [numberOf(read.id), read];
  });
  /** @type {(paint: number) => boolean} */
  const isHere = (paint) => isBuiltIn(paint) || own.some(([number]) => number === paint);
  /** @type {(paint: number) => number} */
  const to = (paint) => numbers.get(paint) ?? paint;
  /** @type {(mix: { parts: Part[] }) => Part[]} */
  const partsOf = ({ parts }) => {
    const { parts: moved } = renumberedMix({ parts }, to);
    if (!moved.every(([paint]) => isHere(paint))) throw new Error(words.gonePaint);
    return moved;
  };

  /** @type {any[]} */
  const kits = each("others", (value) => value);
  if (kept.kit !== undefined) kits.unshift(kept.kit);
  const decoded = kits.flatMap((value, i) => {
    try {
      const { kit, added } = adopt(core.decode_kit(value), own, numberOf);
      own.push(...added);
      return [{ ...kit, id: idOf(`kit ${i} ${value}`) }];
    } catch (error) {
      isWhole = false;
      fault(`washpath kit ${i + 1}`, String(value), error.message);
      return [];
    }
  });
  const refs = createRefs(own, numberOf, isBuiltIn);
  /** @type {(paint: number) => Ref} */
  const refOf = (paint) => refs.refOf(to(paint));
  const records = each("records", (record, i) => ({
    ...core.read_record({ ...record, parts: partsOf(record) }),
    id: idOf(`record ${i} ${JSON.stringify(record)}`),
  }));
  /** @type {(key: string) => [string, any][]} */
  const marks = (key) =>
    each(key, (paint) => {
      if (!isHere(to(paint))) throw new Error(words.gonePaint);
      return entry(`${key}/${refOf(paint)}`, true);
    });
  /** @type {(kit: KitContent) => string} */
  const textOf = (kit) => core.encode_kit({ ...kit, own });
  /** @type {[string, any][]} */
  const items = [
    ...own.map(([, paint]) => entry(`own/${paint.id}`, paint)),
    ...decoded.map((kit) => entry(`kit/${kit.id}`, textOf(kit))),
    ...records.map((record) => entry(`record/${record.id}`, valueOfKey("record/", record, refs, textOf))),
    ...marks("held"),
    ...marks("owned"),
    ...each("ticked", (tick) => {
      if (typeof tick !== "string") throw new Error(words.noText);
      return entry(`ticked/${idOf(tick)}`, tick);
    }),
  ];
  const learned = listOf(kept.learned)
    .filter((film) => film)
    .map(({ number, ...film }) => ({ paint: refOf(number), ...film }));
  const films = listOf(kept.films).map((film) => JSON.stringify(film));
  const looks = { ...looksIn(kept, refOf), order: decoded.map(({ id }) => id) };
  return { items, looks, learned, films, isWhole, isWithoutKit: decoded.length === 0 && kits.length > 0 };
}

/**
 * Looks as they were kept, with the paints of the ends as they are named now.
 *
 * @type {(kept: any, refOf: (paint: number) => Ref) => object}
 */
function looksIn(kept, refOf) {
  /** @type {(end: any) => object | null} */
  const out = (end) => {
    const parts = typeof end === "number" ? [[end, 1]] : end?.parts;
    if (!Array.isArray(parts)) return null;
    return {
      ...(typeof end === "object" ? end : {}),
      parts: parts.map((part) => (Array.isArray(part) ? [refOf(part[0]), part[1]] : part)),
    };
  };
  return { ...kept, ends: Array.isArray(kept.ends) ? kept.ends.map(out) : undefined };
}
