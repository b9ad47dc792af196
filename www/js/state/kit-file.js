// Kit files: everything a painter keeps as one readable JSON text, and such texts read and merged. Pure: no page.
// www/kit-file.schema.json describes them; versions that were written are read for ever.

import { isUntouchedDemo } from "./demo.js";
import { newId } from "./ids.js";
import { emptyKit, LONGEST_TITLE, nameOf, PAPERS, retitle } from "./kit.js";
import { freeTitle, roomFor } from "./kits.js";
import { MOST_OWN, renumbered, renumberedMix, settle } from "./own.js";
import { addRecords, MOST_RECORDS } from "./records.js";

export const VERSION = 1;

/** Longest file that is read, in bytes. */
export const LONGEST_FILE = 4_000_000;

const RATINGS = ["transparency", "staining", "granulation", "lightfastness"];
const MOST_FAULTS = 40;

/** Most kits that are read of a file: more than are kept, as tabs may have kept some each. */
const MOST_READ = 200;

const ownKey = (name) => `own:${name.toLowerCase()}`;

/** The decimal of the fewest digits that is the same 32-bit number. */
function short(value) {
  for (let digits = 1; digits < 10; digits += 1) {
    const rounded = Number(value.toPrecision(digits));
    if (Math.fround(rounded) === Math.fround(value)) return rounded;
  }
  return value;
}

/** Everything of the state as a file, short lists on a line; or with `alone` the kit in hand with the own paints it holds. */
export function writeFile({ kit, others, own, records, held, owned }, shelf, alone = false) {
  const names = new Map(own.map(([number, paint]) => [number, `own:${paint.name}`]));
  const name = (paint) => names.get(paint) ?? shelf.get(paint)?.key;
  const named = (parts) => parts.map(([paint, count]) => [name(paint), count]);
  const paper = ({ stock, own }) => own?.map(short) ?? PAPERS[stock].toLowerCase();
  const used = usedBy(kit);

  const kitOut = ({ title, capacity, stock, paper: sheet, pans, puddles, places, brief }) => ({
    title,
    capacity,
    paper: paper({ stock, own: sheet }),
    pans: pans.map((pan) => pan.map(name)),
    ...(puddles.length && { puddles: puddles.map(({ parts, load }) => ({ parts: named(parts), load: short(load) })) }),
    ...(places.length && {
      places: places.map(({ name, colours }) => ({
        name,
        colours: colours.map(({ lab, weight }) => ({ lab: [...lab].map(short), weight: short(weight) })),
      })),
    }),
    ...(brief && { class: brief }),
  });
  const paintOut = ([, { id, name, code, caution, ratings, parts, paper: sheet, masstone, wash, washLoad }]) => ({
    id,
    name,
    ...(code && { code }),
    ...(caution && { caution }),
    ...Object.fromEntries(RATINGS.flatMap((key, i) => (ratings[i] == null ? [] : [[key, ratings[i]]]))),
    ...(parts.length
      ? { mixture: named(parts) }
      : {
          paper: paper(sheet),
          masstone: masstone.map(short),
          ...(wash.length && { wash: wash.map(short), washLoad: short(washLoad) }),
        }),
  });
  const recordOut = ({ parts, load, seen, paper: sheet, date, note }) => ({
    parts: named(parts),
    load: short(load),
    seen: seen.map(short),
    paper: paper(sheet),
    ...(date && { date }),
    ...(note && { note }),
  });

  const list = (key, values) => (values.length ? { [key]: values } : {});
  return `${JSON.stringify(
    {
      washpath: VERSION,
      kits: (alone ? [kit] : [kit, ...others]).map(kitOut),
      ...list("paints", own.filter(([number]) => !alone || used.has(number)).map(paintOut)),
      ...(alone
        ? {}
        : {
            ...list("records", records.map(recordOut)),
            ...list("held", held.map(name)),
            ...list("owned", owned.map(name)),
          }),
    },
    null,
    1,
  ).replace(/\[\n\s+([^[\]{}]*?)\n\s+\]/g, (_, inner) => `[${inner.replace(/\n\s+/g, " ")}]`)}\n`;
}

/**
 * Reads a file: `{kits, own, records, held, owned, faults}`. Own paints have numbers of their own, from `core.first_own()` on;
 * a kit bears those it holds. What could not be read is named in `faults` and left out; what is no kit file at all is thrown.
 *
 * `core` checks own paints, records and kits; `find` knows the built-in paints by key. `unseen` are own paints that cannot be
 * shown, by name, and why: they are left out, and so is what is made of them.
 */
export function readFile(text, core, find, unseen = new Map()) {
  if (text.length > LONGEST_FILE) throw new Error("it is longer than 4 MB, and no kit file is");
  let file;
  try {
    file = JSON.parse(text);
  } catch {
    throw new Error("it is no JSON, or cut short on its way");
  }
  const version = isObject(file) ? file.washpath : undefined;
  if (!Number.isInteger(version) || version < 1)
    throw new Error("it is no kit file: it does not begin with “washpath” and a version");
  if (version > VERSION)
    throw new Error(`it is of version ${version}, and this page reads version ${VERSION}: open it with a newer one`);

  const faults = [];
  let unsaid = 0;
  const fault = (what, reason) => {
    if (faults.length < MOST_FAULTS) faults.push(`${what}: ${reason}`);
    else unsaid += 1;
  };
  /** What `read` makes of a value, or nothing with its fault named. */
  const tried = (what, read) => {
    try {
      return [read()];
    } catch (error) {
      fault(what, error.message.replace(/^what the page sent /, ""));
      return [];
    }
  };
  const each = (key, most, read, of = file, where = "") => {
    const values = of[key];
    if (values === undefined) return [];
    if (!Array.isArray(values)) {
      fault(where + key, "is no list");
      return [];
    }
    if (values.length > most) fault(where + key, `${values.length - most} beyond ${most} are left out`);
    return values
      .slice(0, most)
      .flatMap((value, i) => tried(`${where}${key} ${i + 1}${labelOf(value)}`, () => read(value)));
  };
  for (const key of Object.keys(file))
    if (!["washpath", "kits", "paints", "records", "held", "owned", "$schema"].includes(key))
      fault(quoted(key), "is not known and was left out");

  const numbers = new Map();
  const gone = new Map([...unseen].map(([name, reason]) => [ownKey(name), reason]));
  const paintOf = (key) => {
    const known = typeof key === "string" && key.toLowerCase();
    if (gone.has(known)) refuse(`${quoted(key)} is left out`);
    return (known === false ? null : (numbers.get(known) ?? find(key))) ?? refuse(`no paint ${quoted(key)}`);
  };
  const partsOf = (parts) => {
    if (!Array.isArray(parts) || parts.length > 8) throw new Error("its parts are no list of up to 8");
    return parts.map((part) =>
      Array.isArray(part) && part.length === 2 ? [paintOf(part[0]), part[1]] : refuse("a part is a paint and a count"),
    );
  };
  const paperOf = (paper = "bright white") => {
    if (Array.isArray(paper)) return { stock: 0, own: paper };
    const stock = PAPERS.findIndex((name) => name.toLowerCase() === paper);
    return stock < 0 ? refuse(`no paper ${quoted(paper)}`) : { stock, own: null };
  };

  let next = core.first_own();
  const ids = new Set();
  const own = each("paints", MOST_OWN, (value) => {
    const {
      id,
      name,
      code = "",
      caution = "",
      mixture,
      paper,
      masstone = [],
      wash = [],
      washLoad = 0.25,
    } = object(value);
    const parts = mixture === undefined ? [] : partsOf(mixture);
    if (mixture !== undefined && parts.length === 0) refuse("a mixture of nothing");
    // An id that stands twice tells nothing: the paint gets one that follows from what it is.
    const lasting = ids.has(id) ? undefined : id;
    const paint = core.read_own({
      id: lasting,
      name,
      code,
      caution,
      ratings: RATINGS.map((key) => value[key] ?? null),
      parts,
      paper: paperOf(paper),
      masstone,
      wash,
      washLoad,
    });
    const key = ownKey(paint.name);
    if (numbers.has(key)) refuse("a paint of this name stands before it");
    if (gone.has(key)) refuse(`no film shows its swatches (${gone.get(key)})`);
    ids.add(paint.id);
    numbers.set(key, next);
    return [next++, paint];
  });
  const records = each("records", MOST_RECORDS, (value) => {
    const { parts, load, seen, paper, date = "", note = "" } = object(value);
    return core.read_record({ parts: partsOf(parts), load, seen, paper: paperOf(paper), date, note });
  });

  /** The kit, part by part: each alone, then all that passed. */
  const checked = (part) => {
    const kit = { ...emptyKit(), capacity: 48, ...part };
    const used = usedBy(kit);
    core.encode_kit({ ...kit, own: own.filter(([number]) => used.has(number)) });
    return part;
  };
  const readKit = (value, i) => {
    const { title = "", capacity = 12, paper, class: brief } = object(value);
    const where = `kits ${i}${labelOf(value)}, `;
    const some = (key, most, read) => each(key, most, read, value, where);
    const pans = some(
      "pans",
      48,
      (pan) =>
        checked({
          pans: [
            Array.isArray(pan) && pan.length <= 2 ? pan.map(paintOf) : refuse("a pan is a list of one paint or two"),
          ],
        }).pans[0],
    );
    const puddles = some(
      "puddles",
      24,
      (puddle) => checked({ puddles: [{ parts: partsOf(object(puddle).parts), load: puddle.load }] }).puddles[0],
    );
    const places = some("places", 4, (place) => checked({ places: [place] }).places[0]);
    const [sheet = paperOf()] = tried(`${where}paper`, () =>
      (({ stock, own }) => checked({ stock, paper: own }))(paperOf(paper)),
    );
    const [asked = {}] = brief === undefined ? [] : tried(`${where}class`, () => checked({ brief: object(brief) }));
    if (typeof title !== "string") refuse("its title is no text");
    if ([...title].length > LONGEST_TITLE) fault(`${where}title`, `is cut to ${LONGEST_TITLE} characters`);
    return core.decode_kit(
      core.encode_kit({
        ...retitle(emptyKit(), title),
        capacity,
        pans,
        puddles,
        places,
        paper: sheet.paper ?? null,
        stock: sheet.stock,
        brief: asked.brief,
        own,
      }),
    );
  };
  let count = 0;
  const kits = each("kits", MOST_READ, (value) => {
    count += 1;
    return readKit(value, count);
  });
  const held = each("held", 1000, paintOf);
  const owned = each("owned", 1000, paintOf);
  if (unsaid) faults.push(`and ${unsaid} more`);
  return { kits, own, records, held, owned, faults };
}

/**
 * What a file adds to a state: `{patch, came, known, left}`. Nothing there is changed, but that the demo nobody has touched gives way to
 * a kit of its name: equal kits, own paints and records are known, other kits and paints of the same name get another, and what
 * does not fit any more is counted as left.
 */
export function merge(state, found, { core, shelf, numberOf }) {
  const { to: settled, added } = settle(found.own, state.own, numberOf);
  const brought = added.slice(0, Math.max(MOST_OWN - state.own.length, 0));
  const gone = new Set(added.slice(brought.length).map(([number]) => number));
  const own = [...state.own, ...brought];

  const text = (kit) => core.encode_kit({ ...kit, own });
  const isDemo = isUntouchedDemo(state.kit, shelf);
  let { kit: inHand } = state;
  const kits = [];
  const here = [state.kit, ...state.others].map(text);
  const left = { kits: 0, own: gone.size, records: 0 };
  let knownKits = 0;
  const numbers = new Map(found.own.map(([number, { id }]) => [id, settled(number)]));
  for (const { own: its, ...kit } of found.kits) {
    // A kit numbers its own paints by itself, in the order in which it holds them.
    const to = new Map(its.map(([number, { id }]) => [number, numbers.get(id)]));
    const adopted = { ...renumbered(kit, (paint) => to.get(paint) ?? paint), id: newId() };
    const isTooMany = roomFor({ kit: inHand, others: [...state.others, ...kits] }, shelf) <= 0;
    if ([...to.values()].some((number) => gone.has(number))) left.kits += 1;
    else if (here.includes(text(adopted))) knownKits += 1;
    else if (isTooMany) left.kits += 1;
    else if (isDemo && inHand === state.kit && adopted.title === inHand.title) inHand = { ...adopted, id: inHand.id };
    else kits.push(retitle(adopted, freeTitle(adopted, [inHand, ...state.others, ...kits])));
    here.push(text(adopted));
  }

  const moved = found.records.map((record) => renumberedMix(record, settled));
  const fit = moved.filter(({ parts }) => !parts.some(([paint]) => gone.has(paint)));
  const recorded = addRecords(state, fit);
  left.records = recorded.left + moved.length - fit.length;

  const joined = (known, more) => {
    const fresh = [...new Set(more.map(settled))].filter((paint) => !known.includes(paint) && !gone.has(paint));
    return fresh.length ? [...known, ...fresh] : known;
  };
  const onto = (known, more) => (more.length ? [...known, ...more] : known);
  const cameKits = [...(inHand === state.kit ? [] : [inHand]), ...kits];
  return {
    patch: {
      kit: inHand,
      own: onto(state.own, brought),
      others: onto(state.others, kits),
      ...recorded.patch,
      held: joined(state.held, found.held),
      owned: joined(state.owned, found.owned),
    },
    came: { kits: cameKits.map(nameOf), own: brought.map(([, paint]) => paint.name), records: recorded.added },
    known: { kits: knownKits, own: found.own.length - added.length, records: recorded.known },
    left,
  };
}

const usedBy = ({ pans, puddles }) =>
  new Set([...pans.flat(), ...puddles.flatMap(({ parts }) => parts.map(([paint]) => paint))]);
const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
const object = (value) => (isObject(value) ? value : refuse("is no object"));
const quoted = (text) => (typeof text === "string" ? `“${[...text].slice(0, 40).join("")}”` : "that is no text");
const labelOf = (value) => {
  const name = isObject(value) ? (value.title ?? value.name) : null;
  return typeof name === "string" && name ? ` ${quoted(name)}` : "";
};

function refuse(reason) {
  throw new Error(reason);
}
