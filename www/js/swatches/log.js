// The log: every record as a table; out to a file and in from one.

/** @import { Lesson } from "../state/answers.js" */
/** @import { Ask, Core, Record, Shelf, State, Store } from "../state/types.js" */

import { button, byId, element, notice, UNDO } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { save } from "../page/save.js";
import { shortName } from "../state/end.js";
import { pathOf } from "../state/path.js";
import * as words from "../words/log.js";
import { gonePaint } from "../words/terms.js";
import { createLogFile } from "./log-file.js";
import { labOf } from "./seen-field.js";
import { DOUBTED } from "./taught.js";

/**
 * Shows the log. `toMix` shows the mix.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Core} core
 * @param {Ask} ask
 * @param {() => void} toMix
 */
export function attachLog(store, shelf, core, ask, toMix) {
  const frame = byId("log");
  const file = createLogFile(store, ask);
  const verbs = {
    /** @param {Record} what */
    open({ parts, load }) {
      store.set({ ...pathOf(parts), load: Math.min(load, 1), laid: 0 });
      toMix();
    },
    /** @param {number} i */
    remove(i) {
      store.set({ records: store.get().records.filter((_, j) => j !== i) });
      notice(words.deleted, { actions: [UNDO], seconds: 8 });
    },
  };

  /** @param {State} state */
  function show(state) {
    const isEmpty = state.records.length === 0;
    remake(
      frame,
      element(
        "div",
        { class: "title-row" },
        element("h3", {}, words.title),
        element(
          "div",
          { class: "verbs" },
          ...file.nodes,
          button(words.exportIt, () => write(store, ask), { disabled: isEmpty, "data-focus": "export" }),
        ),
      ),
      file.said,
      isEmpty ? element("p", { class: "quiet" }, words.empty) : table(state, shelf, core, verbs),
    );
  }

  store.subscribe((state, changed) => ["records", "lesson", "studio"].some((key) => changed.has(key)) && show(state));
  show(store.get());
}

/**
 * Saves all records as a file.
 *
 * @param {Store} store
 * @param {Ask} ask
 */
async function write(store, ask) {
  try {
    // A byte order mark, so that a spreadsheet reads letters beyond ASCII.
    save(`\ufeff${await ask("writeLog", { records: store.get().records })}`, "swatches.csv", "text/csv");
  } catch (error) {
    notice(words.notWritten(error.message), { seconds: 8 });
  }
}

/**
 * Records as a table, newest first; the lesson judges them where it is of these.
 *
 * @param {State} state
 * @param {Shelf} shelf
 * @param {Core} core
 * @param {{ open: (record: Record) => void, remove: (index: number) => void }} what
 */
function table({ records, lesson, studio }, shelf, core, { open, remove }) {
  const judged = lesson?.records.length === records.length ? lesson.records : [];
  const rows = records.map((record, i) => {
    const known = record.parts.every(([paint]) => shelf.get(paint));
    const name = known ? shortName(record.parts, shelf) : gonePaint;
    const lab = Float32Array.from(labOf(record.seen, core));
    return element(
      "tr",
      {},
      element("td", {}, chip(known && studio.swatch(record.parts, record.load).css)),
      element("td", {}, chip(studio.colour(lab).css)),
      element("th", { scope: "row" }, openVerb(record, name, { disabled: !known, "data-focus": `record-${i}` }, open)),
      element("td", {}, ...judgement(judged[i])),
      element(
        "td",
        {},
        button("×", () => remove(i), { class: "drop", "aria-label": words.removeIt(name), title: words.remove }),
      ),
    );
  });
  return element(
    "div",
    { class: "scroll" },
    element("table", { class: "log" }, element("thead", {}, head()), element("tbody", {}, ...rows.reverse())),
  );
}

const head = () =>
  element(
    "tr",
    {},
    ...words.columns.map((name) => element("th", { scope: "col" }, name)),
    element("th", { scope: "col" }, element("span", { class: "unseen" }, words.remove)),
  );

/** @param {string | false | undefined} css */
const chip = (css) => element("span", { class: css ? "chip" : "chip blank", style: css ? { "--wash": css } : {} });

/**
 * A record's mix, load, date and note; a click opens the mix.
 *
 * @param {Record} record
 * @param {string} name
 * @param {{ [name: string]: any }} attributes
 * @param {(record: Record) => void} open
 */
function openVerb(record, name, attributes, open) {
  const { load, date, note } = record;
  const verb = button("", () => open(record), { class: "take", ...attributes });
  verb.append(
    element("span", { class: "name" }, name, element("span", { class: "traits" }, words.traits(load, date, note))),
  );
  return verb;
}

/**
 * How far off a record is predicted, and whether it is doubted.
 *
 * @param {Lesson["records"][number] | undefined} judged
 */
const judgement = (judged) => [
  judged ? words.off(judged.without) : "",
  judged && judged.believed < DOUBTED ? element("b", { class: "tag", title: words.doubtedTitle }, words.doubted) : "",
];
