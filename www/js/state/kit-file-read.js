// Kit files read: part by part, so that what is good comes in and what is not is named. Pure: no page.
// Versions that were written are read for ever.

/** @import { Core, Found, KitContent, Linked, Own, Paper, Part, Place, Puddle, Record } from "./types.js" */
/** @typedef {(key: any) => number | undefined} Find */
/** @typedef {ReturnType<typeof createReport>} Report */
/** @typedef {ReturnType<typeof createPaints>} Paints */

import {
  LONGEST_TITLE,
  MOST_MIXED,
  MOST_OWN,
  MOST_PANS,
  MOST_PLACES,
  MOST_PUDDLES,
  MOST_RECORDS,
  PAPERS,
} from "../../pkg/facts.js";
import * as words from "../words/kit-file.js";
import { emptyKit, retitle } from "./kit.js";
import { RATINGS, VERSION } from "./kit-file-write.js";
import { inKit } from "./refs.js";

/** Longest file that is read, in bytes. */
export const LONGEST_FILE = 4_000_000;

const KNOWN = ["washpath", "kits", "paints", "records", "held", "owned", "$schema"];

const MOST_FAULTS = 40;

/** Most kits that are read of a file: more than are kept, as tabs may have kept some each. */
const MOST_READ = 200;

/** Most paints that a file marks as held or owned. */
const MOST_MARKED = 1000;

/**
 * Reads a file: `{kits, own, records, held, owned, faults}`. Own paints have numbers of their own, from `core.first_own()` on;
 * a kit bears those it holds. What could not be read is named in `faults` and left out; what is no kit file at all is thrown.
 *
 * `core` checks own paints, records and kits; `find` knows the built-in paints by key. `unseen` are own paints that cannot be
 * shown, by name, and why: they are left out, and so is what is made of them.
 *
 * @type {(text: string, core: Core, find: Find, unseen?: Map<string, string>) => Found}
 */
export function readFile(text, core, find, unseen = new Map()) {
  const file = parsed(text);
  const report = createReport();
  for (const key of Object.keys(file)) if (!KNOWN.includes(key)) report.fault(quoted(key), words.unknownKey);
  const paints = createPaints(find, unseen);
  const own = readPaints(file, report, paints, core);
  const records = report.each(file, "records", MOST_RECORDS, (value) => readRecord(value, paints, core));
  const readKit = createKitReader(report, paints, own, core);
  const kits = report.each(file, "kits", MOST_READ, readKit);
  const held = report.each(file, "held", MOST_MARKED, paints.numberOf);
  const owned = report.each(file, "owned", MOST_MARKED, paints.numberOf);
  return { kits, own, records, held, owned, faults: report.faults() };
}

/**
 * The object that a file is. Throws where it is no kit file, or one of a later version.
 *
 * @type {(text: string) => any}
 */
function parsed(text) {
  if (text.length > LONGEST_FILE) throw new Error(words.tooLong);
  let file;
  try {
    file = JSON.parse(text);
  } catch {
    throw new Error(words.noJson);
  }
  const version = isObject(file) ? file.washpath : undefined;
  if (!Number.isInteger(version) || version < 1) throw new Error(words.noKitFile);
  if (version > VERSION) throw new Error(words.laterVersion(version, VERSION));
  return file;
}

/** What could not be read, in words, and ways to read that name it and go on. */
function createReport() {
  /** @type {string[]} */
  const faults = [];
  let unsaid = 0;

  /** @type {(what: string, reason: string) => void} */
  function fault(what, reason) {
    if (faults.length < MOST_FAULTS) faults.push(words.fault(what, reason));
    else unsaid += 1;
  }

  /**
   * What `read` makes of a value, as a list of one; an empty list where it throws.
   *
   * @type {<T>(what: string, read: () => T) => T[]}
   */
  function tried(what, read) {
    try {
      return [read()];
    } catch (error) {
      fault(what, error.message.replace(/^what the page sent /, ""));
      return [];
    }
  }

  /**
   * What `read(value, index)` makes of each value of a list, as far as it can.
   *
   * @type {<T>(object: any, key: string, most: number, read: (value: any, i: number) => T, where?: string) => T[]}
   */
  function each(object, key, most, read, where = "") {
    const values = object[key];
    if (values === undefined) return [];
    if (!Array.isArray(values)) {
      fault(where + key, words.noList);
      return [];
    }
    if (values.length > most) fault(where + key, words.beyond(values.length - most, most));
    return values
      .slice(0, most)
      .flatMap((value, i) => tried(`${where}${key} ${i + 1}${labelOf(value)}`, () => read(value, i)));
  }

  return { fault, tried, each, faults: () => (unsaid ? [...faults, words.more(unsaid)] : faults) };
}

/**
 * Paints by the keys that a file names them with: built-in ones, and own ones once they are added.
 *
 * @param {Find} find
 * @param {Map<string, string>} unseen
 */
function createPaints(find, unseen) {
  const numbers = new Map();
  const gone = new Map([...unseen].map(([name, reason]) => [ownKey(name), reason]));

  /** @type {(key: any) => number} */
  function numberOf(key) {
    if (typeof key !== "string") refuse(words.noPaint(quoted(key)));
    const known = key.toLowerCase();
    if (gone.has(known)) refuse(words.paintLeft(quoted(key)));
    return numbers.get(known) ?? find(key) ?? refuse(words.noPaint(quoted(key)));
  }

  /** @type {(parts: any) => Part[]} */
  function partsOf(parts) {
    if (!Array.isArray(parts) || parts.length > MOST_MIXED) throw new Error(words.noParts(MOST_MIXED));
    return parts.map((part) =>
      Array.isArray(part) && part.length === 2 ? [numberOf(part[0]), part[1]] : refuse(words.noPart),
    );
  }

  /** @type {(name: string, number: number) => void} */
  function add(name, number) {
    const key = ownKey(name);
    if (numbers.has(key)) refuse(words.sameName);
    if (gone.has(key)) refuse(words.noFilm(gone.get(key) ?? ""));
    numbers.set(key, number);
  }

  return { numberOf, partsOf, add };
}

/**
 * Own paints by their numbers; each can be named by what stands behind it.
 *
 * @type {(file: any, report: Report, paints: Paints, core: Core) => Own[]}
 */
function readPaints(file, report, paints, core) {
  const ids = new Set();
  let next = core.first_own();
  return report.each(file, "paints", MOST_OWN, (value) => {
    const written = paintIn(value, paints);
    // An id that stands twice tells nothing: the paint gets one that follows from what it is.
    const paint = core.read_own({ ...written, id: ids.has(written.id) ? undefined : written.id });
    paints.add(paint.name, next);
    ids.add(paint.id);
    return [next++, paint];
  });
}

/**
 * An own paint as it is written, for the core to judge.
 *
 * @type {(value: any, paints: Paints) => any}
 */
function paintIn(value, { partsOf }) {
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
  if (mixture !== undefined && parts.length === 0) refuse(words.emptyMixture);
  const ratings = RATINGS.map((key) => value[key] ?? null);
  return { id, name, code, caution, ratings, parts, paper: paperIn(paper), masstone, wash, washLoad };
}

/** @type {(value: any, paints: Paints, core: Core) => Omit<Record, "id">} */
function readRecord(value, { partsOf }, core) {
  const { parts, load, seen, paper, date = "", note = "" } = object(value);
  return core.read_record({ parts: partsOf(parts), load, seen, paper: paperIn(paper), date, note });
}

/**
 * Answers `readKit(value, index)`: a kit read part by part, each by itself, then all that passed together.
 *
 * @type {(report: Report, paints: Paints, own: Own[], core: Core) => (value: any, i: number) => Linked}
 */
function createKitReader(report, paints, own, core) {
  /**
   * The same part of a kit, once the core has taken it for one.
   *
   * @type {<P extends Partial<KitContent>>(part: P) => P}
   */
  const checked = (part) => {
    const kit = { ...emptyKit(), capacity: MOST_PANS, ...part };
    const used = new Set(inKit(kit));
    core.encode_kit({ ...kit, own: own.filter(([number]) => used.has(number)) });
    return part;
  };
  /** @type {(pan: any) => number[]} */
  const readPan = (pan) => checked({ pans: [panIn(pan, paints)] }).pans[0];
  /** @type {(puddle: any) => Puddle} */
  const readPuddle = (puddle) =>
    checked({ puddles: [{ parts: paints.partsOf(object(puddle).parts), load: puddle.load }] }).puddles[0];
  /** @type {(place: any) => Place} */
  const readPlace = (place) => checked({ places: [place] }).places[0];
  /** @type {(written: any) => Pick<KitContent, "stock" | "paper">} */
  const readPaper = (written) => {
    const { stock, own: paper } = paperIn(written);
    return checked({ stock, paper });
  };

  return (value, i) => {
    const { title = "", capacity = 12, paper, class: brief } = object(value);
    const where = `kits ${i + 1}${labelOf(value)}, `;
    const pans = report.each(value, "pans", MOST_PANS, readPan, where);
    const puddles = report.each(value, "puddles", MOST_PUDDLES, readPuddle, where);
    const places = report.each(value, "places", MOST_PLACES, readPlace, where);
    const [sheet = { stock: 0, paper: null }] = report.tried(`${where}paper`, () => readPaper(paper));
    const [asked = {}] =
      brief === undefined ? [] : report.tried(`${where}class`, () => checked({ brief: object(brief) }));
    if (typeof title !== "string") refuse(words.noTitle);
    if ([...title].length > LONGEST_TITLE) report.fault(`${where}title`, words.cut(LONGEST_TITLE));
    const kit = { ...retitle(emptyKit(), title), capacity, pans, puddles, places, ...sheet, ...asked };
    return core.decode_kit(core.encode_kit({ ...kit, own }));
  };
}

/** @type {(pan: any, paints: Paints) => number[]} */
const panIn = (pan, { numberOf }) => (Array.isArray(pan) && pan.length <= 2 ? pan.map(numberOf) : refuse(words.noPan));

/**
 * A paper by its name or its colour.
 *
 * @type {(paper?: any) => Paper}
 */
function paperIn(paper = "bright white") {
  if (Array.isArray(paper)) return { stock: 0, own: paper };
  const stock = PAPERS.findIndex((name) => name.toLowerCase() === paper);
  return stock < 0 ? refuse(words.noPaper(quoted(paper))) : { stock, own: null };
}

/** @type {(name: string) => string} */
const ownKey = (name) => `own:${name.toLowerCase()}`;
/** @type {(value: unknown) => boolean} */
const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
/** @type {(value: any) => any} */
const object = (value) => (isObject(value) ? value : refuse(words.noObject));
/** @type {(text: unknown) => string} */
const quoted = (text) => (typeof text === "string" ? words.quoted([...text].slice(0, 40).join("")) : words.noText);
/** @type {(value: any) => string} */
const labelOf = (value) => {
  const name = isObject(value) ? (value.title ?? value.name) : null;
  return typeof name === "string" && name ? ` ${quoted(name)}` : "";
};

/** @type {(reason: string) => never} */
function refuse(reason) {
  throw new Error(reason);
}
