// The state a visit begins with: read part by part, so that what is good is kept and what is not is named. Never throws.

/** @import { Context, Fault, KeptFilm, Kit, Learned, Own, OwnPaint, Read, State, Version } from "./types.js" */
/** @typedef {[key: string, value: any, at: number]} Item */
/** @typedef {{ [kind: string]: Item[] }} Items */

import { MOST_MIXED } from "../../pkg/facts.js";
import * as words from "../words/state.js";
import { DEMO } from "./demo.js";
import { paintsOf, readEnd } from "./end.js";
import { keptFilm } from "./films.js";
import { newId } from "./ids.js";
import { createRefs, isItem, itemsOf, kindOf, partsIn } from "./items.js";
import { blank, PLAIN } from "./keys.js";
import { readOld } from "./old.js";
import { freeName } from "./own.js";
import { readItem, withItem } from "./reading.js";
import { inKit } from "./refs.js";
import { readVersion } from "./versions.js";

/** How long it is remembered that something was thrown away, in milliseconds: longer than a tab stays open. */
const FORGET = 180 * 24 * 3600 * 1000;

/** Parts that are no work of the painter's: nothing need be said where they cannot be read. */
const LOOKED = ["looks", "learned", "film"];

/** Parts of what was kept that a start can do without, the least missed first. */
const SPARE = [...LOOKED, "held", "owned", "ticked", "record", "own", "kit"];

/**
 * What a start tries to do without, one after the other: nothing, each part by itself, then ever more of them.
 *
 * @type {string[][]}
 */
const SPARED = [[], ...SPARE.map((kind) => [kind]), ...SPARE.slice(1).map((_, i) => SPARE.slice(0, i + 2))];

const DEMO_KEY = `kit/${DEMO}`;

/**
 * Reads what storage holds: `{state, versions, texts, kept, faults, stale, isFirst, hasOld}`. `faults` are `{key, text, why}` of what could not be
 * read; it stays where it is. `ownLooks` is what this tab noted of its looks. `stale` are keys of what was thrown away long ago; `hasOld` says that what a former version of the
 * page kept was read whole and is to be kept anew.
 *
 * `finish(state)` answers the state with all that follows from it, or throws; `context.learn(paints, films)` works out films.
 *
 * @type {(kept: { entries?: [string, string][], oldTexts?: string[], ownLooks?: string | null, context: Context, finish: (state: any) => State, now?: number }) => Promise<Read>}
 */
export async function readState({ entries = [], oldTexts = [], ownLooks = null, context, finish, now = Date.now() }) {
  /** @type {Parameters<Fault>[]} */
  const faults = [];
  /** @type {Fault} */
  const fault = (...named) => faults.push(named);
  const texts = new Map(entries);
  /** @type {Map<string, Version>} */
  const versions = new Map();
  /** @type {string[]} */
  const stale = [];
  /** @type {Items} */
  const found = Object.fromEntries(SPARE.map((kind) => [kind, []]));
  for (const [key, text] of entries) {
    if (kindOf(key) === "film") found.film.push([key, text, 0]);
    if (!isItem(key)) continue;
    try {
      const version = readVersion(text);
      versions.set(key, version);
      if (version.value !== null) found[kindOf(key)].push([key, version.value, version.at]);
      else if (version.at < now - FORGET) stale.push(key);
    } catch (error) {
      fault(key, text, error.message);
    }
  }
  // A tab that is loaded anew looks as it did, whatever another tab looks at.
  const looks = ownLooks ?? texts.get("looks");
  if (looks) found.looks.push(["looks", looks, 0]);
  if (texts.has("learned")) found.learned.push(["learned", texts.get("learned"), 0]);
  const old = readOld(oldTexts, context, fault);
  for (const [key, value] of old.items) if (!versions.has(key)) found[kindOf(key)].push([key, value, 0]);
  for (const text of old.films) found.film.push(["film", text, 0]);
  for (const [key, kept] of Object.entries({ looks: old.looks, learned: old.learned }))
    if (found[key].length === 0 && kept) found[key].push([key, JSON.stringify(kept), 0]);

  let failed;
  for (const without of SPARED) {
    /** @type {Parameters<Fault>[]} */
    const tried = [];
    const put = await assemble(
      Object.fromEntries(Object.entries(found).map(([kind, items]) => [kind, without.includes(kind) ? [] : items])),
      context,
      texts,
      (...named) => tried.push(named),
    );
    // The demo that is shown instead of one that cannot be read must not be kept in its place.
    const isDemoUnread =
      texts.has(DEMO_KEY) && (without.includes("kit") || [...faults, ...tried].some(([key]) => key === DEMO_KEY));
    const state = isDemoUnread && put.kit.id === DEMO ? { ...put, kit: { ...put.kit, id: newId() } } : put;
    try {
      const finished = finish(state);
      for (const [key, value] of without.filter((kind) => !LOOKED.includes(kind)).flatMap((kind) => found[kind]))
        fault(key, texts.get(key) ?? JSON.stringify(value), words.notTogether);
      tried.forEach((named) => fault(...named));
      const hasOld = oldTexts.length > 0;
      return {
        state: finished,
        versions,
        texts,
        kept: keptOf(finished, versions, context),
        faults: faults.map(([key, text, why]) => ({ key, text, why })),
        isFirst: entries.length + oldTexts.length === 0,
        // What was thrown away would come back from there.
        stale: hasOld ? [] : stale,
        hasOld: hasOld && old.isWhole && faults.length === 0,
      };
    } catch (error) {
      failed = error;
    }
  }
  throw failed;
}

/**
 * The state of these items.
 *
 * @type {(found: Items, context: Context, texts: Map<string, string>, fault: Fault) => Promise<any>}
 */
async function assemble(found, context, texts, fault) {
  const { shelf } = context;
  let state = blank(shelf);
  /** @type {(kind: string, put: (key: string, item: any, at: number) => void) => void} */
  const read = (kind, put) => {
    for (const [key, value, at] of found[kind]) {
      try {
        put(key, readItem(key, value, { ...context, own: state.own }), at);
      } catch (error) {
        fault(key, texts.get(key) ?? JSON.stringify(value), error.message);
      }
    }
  };
  /** @type {(key: string, item: any) => void} */
  const put = (key, item) => (state = { ...state, ...withItem(state, key, item, context) });

  read("own", (key, paint) => put(key, { ...paint, name: freeName(paint.name, state.own) }));
  const films = found.film.map(([, text]) => keptFilm(text)).filter((film) => film !== null);
  state = {
    ...state,
    ...(await withFilms(state.own, films, context, (paint, why) =>
      fault(`own/${paint.id}`, JSON.stringify(paint), why),
    )),
  };

  /** @type {[Kit, number, string][]} */
  const brought = [];
  read("kit", (key, { kit, added }, at) => {
    state = { ...state, own: [...state.own, ...added] };
    brought.push([kit, at, key]);
  });
  // Paints that came along with kits need films as well.
  state = { ...state, ...(await withFilms(state.own, state.films, context, () => {})) };
  /** @type {(paint: number) => boolean} */
  const isSeen = (paint) => context.isBuiltIn(paint) || state.own.some(([number]) => number === paint);
  const kits = brought.filter(([kit]) => inKit(kit).every(isSeen));
  for (const [, , key] of brought.filter((entry) => !kits.includes(entry)))
    fault(key, texts.get(key) ?? "", words.unseenPaint);
  const looks = readLooks(found.looks[0], context, state);
  const isDemoKept = texts.has(DEMO_KEY);
  if (!isDemoKept && looks.order.includes(DEMO)) kits.push([state.kit, 0, DEMO_KEY]);
  if (kits.length) {
    /** @type {(entry: [Kit, number, string]) => number} */
    const place = ([{ id }]) => (looks.order.includes(id) ? looks.order.indexOf(id) : Infinity);
    kits.sort((a, b) => place(a) - place(b) || b[1] - a[1]);
    const [[kit], ...others] = kits;
    state = { ...state, kit, others: others.map(([kit]) => kit) };
  }
  for (const kind of ["record", "held", "owned", "ticked"]) read(kind, put);
  const { order, ...shown } = looks;
  return { ...state, ...shown, learned: readLearned(found.learned[0], context, state) };
}

/**
 * Own paints that have films, and the films; those that no film shows are named.
 *
 * @type {(own: Own[], films: KeptFilm[], context: Context, unseen: (paint: OwnPaint, why: string) => void) => Promise<{ own: Own[], films: KeptFilm[] }>}
 */
async function withFilms(own, films, { learn }, unseen) {
  let known = films;
  /** @type {Own[]} */
  const seen = [];
  for (const entry of own) {
    try {
      known = await learn([entry[1]], known);
      seen.push(entry);
    } catch (error) {
      unseen(entry[1], error.message);
    }
  }
  return { own: seen.length === own.length ? own : seen, films: known };
}

/**
 * Looks as they may be kept; others are as in a first visit.
 *
 * @type {(entry: Item | undefined, context: Context, state: Pick<State, "own">) => any}
 */
function readLooks(entry, context, { own }) {
  if (!entry) return { order: [] };
  try {
    const kept = JSON.parse(entry[1]);
    const refs = createRefs(own, context.numberOf, context.isBuiltIn);
    const fitting = PLAIN.filter(([key, { fits }]) => fits(kept[key]));
    const looks = Object.fromEntries(fitting.map(([key]) => [key, kept[key]]));
    const ends = Array.isArray(kept.ends) ? kept.ends.slice(0, 2) : null;
    const order = Array.isArray(kept.order) ? kept.order : [];
    const read = ends && [0, 1].map((i) => readEnd(ends[i], (parts) => partsIn(parts, refs), { ...context, own }));
    if (read && paintsOf(read).size > MOST_MIXED) read[1] = null;
    return { ...looks, order, ...(read && { ends: read }) };
  } catch {
    // Nothing of the painter's work is lost with them.
    return { order: [] };
  }
}

/**
 * What was learned, as far as it can be read: records teach the rest anew.
 *
 * @type {(entry: Item | undefined, context: Context, state: Pick<State, "own">) => Learned[]}
 */
function readLearned(entry, { numberOf, isBuiltIn }, { own }) {
  try {
    const refs = createRefs(own, numberOf, isBuiltIn);
    const mine = new Set(own.map(([number]) => number));
    /** @type {any[]} */
    const kept = entry ? JSON.parse(entry[1]) : [];
    return kept
      .map(({ paint, ...film }) => ({ number: refs.numberOf(paint), ...film }))
      .filter(({ number }) => mine.has(number) || isBuiltIn(number));
  } catch {
    return [];
  }
}

/**
 * The items that storage holds as they are in the state.
 *
 * @type {(state: State, versions: Map<string, Version>, context: Context) => Map<string, any>}
 */
function keptOf(state, versions, { numberOf, isBuiltIn }) {
  const items = itemsOf(state, createRefs(state.own, numberOf, isBuiltIn));
  return new Map([...items].filter(([key]) => versions.get(key)?.value != null));
}
