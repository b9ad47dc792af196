// Keeps the painter's work item by item as soon as it changes, takes in what other tabs keep, and keeps looks once the hand rests.

/** @import { Context, Keeping, Kit, Known, Refs, State, Store, Tell } from "./types.js" */
/** @import { Entries } from "./entries.js" */

import { DEMO, isUntouchedDemo } from "./demo.js";
import * as device from "./device.js";
import { createElsewhere } from "./elsewhere.js";
import { createEntries } from "./entries.js";
import { filmsOf } from "./films.js";
import { createRefs, isItem, itemsOf, kindOf, valueOfKey } from "./items.js";
import { WORK } from "./keys.js";
import { LOOKS, learnedOf, looksOf } from "./looks.js";

const DEMO_KEY = `kit/${DEMO}`;

/** Milliseconds of rest before looks are kept. */
const REST = 200;

/**
 * Follows the store. `known` is what was read at the start: `{versions, texts, kept}`, where `kept` are the items that are in
 * storage as they are in the state. `tell(what, detail)` says `denied`, `full`, `beside` (a kit or paint that two tabs changed at once) or
 * `elsewhere` (what is shown was changed in another tab). Answers `{writeAll, stop}`.
 *
 * @type {(store: Store, context: Context, known: Known, tell: Tell) => Keeping}
 */
export function attachKeeping(store, context, known, tell) {
  const entries = createEntries(known, tell);
  const work = createWork(context, entries, known.kept);
  const elsewhere = createElsewhere(store, context, {
    tell,
    keepAgain(key, state) {
      work.forget(key);
      writeWork(state);
    },
  });
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let due;

  /** @type {(state: State, except?: string) => boolean} */
  function writeWork(state, except) {
    const isWhole = work.write(state, except);
    for (const [key, text] of entries.takeUnheard()) hear(key, text);
    return isWhole;
  }

  function writeLooks() {
    clearTimeout(due);
    if (due === undefined) return;
    due = undefined;
    const state = store.get();
    // What found no room before may find some now.
    writeWork(state);
    const refs = refsOf(state, context);
    const looks = JSON.stringify(looksOf(state, refs));
    device.note("looks", looks);
    entries.write("looks", looks);
    entries.write("learned", JSON.stringify(learnedOf(state, refs)));
  }

  /** @type {(key: string, text: string | null) => void} */
  function hear(key, text) {
    if (text === null || !isItem(key)) return;
    const { changed, loser } = entries.join(key, text);
    if (changed) elsewhere.apply(key, changed.value);
    if (loser) elsewhere.keepBeside(key, loser);
  }

  /** Takes in all that was written while this tab did not listen. */
  function catchUp() {
    for (const [key, text] of device.entries()) if (isItem(key) && !entries.isHeard(key, text)) hear(key, text);
  }

  const quit = store.subscribe((state, changed, _, { from, key } = {}) => {
    if (changed.has("own") || changed.has("films")) writeFilms(state, entries);
    if (WORK.some((key) => changed.has(key))) writeWork(state, from === "elsewhere" ? key : undefined);
    if (!changed.has("learned") && !LOOKS.some((key) => changed.has(key))) return;
    clearTimeout(due);
    due = setTimeout(writeLooks, REST);
  });
  const gone = new AbortController();
  /** @type {(target: EventTarget, event: string, hear: (event: any) => void) => void} */
  const on = (target, event, hear) => target.addEventListener(event, hear, { signal: gone.signal });
  // A page that is put away or closed does not wait.
  on(window, "pagehide", writeLooks);
  on(window, "pageshow", ({ persisted }) => persisted && catchUp());
  on(document, "visibilitychange", () => (document.hidden ? writeLooks() : catchUp()));
  on(window, "storage", (event) => device.heard(event, hear));

  /** Keeps all that is not yet kept; answers whether everything is. */
  function writeAll() {
    const state = store.get();
    writeFilms(state, entries);
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

/** @type {(state: State, context: Context) => Refs} */
const refsOf = ({ own, visiting }, { numberOf, isBuiltIn }) => createRefs([...own, ...visiting], numberOf, isBuiltIn);

/**
 * Keeps the painter's work; `kept` are the items that are kept as they are.
 *
 * @type {(context: Context, entries: Entries, kept: Map<string, any>) => { write: (state: State, except?: string) => boolean, forget: (key: string) => void }}
 */
function createWork(context, entries, kept) {
  /**
   * Keeps every item that is not kept as it is, but the one `except`. Answers whether all are.
   *
   * @type {(state: State, except?: string) => boolean}
   */
  function write(state, except) {
    const refs = refsOf(state, context);
    /** @type {(kit: Kit) => string} */
    const textOf = (kit) => context.core.encode_kit({ ...kit, own: state.own });
    const items = itemsOf(state, refs);
    // The demo nobody has touched is the same everywhere: there is nothing to keep of it.
    if (!entries.has(DEMO_KEY) && isUntouchedDemo(items.get(DEMO_KEY), context.shelf)) items.delete(DEMO_KEY);
    let isWhole = true;
    for (const [key, thing] of items) {
      if (kept.get(key) === thing) continue;
      if (key === except || entries.put(key, valueOfKey(key, thing, refs, textOf))) kept.set(key, thing);
      else isWhole = false;
    }
    // A paint goes only when nothing that is kept refers to it any more.
    for (const key of [...kept.keys()].filter((key) => !items.has(key) && (isWhole || kindOf(key) !== "own"))) {
      if (key === except || entries.put(key, null)) kept.delete(key);
      else isWhole = false;
    }
    return isWhole;
  }
  return { write, forget: (key) => kept.delete(key) };
}

/**
 * Keeps the films of own paints beside them.
 *
 * @type {(state: State, entries: Entries) => void}
 */
function writeFilms({ own, films }, entries) {
  for (const [, paint] of own) {
    const [film] = filmsOf([[0, paint]], films);
    if (film) entries.write(`film/${paint.id}`, JSON.stringify(film));
  }
}
