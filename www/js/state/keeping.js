// Keeps the painter's work item by item as soon as it changes, takes in what other tabs keep, and keeps looks once the hand rests.

import { DEMO, isUntouchedDemo } from "./demo.js";
import { filmsOf, keptFilm } from "./films.js";
import { idOf, newId } from "./ids.js";
import { createRefs, isItem, itemsOf, kindOf, nameOfKey, partsOut, valueOfKey } from "./items.js";
import { nameOf, retitle } from "./kit.js";
import { freeName } from "./own.js";
import { readItem, withItem, withoutItem } from "./reading.js";
import { inWork } from "./refs.js";
import * as storage from "./storage.js";
import { following, joined, readVersion } from "./versions.js";

/** What is kept as items. */
const WORK = ["kit", "others", "own", "records", "held", "owned", "ticked"];

/** How the page is looked at: each tab's own affair, and the last one's at the next visit. */
const LOOKS = [
  "ends",
  "laid",
  "share",
  "load",
  "light",
  "showShelf",
  "ribbon",
  "reach",
  "dim",
  "welcome",
  "learning",
  "kit",
  "others",
];

const DEMO_KEY = `kit/${DEMO}`;

const REST = 200;

/** Looks as they are kept. */
function looksOf(state, refs) {
  const { ends, laid, share, load, light, showShelf, ribbon, reach, dim, welcome, learning, kit, others } = state;
  const end = (end) => end && { ...end, parts: partsOut(end.parts, refs) };
  return {
    ends: ends.map(end),
    laid,
    share,
    load,
    light,
    showShelf,
    ribbon,
    reach,
    dim,
    welcome,
    learning,
    order: [kit, ...others].map(({ id }) => id),
  };
}

/** What was learned as it is kept. */
const learnedOf = ({ learned }, { refOf }) => learned.map(({ number, ...film }) => ({ paint: refOf(number), ...film }));

/**
 * Follows the store. `known` is what was read at the start: `{versions, texts, kept}`, where `kept` are the items that are in
 * storage as they are in the state. `tell(what, detail)` says `denied`, `full`, `beside` (a kit or paint that two tabs changed at once) or
 * `elsewhere` (what is shown was changed in another tab). Answers `{writeAll, stop}`.
 */
export function attachKeeping(store, context, { versions, texts, kept }, tell) {
  const { core, shelf, numberOf, isBuiltIn, learn } = context;
  const tab = newId();
  /** What other tabs wrote and this one found only when it came to write. */
  const unheard = [];
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
    if (isUnheard) unheard.push([key, there]);
    return true;
  }

  /** Keeps every item that is not kept as it is. Answers whether all are. */
  function writeWork(state, except) {
    const refs = refsOf(state);
    const items = itemsOf(state, refs);
    // The demo nobody has touched is the same everywhere: there is nothing to keep of it.
    if (!versions.has(DEMO_KEY) && isUntouchedDemo(items.get(DEMO_KEY), shelf)) items.delete(DEMO_KEY);
    let isWhole = true;
    for (const [key, thing] of items) {
      if (kept.get(key) === thing) continue;
      if (key === except || put(key, valueOfKey(key, thing, refs, textOf(state)))) kept.set(key, thing);
      else isWhole = false;
    }
    // A paint goes only when nothing that is kept refers to it any more.
    for (const key of [...kept.keys()].filter((key) => !items.has(key) && (isWhole || kindOf(key) !== "own"))) {
      if (key === except || put(key, null)) kept.delete(key);
      else isWhole = false;
    }
    for (const [key, text] of unheard.splice(0)) hear(key, text);
    return isWhole;
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
    // What found no room before may find some now.
    writeWork(state);
    const refs = refsOf(state);
    const looks = JSON.stringify(looksOf(state, refs));
    storage.note("looks", looks);
    write("looks", looks);
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
      if (kindOf(key) === "own") takePaint(key, item, filmsIn(state, item));
      else take(key, item);
    } catch {
      // What this tab cannot read stays as it is kept.
    }
  }

  /** A paint comes with its film; where there is none it is worked out first. */
  function takePaint(key, paint, films) {
    const hasFilm = paint.parts.length > 0 || filmsOf([[0, paint]], films).length > 0;
    if (hasFilm) take(key, paint, { films });
    else
      learn([paint], films).then(
        (films) => take(key, paint, { films }),
        () => {},
      );
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
        store.set(withItem(state, `own/${id}`, { ...paint, name: freeName(paint.name, state.own) }, context), {
          from: "elsewhere",
        });
        tell("beside", paint.name);
      }
    } catch {
      // A version that this tab cannot read was never shown here.
    }
  }

  /** Films at hand, and the one another tab kept with its paint. */
  function filmsIn({ films }, { id }) {
    const film = keptFilm(storage.read(`film/${id}`));
    return film && !films.some(([key]) => key === film[0]) ? [...films, film] : films;
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

  const quit = store.subscribe((state, changed, _, { from, key } = {}) => {
    if (changed.has("own") || changed.has("films")) writeFilms(state);
    if (WORK.some((key) => changed.has(key))) writeWork(state, from === "elsewhere" ? key : undefined);
    if (!changed.has("learned") && !LOOKS.some((key) => changed.has(key))) return;
    clearTimeout(due);
    due = setTimeout(writeLooks, REST);
  });
  const gone = new AbortController();
  const on = (target, event, hear) => target.addEventListener(event, hear, { signal: gone.signal });
  // A page that is put away or closed does not wait.
  on(window, "pagehide", writeLooks);
  on(window, "pageshow", ({ persisted }) => persisted && catchUp());
  on(document, "visibilitychange", () => (document.hidden ? writeLooks() : catchUp()));
  on(window, "storage", (event) => storage.heard(event, hear));

  /** Keeps all that is not yet kept; answers whether everything is. */
  function writeAll() {
    const state = store.get();
    writeFilms(state);
    due ??= setTimeout(writeLooks, REST);
    return writeWork(state);
  }

  /** Follows no longer, as when a page is closed. */
  function stop() {
    writeLooks();
    quit();
    gone.abort();
  }

  return { writeAll, stop };
}
