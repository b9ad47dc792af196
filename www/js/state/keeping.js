// Keeps the painter's work item by item as soon as it changes, takes in what other tabs keep, and keeps looks once the hand rests.

import { filmsOf } from "./films.js";
import { idOf, newId } from "./ids.js";
import { createRefs, isItem, itemsOf, kindOf, nameOfKey, partsOut, valueOf } from "./items.js";
import { nameOf, retitle } from "./kit.js";
import { freeName } from "./own.js";
import { readItem, withItem, withoutItem } from "./reading.js";
import { inWork } from "./refs.js";
import * as storage from "./storage.js";
import { following, joined, readVersion } from "./versions.js";

/** What is kept as items. */
const WORK = ["kit", "others", "own", "records", "held", "owned", "ticked"];

/** How the page is looked at: each tab's own affair, and the last one's at the next visit. */
const LOOKS = ["ends", "laid", "share", "load", "light", "showShelf", "ribbon", "reach", "dim", "welcome", "learning", "kit", "others"];

const REST = 200;

/** Looks as they are kept. */
function looksOf(state, refs) {
  const { ends, laid, share, load, light, showShelf, ribbon, reach, dim, welcome, learning, kit, others } = state;
  const end = (end) => end && { ...end, parts: partsOut(end.parts, refs) };
  return { ends: ends.map(end), laid, share, load, light, showShelf, ribbon, reach, dim, welcome, learning, order: [kit, ...others].map(({ id }) => id) };
}

/** What was learned as it is kept. */
const learnedOf = ({ learned }, { refOf }) => learned.map(({ number, ...film }) => ({ paint: refOf(number), ...film }));

/**
 * Follows the store. `known` is what was read at the start: `{versions, texts, kept}`, where `kept` are the items that are in
 * storage as they are in the state. `tell(what, detail)` says `denied`, `full`, `beside` (a kit or paint that two tabs changed at once) or
 * `elsewhere` (what is shown was changed in another tab). Answers `flush`, which writes looks at once.
 */
export function attachKeeping(store, context, { versions, texts, kept }, tell) {
  const { core, numberOf, isBuiltIn, learn } = context;
  const tab = newId();
  let due = null;
  let told = null;

  const refsOf = ({ own, visiting }) => createRefs([...own, ...visiting], numberOf, isBuiltIn);
  const textOf = (state) => (kit) => core.encode_kit({ ...kit, own: state.own });

  function write(key, text) {
    if (texts.get(key) === text) return true;
    const fault = storage.write(key, text);
    if (fault && fault !== told) tell(fault);
    told = fault;
    if (fault) return false;
    texts.set(key, text);
    return true;
  }

  /** Writes the next version of an item, after taking in what another tab wrote unheard. Answers whether it is kept. */
  function put(key, value) {
    const before = versions.get(key);
    if (before && JSON.stringify(before.value) === JSON.stringify(value)) return true;
    const mine = following(before, value, { tab, now: Date.now() });
    const there = storage.read(key);
    const isUnheard = there !== null && there !== texts.get(key);
    if (!isUnheard && !write(key, JSON.stringify(mine))) return false;
    versions.set(key, mine);
    if (isUnheard) hear(key, there);
    return true;
  }

  /** Keeps every item that is not kept as it is. Answers whether all are. */
  function writeWork(state, except) {
    const refs = refsOf(state);
    const items = itemsOf(state, refs);
    for (const [key, thing] of items) {
      if (kept.get(key) === thing) continue;
      if (key === except) kept.set(key, thing);
      else if (put(key, valueOf(key, thing, refs, textOf(state)))) kept.set(key, thing);
    }
    for (const key of [...kept.keys()]) {
      if (!items.has(key) && (key === except || put(key, null))) kept.delete(key);
    }
    return kept.size === items.size;
  }

  function writeFilms({ own, films }) {
    for (const [, paint] of own) {
      const [film] = filmsOf([[0, paint]], films);
      if (film) write(`film/${paint.id}`, JSON.stringify(film));
    }
  }

  function writeLooks() {
    clearTimeout(due);
    if (due === null) return;
    due = null;
    const state = store.get();
    const refs = refsOf(state);
    write("looks", JSON.stringify(looksOf(state, refs)));
    write("learned", JSON.stringify(learnedOf(state, refs)));
  }

  /** Takes in a version of an item that another tab wrote. */
  function meet(key, text) {
    let theirs;
    try {
      theirs = readVersion(text);
    } catch {
      return; // Not of this version of the page: it stays where it is.
    }
    const mine = versions.get(key);
    if (!mine) {
      versions.set(key, theirs);
      return apply(key, theirs.value);
    }
    const { winner, loser } = joined(mine, theirs);
    versions.set(key, winner);
    if (winner !== theirs) write(key, JSON.stringify(winner));
    if (JSON.stringify(winner.value) !== JSON.stringify(mine.value)) apply(key, winner.value);
    if (loser) keepBeside(key, loser);
  }

  /** Brings the state up with an item as it is kept now. */
  function apply(key, value) {
    const state = store.get();
    if (value === null) return applyGone(key, state);
    try {
      const item = readItem(key, value, { ...context, own: state.own });
      if (kindOf(key) === "own" && !hasFilm(item, state)) return void learn([item], filmsIn(state, item)).then((films) => take(key, item, { films }), () => {});
      take(key, item);
    } catch {
      // What this tab cannot read stays as it is kept.
    }
  }

  function take(key, item, patch = {}) {
    const state = store.get();
    store.set({ ...patch, ...withItem(state, key, item, context) }, { from: "elsewhere", key });
    if (key === `kit/${store.get().kit.id}`) tell("elsewhere", nameOf(store.get().kit));
  }

  /** What is in use here is not taken away by another tab: it is kept again. */
  function applyGone(key, state) {
    const name = nameOfKey(key);
    const inHand = key === `kit/${state.kit.id}`;
    const inUse = kindOf(key) === "own" && inWork(state).has(numberOf(name));
    if (!inHand && !inUse) return void store.set(withoutItem(state, key, context), { from: "elsewhere", key });
    kept.delete(key);
    writeWork(state);
  }

  /** Two tabs changed one thing at once: the other one's is kept beside it, by the same name in both tabs. */
  function keepBeside(key, { value, at, by }) {
    const state = store.get();
    const id = idOf(`${key} ${at} ${by}`);
    const here = { ...context, own: state.own };
    try {
      if (kindOf(key) === "kit") {
        const { kit, added } = readItem(`kit/${id}`, value, here);
        const beside = retitle(kit, `${[...nameOf(kit)].slice(0, 46).join("")}, other tab`);
        store.set(withItem(state, `kit/${id}`, { kit: beside, added }, context), { from: "elsewhere" });
        tell("beside", nameOf(kit));
      } else if (kindOf(key) === "own") {
        const paint = readItem(`own/${id}`, value, here);
        store.set(withItem(state, `own/${id}`, { ...paint, name: freeName(paint.name, state.own) }, context), { from: "elsewhere" });
        tell("beside", paint.name);
      }
    } catch {
      // A version that this tab cannot read was never shown here.
    }
  }

  const hasFilm = (paint, state) => paint.parts.length > 0 || filmsOf([[0, paint]], filmsIn(state, paint)).length > 0;

  /** Films at hand, and the one another tab kept with its paint. */
  function filmsIn({ films }, { id }) {
    try {
      const film = JSON.parse(storage.read(`film/${id}`));
      return film ? [...films, film] : films;
    } catch {
      return films;
    }
  }

  /** Takes in all that was written while this tab did not listen. */
  function catchUp() {
    for (const [key, text] of storage.entries()) if (isItem(key) && text !== texts.get(key)) hear(key, text);
  }

  function hear(key, text) {
    if (text === null || !isItem(key)) return;
    texts.set(key, text);
    meet(key, text);
  }

  store.subscribe((state, changed, before, { from, key } = {}) => {
    if (changed.has("own") || changed.has("films")) writeFilms(state);
    if (WORK.some((key) => changed.has(key))) writeWork(state, from === "elsewhere" ? key : undefined);
    if (!changed.has("learned") && !LOOKS.some((key) => changed.has(key))) return;
    clearTimeout(due);
    due = setTimeout(writeLooks, REST);
  });
  // A page that is put away or closed does not wait.
  addEventListener("pagehide", writeLooks);
  addEventListener("pageshow", ({ persisted }) => persisted && catchUp());
  document.addEventListener("visibilitychange", () => (document.hidden ? writeLooks() : catchUp()));
  storage.onOther(hear);
  return { flush: writeLooks, writeAll: () => (writeFilms(store.get()), (due ??= setTimeout(writeLooks, REST)), writeWork(store.get())) };
}
