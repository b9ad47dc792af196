// Kit files on their way out and in: saved, looked into, added.

import { button, byId, element, notice, say, UNDO } from "../page/dom.js";
import { fileName, save } from "../page/save.js";
import { learnFilms } from "../state/films.js";
import { LONGEST_FILE, merge, readFile, writeFile } from "../state/kit-file.js";
import { today } from "../state/records.js";

const some = (count, one, many = `${one}s`) => (count ? `${count} ${count === 1 ? one : many}` : "");
const listed = (...words) => words.filter(Boolean).join(", ") || "nothing";
const things = ({ kits, own, records }) => listed(some(kits, "kit"), some(own, "own paint"), some(records, "record"));

/** Saves kit files; shows what is in one before it is added. `done` closes what it is shown in. */
export function attachFiles(store, context, ask, done) {
  const { core, shelf, isBuiltIn } = context;
  const field = byId("file-open");
  const frame = byId("file-preview");
  const write = (alone) => {
    const state = store.get();
    const name = alone ? fileName(state.kit.title, "kit") : `washpath-${today()}`;
    save(writeFile(state, shelf, alone), `${name}.json`, "application/json");
  };
  for (const id of ["file-kit", "share-as-file"]) byId(id).addEventListener("click", () => write(true));
  byId("file-all").addEventListener("click", () => write(false));
  const look = () => field.files[0] && open(field.files[0]);
  field.addEventListener("change", look);
  look();

  async function open(file) {
    try {
      if (file.size > LONGEST_FILE)
        throw new Error(`it has ${(file.size / 1e6).toFixed(1)} MB, and no kit file has more than 4`);
      const text = await file.text();
      // Own paints need their films before a shelf takes them.
      const found = read(text);
      const { films, unseen } = await filmsOf(found.own);
      preview(file.name, unseen.size ? read(text, unseen) : found, films);
    } catch (error) {
      frame.replaceChildren(
        element("p", { class: "fault" }, `This file could not be read: ${error.message}. Nothing was changed.`),
      );
      say("The file could not be read");
    }
    field.value = "";
  }

  /** Films of own paints, each asked for by itself; and by name why there is none of a paint. */
  async function filmsOf(own) {
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

  function read(text, unseen) {
    const builtIn = (key) => {
      const number = shelf.find(key)?.number;
      return isBuiltIn(number) ? number : undefined;
    };
    return readFile(text, core, builtIn, unseen);
  }

  function preview(name, found, films) {
    const { patch, came, known, left } = merge(store.get(), found, context);
    const marks = [
      [patch.held.length - store.get().held.length, "paint held to the shelf", "paints held to the shelf"],
      [patch.owned.length - store.get().owned.length, "paint you own", "paints you own"],
    ];
    const line = (what, names) =>
      names.length > 0 && element("li", {}, element("b", {}, `${what}: `), names.join(", "));
    const news = [
      line("Kits", came.kits),
      line("Own paints", came.own),
      line("Records", came.records ? [String(came.records)] : []),
      line("Marks", marks.map(([count, one, many]) => some(count, one, many)).filter(Boolean)),
    ].filter(Boolean);
    const close = () => frame.replaceChildren();
    const add = () => {
      // What changed since the file was opened counts too.
      if (!store.set((state) => ({ ...merge(state, found, context).patch, films: [...state.films, ...films] }))) return;
      close();
      done();
      notice(
        `Added from ${name}: ${things({ ...came, kits: came.kits.length, own: came.own.length })}.${came.kits.length ? " Kits stand in the list above the tin." : ""}`,
        { actions: [UNDO], seconds: 12 },
      );
    };
    const missed = [
      ...(left.kits + left.own + left.records ? [`${things(left)}: no room is left for more`] : []),
      ...found.faults,
    ];
    frame.replaceChildren(
      element("h4", {}, `In ${name}`),
      news.length
        ? element("ul", { class: "sentences" }, ...news)
        : element("p", {}, "Nothing that is not here already."),
      known.kits + known.own + known.records > 0 && news.length
        ? element("p", { class: "quiet" }, `Here already: ${things(known)}.`)
        : "",
      missed.length
        ? element(
            "details",
            { class: "fault", open: missed.length < 6 },
            element("summary", {}, "Left out"),
            element("ul", {}, ...missed.map((fault) => element("li", {}, fault))),
          )
        : "",
      element(
        "div",
        { class: "verbs" },
        button("Cancel", close),
        news.length ? button("Add to what is here", add, { class: "main" }) : "",
      ),
    );
    frame.querySelector(".verbs button:last-child").focus();
    say(`The file holds ${things({ ...came, kits: came.kits.length, own: came.own.length })} that are new`);
  }
}
