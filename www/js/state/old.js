// What the page kept before it kept items: everything as one text. Read for ever. Pure: no page.

import { idOf } from "./ids.js";
import { createRefs, kindOf, valueOfKey } from "./items.js";
import { adopt, renumberedMix } from "./own.js";

/** Lists of what was kept. */
const LISTS = ["others", "own", "records", "held", "owned", "ticked"];

const listOf = (value) => (Array.isArray(value) ? value : []);

/**
 * The items of the first of some texts that can be read, with the kits of a later one where none of its own can be:
 * `{items, looks, learned, films, isWhole}`, with the same ids each time it is read.
 * `fault(key, text, why)` hears of what cannot be; `isWhole` says that there was nothing of that kind.
 */
export function readOld(texts, context, fault) {
  let isWhole = true;
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

/** What was read, with kits of another text, and the paints they hold. */
function withKits(read, { items, looks, isWithoutKit }) {
  const known = new Set(read.items.map(([key]) => key));
  const brought = items.filter(([key]) => ["kit", "own"].includes(kindOf(key)) && !known.has(key));
  return { ...read, isWithoutKit, items: [...brought, ...read.items], looks: { ...read.looks, order: looks.order } };
}

function readOne(kept, { core, numberOf, isBuiltIn }, fault) {
  if (typeof kept !== "object" || kept === null || Array.isArray(kept)) throw new Error("it is no state");
  let isWhole = true;
  for (const key of LISTS) {
    if (kept[key] === undefined || Array.isArray(kept[key])) continue;
    isWhole = false;
    fault(`washpath ${key}`, JSON.stringify(kept[key]), "it is no list");
  }
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
  const own = each("own", ([number, paint]) => {
    const read = core.read_own(paint);
    if (!numbers.has(number)) numbers.set(number, numberOf(read.id));
    return [numberOf(read.id), read];
  });
  const isHere = (paint) => isBuiltIn(paint) || own.some(([number]) => number === paint);
  const to = (paint) => numbers.get(paint) ?? paint;
  const partsOf = ({ parts }) => {
    const { parts: moved } = renumberedMix({ parts }, to);
    if (!moved.every(([paint]) => isHere(paint))) throw new Error("it is of a paint that is not here");
    return moved;
  };

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
  const records = each("records", (record, i) => ({
    ...core.read_record({ ...record, parts: partsOf(record) }),
    id: idOf(`record ${i} ${JSON.stringify(record)}`),
  }));
  const marks = (key) =>
    each(key, (paint) => {
      if (!isHere(to(paint))) throw new Error("it is of a paint that is not here");
      return [`${key}/${refs.refOf(to(paint))}`, true];
    });
  const textOf = (kit) => core.encode_kit({ ...kit, own });
  const items = [
    ...own.map(([, paint]) => [`own/${paint.id}`, paint]),
    ...decoded.map((kit) => [`kit/${kit.id}`, textOf(kit)]),
    ...records.map((record) => [`record/${record.id}`, valueOfKey(`record/`, record, refs)]),
    ...marks("held"),
    ...marks("owned"),
    ...each("ticked", (tick) => {
      if (typeof tick !== "string") throw new Error("it is no text");
      return [`ticked/${idOf(tick)}`, tick];
    }),
  ];
  const out = (end) => {
    const parts = typeof end === "number" ? [[end, 1]] : end?.parts;
    return Array.isArray(parts)
      ? {
          ...(typeof end === "object" ? end : {}),
          parts: parts.map((part) => (Array.isArray(part) ? [refs.refOf(to(part[0])), part[1]] : part)),
        }
      : null;
  };
  const looks = {
    ...kept,
    ends: Array.isArray(kept.ends) ? kept.ends.map(out) : undefined,
    order: decoded.map(({ id }) => id),
  };
  const learned = listOf(kept.learned)
    .filter((film) => film)
    .map(({ number, ...film }) => ({ paint: refs.refOf(to(number)), ...film }));
  const films = listOf(kept.films).map((film) => JSON.stringify(film));
  return { items, looks, learned, films, isWhole, isWithoutKit: decoded.length === 0 && kits.length > 0 };
}
