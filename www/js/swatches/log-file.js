// Records from a file: chosen, read by the worker, asked about where a date could be two days, and added to the log.

/** @import { ReadLog } from "../state/answers.js" */
/** @import { Ask, Store } from "../state/types.js" */

/** @typedef {{ text: string, said: string, dayFirst?: boolean }} LogText a log, how it was read, and which of two days its dates mean */

import { button, element, say } from "../page/dom.js";
import { readText } from "../page/text-file.js";
import { addRecords } from "../state/records.js";
import * as words from "../words/log.js";

/**
 * The field that a file is chosen with, as `nodes`, and what is `said` of it.
 *
 * @param {Store} store
 * @param {Ask} ask
 */
export function createLogFile(store, ask) {
  const said = element("div", { role: "status" });
  const field = element("input", {
    type: "file",
    id: "log-file",
    class: "unseen",
    accept: ".csv,.tsv,.txt,text/csv",
    onchange: () => {
      const chosen = field.files?.[0];
      // So that the same can be chosen again.
      field.value = "";
      if (chosen) attempt(async () => take(await readText(chosen)));
    },
  });

  /** @param {() => Promise<void>} act */
  async function attempt(act) {
    try {
      await act();
    } catch (error) {
      said.replaceChildren(element("p", { class: "fault" }, words.unreadable(error.message)));
    }
  }

  /**
   * Adds the records of a file `{text, said, dayFirst}`.
   *
   * @param {LogText} file
   */
  async function take(file) {
    const { text, dayFirst } = file;
    const found = await ask("readLog", { text, dayFirst });
    if (found.unsure) return askOrder(file, found.unsure);
    const { patch, added, known, left: beyond } = addRecords(store.get(), found.found);
    if (!store.set(patch)) return;
    const left = [...found.faults, ...(beyond ? [words.beyond(beyond)] : [])];
    said.replaceChildren(
      element("p", { class: "quiet" }, words.came(added, known, file.said)),
      left.length ? leftOut(left) : "",
    );
    say(words.cameSaid(added, left.length));
  }

  /**
   * Dates like 4/10/2024 are of two days: where the file does not tell, the painter does, once for all of it.
   *
   * @param {LogText} file
   * @param {NonNullable<ReadLog["unsure"]>} unsure
   */
  function askOrder(file, { written, dayFirst, monthFirst }) {
    /**
     * @param {string} word
     * @param {boolean} first
     */
    const way = (word, first) => button(word, () => attempt(() => take({ ...file, dayFirst: first })));
    const day = way(words.dayFirst(dayFirst), true);
    said.replaceChildren(
      element("p", {}, words.whichDay(written)),
      element(
        "div",
        { class: "verbs" },
        day,
        way(words.monthFirst(monthFirst), false),
        button(words.cancel, () => said.replaceChildren()),
      ),
    );
    day.focus();
    say(words.whichDaySaid(written));
  }

  return { nodes: [element("label", { for: "log-file", class: "button" }, words.importIt), field], said };
}

/**
 * What of a file did not come in; a long list is folded up.
 *
 * @param {string[]} faults
 */
const leftOut = (faults) =>
  element(
    "details",
    { class: "fault", open: faults.length < 6 },
    element("summary", {}, words.leftOut(faults.length)),
    element("ul", {}, ...faults.map((fault) => element("li", {}, fault))),
  );
