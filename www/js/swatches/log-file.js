// Records from a file: chosen, read by the worker, asked about where a date could be two days, and added to the log.

import { MOST_RECORDS } from "../../pkg/facts.js";
import { button, element, say } from "../page/dom.js";
import { readText } from "../page/text-file.js";
import { addRecords } from "../state/records.js";

/** The field that a file is chosen with, as `nodes`, and what is `said` of it. */
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

  async function attempt(act) {
    try {
      await act();
    } catch (error) {
      said.replaceChildren(
        element("p", { class: "fault" }, `This file could not be read: ${error.message}. The log is as it was.`),
      );
    }
  }

  /** Adds the records of a file `{text, said, dayFirst}`. */
  async function take(file) {
    const { text, dayFirst } = file;
    const found = await ask("readLog", { text, dayFirst });
    if (found.unsure) return askOrder(file, found.unsure);
    const { patch, added, known, left: beyond } = addRecords(store.get(), found.found);
    if (!store.set(patch)) return;
    const left = [...found.faults, ...(beyond ? [`${beyond} records beyond ${MOST_RECORDS}`] : [])];
    const counted = `${added} ${added === 1 ? "record" : "records"} came in`;
    said.replaceChildren(
      element(
        "p",
        { class: "quiet" },
        `${counted}${known ? `, ${known} known before` : ""}.${file.said ? ` ${file.said}` : ""}`,
      ),
      left.length ? leftOut(left) : "",
    );
    say(`${counted}, ${left.length} left out`);
  }

  /** Dates like 4/10/2024 are of two days: where the file does not tell, the painter does, once for all of it. */
  function askOrder(file, { written, dayFirst, monthFirst }) {
    const way = (words, day, first) =>
      button(`${words}: ${longDay(day)}`, () => attempt(() => take({ ...file, dayFirst: first })));
    const day = way("Day first", dayFirst, true);
    said.replaceChildren(
      element("p", {}, `A date in this file is “${written}”. Which day is that?`),
      element(
        "div",
        { class: "verbs" },
        day,
        way("Month first", monthFirst, false),
        button("Cancel", () => said.replaceChildren()),
      ),
    );
    day.focus();
    say(`Which day is ${written}?`);
  }

  return { nodes: [element("label", { for: "log-file", class: "button" }, "Import"), field], said };
}

/** What of a file did not come in; a long list is folded up. */
const leftOut = (faults) =>
  element(
    "details",
    { class: "fault", open: faults.length < 6 },
    element("summary", {}, `${faults.length} left out`),
    element("ul", {}, ...faults.map((fault) => element("li", {}, fault))),
  );

/** "4 October 2024" of an ISO date. */
const longDay = (day) => new Date(`${day}T00:00Z`).toLocaleDateString("en-GB", { dateStyle: "long", timeZone: "UTC" });
