// Kit files: everything a painter keeps as one readable JSON text. Pure: no page.
// www/kit-file.schema.json describes them; `kit-file-read.js` reads them, and `merge.js` takes in what they bring.

/** @import { KitContent, OwnPaint, Paper, Part, Record, Shelf, Work } from "./types.js" */
/** @typedef {(paint: number) => string | undefined} NameOf */

import { PAPERS } from "../../pkg/facts.js";
import { inKit } from "./refs.js";

export const VERSION = 1;

/** Ratings of a paint, in the order in which it has them. */
export const RATINGS = ["transparency", "staining", "granulation", "lightfastness"];

/**
 * Everything of the state as a file, short lists on a line; or with `alone` the kit in hand with the own paints it holds.
 *
 * @type {(state: Work, shelf: Shelf, alone?: boolean) => string}
 */
export function writeFile({ kit, others, own, records, held, owned }, shelf, alone = false) {
  const names = new Map(own.map(([number, paint]) => [number, `own:${paint.name}`]));
  /** @type {NameOf} */
  const nameOf = (paint) => names.get(paint) ?? shelf.get(paint)?.key;
  const used = new Set(inKit(kit));
  const file = {
    washpath: VERSION,
    kits: (alone ? [kit] : [kit, ...others]).map((kit) => kitOut(kit, nameOf)),
    ...list(
      "paints",
      own.filter(([number]) => !alone || used.has(number)).map(([, paint]) => paintOut(paint, nameOf)),
    ),
  };
  const rest = {
    ...list(
      "records",
      records.map((record) => recordOut(record, nameOf)),
    ),
    ...list("held", held.map(nameOf)),
    ...list("owned", owned.map(nameOf)),
  };
  return textOf(alone ? file : { ...file, ...rest });
}

/** @type {(key: string, values: unknown[]) => object} */
const list = (key, values) => (values.length ? { [key]: values } : {});

/**
 * JSON with lists of numbers and names on one line each.
 *
 * @type {(file: object) => string}
 */
const textOf = (file) =>
  `${JSON.stringify(file, null, 1).replace(/\[\n\s+([^[\]{}]*?)\n\s+\]/g, (_, inner) => `[${inner.replace(/\n\s+/g, " ")}]`)}\n`;

/** @type {(kit: KitContent, nameOf: NameOf) => object} */
const kitOut = ({ title, capacity, stock, paper, pans, puddles, places, brief }, nameOf) => ({
  title,
  capacity,
  paper: paperOut({ stock, own: paper }),
  pans: pans.map((pan) => pan.map(nameOf)),
  ...list(
    "puddles",
    puddles.map(({ parts, load }) => ({ parts: partsOut(parts, nameOf), load: short(load) })),
  ),
  ...list(
    "places",
    places.map(({ name, colours }) => ({
      name,
      colours: colours.map(({ lab, weight }) => ({ lab: [...lab].map(short), weight: short(weight) })),
    })),
  ),
  ...(brief && { class: brief }),
});

/** @type {(paint: OwnPaint, nameOf: NameOf) => object} */
const paintOut = ({ id, name, code, caution, ratings, parts, paper, masstone, wash, washLoad }, nameOf) => ({
  id,
  name,
  ...(code && { code }),
  ...(caution && { caution }),
  ...Object.fromEntries(RATINGS.flatMap((key, i) => (ratings[i] == null ? [] : [[key, ratings[i]]]))),
  ...(parts.length
    ? { mixture: partsOut(parts, nameOf) }
    : {
        paper: paperOut(paper),
        masstone: masstone.map(short),
        ...(wash.length && { wash: wash.map(short), washLoad: short(washLoad) }),
      }),
});

/** @type {(record: Record, nameOf: NameOf) => object} */
const recordOut = ({ parts, load, seen, paper, date, note }, nameOf) => ({
  parts: partsOut(parts, nameOf),
  load: short(load),
  seen: seen.map(short),
  paper: paperOut(paper),
  ...(date && { date }),
  ...(note && { note }),
});

/** @type {(parts: Part[], nameOf: NameOf) => unknown[]} */
const partsOut = (parts, nameOf) => parts.map(([paint, count]) => [nameOf(paint), count]);

/** @type {(paper: Paper) => number[] | string} */
const paperOut = ({ stock, own }) => own?.map(short) ?? PAPERS[stock].toLowerCase();

/**
 * The decimal of the fewest digits that is the same 32-bit number.
 *
 * @type {(value: number) => number}
 */
function short(value) {
  for (let digits = 1; digits < 10; digits += 1) {
    const rounded = Number(value.toPrecision(digits));
    if (Math.fround(rounded) === Math.fround(value)) return rounded;
  }
  return value;
}
