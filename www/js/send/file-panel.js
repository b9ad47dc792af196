// Kit files on their way out and in: saved, looked into, added.

/** @import { Came } from "./file-preview.js" */
/** @import { Ask, Context, Found, KeptFilm, Own, Store } from "../state/types.js" */

import { button, byId, element, first, notice, say, UNDO } from "../page/dom.js";
import { fileName, save } from "../page/save.js";
import { learnFilms } from "../state/films.js";
import { LONGEST_FILE, readFile } from "../state/kit-file-read.js";
import { writeFile } from "../state/kit-file-write.js";
import { merge } from "../state/merge.js";
import { today } from "../state/records.js";
import * as words from "../words/files.js";
import { countsOf, leftOut, marksOf, newsOf } from "./file-preview.js";

/**
 * Saves kit files; shows what is in one before it is added. `done` closes what it is shown in.
 *
 * @param {Store} store
 * @param {Context} context
 * @param {Ask} ask
 * @param {() => void} done
 */
export function attachFiles(store, context, ask, done) {
  const field = byId("file-open", HTMLInputElement);
  const frame = byId("file-preview");

  /** @param {boolean} alone */
  function write(alone) {
    const state = store.get();
    const name = alone ? fileName(state.kit.title, "kit") : `washpath-${today()}`;
    save(writeFile(state, context.shelf, alone), `${name}.json`, "application/json");
  }

  /** @param {File} file */
  async function open(file) {
    try {
      const { found, films } = await read(file, context, ask);
      preview(file.name, found, films);
    } catch (error) {
      frame.replaceChildren(element("p", { class: "fault" }, words.unreadable(error.message)));
      say(words.unreadableSaid);
    }
    field.value = "";
  }

  /**
   * @param {string} name
   * @param {Found} found
   * @param {KeptFilm[]} films
   */
  function preview(name, found, films) {
    const state = store.get();
    const { patch, came, known, left } = merge(state, found, context);
    const news = newsOf(came, marksOf(patch, state));
    const isNew = news.length > 0;
    const isKnown = known.kits + known.own + known.records > 0;
    frame.replaceChildren(
      element("h4", {}, words.inFile(name)),
      isNew ? element("ul", { class: "sentences" }, ...news) : element("p", {}, words.nothingNew),
      isNew && isKnown ? element("p", { class: "quiet" }, words.known(known)) : "",
      leftOut(left, found.faults),
      element(
        "div",
        { class: "verbs" },
        button(words.cancel, close),
        isNew ? button(words.add, () => add(name, found, films, came), { class: "main" }) : "",
      ),
    );
    first(frame, ".verbs button:last-child").focus();
    say(words.newThings(countsOf(came)));
  }

  /**
   * @param {string} name
   * @param {Found} found
   * @param {KeptFilm[]} films
   * @param {Came} came
   */
  function add(name, found, films, came) {
    // What changed since the file was opened counts too.
    if (!store.set((state) => ({ ...merge(state, found, context).patch, films: [...state.films, ...films] }))) return;
    close();
    done();
    notice(words.added(name, countsOf(came)), { actions: [UNDO], seconds: 12 });
  }

  const close = () => frame.replaceChildren();

  for (const id of ["file-kit", "share-as-file"]) byId(id).addEventListener("click", () => write(true));
  byId("file-all").addEventListener("click", () => write(false));
  const look = () => {
    const file = field.files?.[0];
    if (file) open(file);
  };
  field.addEventListener("change", look);
  look();
}

/**
 * What is found in a kit file, and the films of its own paints. A paint without a film is a fault of the file.
 *
 * @param {File} file
 * @param {Context} context
 * @param {Ask} ask
 */
async function read(file, { core, shelf, isBuiltIn }, ask) {
  if (file.size > LONGEST_FILE) throw new Error(words.tooLarge(file.size, LONGEST_FILE));
  const text = await file.text();
  /** @param {string} key */
  const builtIn = (key) => {
    const number = shelf.find(key)?.number;
    return number !== undefined && isBuiltIn(number) ? number : undefined;
  };
  const found = readFile(text, core, builtIn);
  // Own paints need their films before a shelf takes them.
  const { films, unseen } = await filmsOf(found.own, ask);
  return { found: unseen.size ? readFile(text, core, builtIn, unseen) : found, films };
}

/**
 * Films of own paints, each asked for by itself; and by name why there is none of a paint.
 *
 * @param {Own[]} own
 * @param {Ask} ask
 */
async function filmsOf(own, ask) {
  /** @type {KeptFilm[]} */
  let films = [];
  const unseen = new Map();
  for (const [, paint] of own) {
    try {
      films = await learnFilms([paint], films, ask);
    } catch (error) {
      unseen.set(paint.name, error.message);
    }
  }
  return { films, unseen };
}
