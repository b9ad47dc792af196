// Kit files: everything a painter keeps as one readable JSON text. Pure: no page.
// www/kit-file.schema.json describes them; `kit-file-read.js` reads them, and `merge.js` takes in what they bring.

import { PAPERS } from "./kit.js";
import { inKit } from "./refs.js";

export const VERSION = 1;

/** Ratings of a paint, in the order in which it has them. */
export const RATINGS = ["transparency", "staining", "granulation", "lightfastness"];

/** Everything of the state as a file, short lists on a line; or with `alone` the kit in hand with the own paints it holds. */
export function writeFile({ kit, others, own, records, held, owned }, shelf, alone = false) {
  const names = new Map(own.map(([number, paint]) => [number, `own:${paint.name}`]));
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

const list = (key, values) => (values.length ? { [key]: values } : {});

/** JSON with lists of numbers and names on one line each. */
const textOf = (file) =>
  `${JSON.stringify(file, null, 1).replace(/\[\n\s+([^[\]{}]*?)\n\s+\]/g, (_, inner) => `[${inner.replace(/\n\s+/g, " ")}]`)}\n`;

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

const recordOut = ({ parts, load, seen, paper, date, note }, nameOf) => ({
  parts: partsOut(parts, nameOf),
  load: short(load),
  seen: seen.map(short),
  paper: paperOut(paper),
  ...(date && { date }),
  ...(note && { note }),
});

const partsOut = (parts, nameOf) => parts.map(([paint, count]) => [nameOf(paint), count]);

const paperOut = ({ stock, own }) => own?.map(short) ?? PAPERS[stock].toLowerCase();

/** The decimal of the fewest digits that is the same 32-bit number. */
function short(value) {
  for (let digits = 1; digits < 10; digits += 1) {
    const rounded = Number(value.toPrecision(digits));
    if (Math.fround(rounded) === Math.fround(value)) return rounded;
  }
  return value;
}
