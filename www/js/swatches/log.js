// The log: every record as a table; out to a file and in from one.

import { button, byId, element, notice, say, UNDO } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { save } from "../page/save.js";
import { readText } from "../page/text-file.js";
import { loadName } from "../page/words.js";
import { pathOf, shortName } from "../state/end.js";
import { addRecords, MOST_RECORDS } from "../state/records.js";
import { labOf } from "./seen-field.js";

/** Shows the log. `toMix` shows the mix. */
export function attachLog(store, shelf, core, ask, toMix) {
  const frame = byId("log");
  const file = element("input", {
    type: "file",
    id: "log-file",
    class: "unseen",
    accept: ".csv,.tsv,.txt,text/csv",
    onchange: () => {
      const [chosen] = file.files;
      // So that the same can be chosen again.
      file.value = "";
      if (chosen) open(chosen);
    },
  });
  const faults = element("div", { role: "status" });

  function show(state) {
    const { records } = state;
    remake(
      frame,
      element(
        "div",
        { class: "title-row" },
        element("h3", {}, "Log"),
        element(
          "div",
          { class: "verbs" },
          element("label", { for: "log-file", class: "button" }, "Import"),
          file,
          button("Export", write, { disabled: records.length === 0, "data-focus": "export" }),
        ),
      ),
      faults,
      records.length === 0
        ? element(
            "p",
            { class: "quiet" },
            "Records stand here as a table, newest first. They can be kept as a CSV file.",
          )
        : table(state),
    );
  }

  function table({ records, lesson, studio }) {
    const judged = lesson?.records.length === records.length ? lesson.records : [];
    const rows = records.map((record, i) => row(record, i, judged[i], studio)).reverse();
    return element(
      "div",
      { class: "scroll" },
      element(
        "table",
        { class: "log" },
        element(
          "thead",
          {},
          element(
            "tr",
            {},
            ...["Painted", "Seen", "Mix", "Off by", ""].map((name) =>
              element("th", { scope: "col" }, name || element("span", { class: "unseen" }, "Delete")),
            ),
          ),
        ),
        element("tbody", {}, ...rows),
      ),
    );
  }

  function row(record, i, judged, studio) {
    const known = record.parts.every(([paint]) => shelf.get(paint));
    const lab = labOf(record.seen, core);
    const name = known ? shortName(record.parts, shelf) : "a paint that is gone";
    const open = button(
      "",
      () => {
        store.set({ ...pathOf(record.parts), load: Math.min(record.load, 1), laid: 0 });
        toMix();
      },
      { class: "take", disabled: !known, "data-focus": `record-${i}` },
    );
    open.append(
      element(
        "span",
        { class: "name" },
        name,
        element(
          "span",
          { class: "traits" },
          [loadName(record.load), record.date, record.note].filter(Boolean).join(" · "),
        ),
      ),
    );
    const chip = (css) => element("span", { class: css ? "chip" : "chip blank", style: css ? { "--wash": css } : {} });
    return element(
      "tr",
      {},
      element("td", {}, chip(known && studio.swatch(record.parts, record.load).css)),
      element("td", {}, chip(studio.colour(Float32Array.from(lab)).css)),
      element("th", { scope: "row" }, open),
      element(
        "td",
        {},
        judged ? judged.without.toFixed(0) : "",
        judged?.believed < 0.3
          ? element("b", { class: "tag", title: "It does not fit the other records and counts little." }, "doubted")
          : "",
      ),
      element(
        "td",
        {},
        button("×", () => remove(i), { class: "drop", "aria-label": `Delete the record of ${name}`, title: "Delete" }),
      ),
    );
  }

  function remove(i) {
    store.set({ records: store.get().records.filter((_, j) => j !== i) });
    notice("The record is deleted.", { actions: [UNDO], seconds: 8 });
  }

  async function write() {
    try {
      // A byte order mark, so that a spreadsheet reads letters beyond ASCII.
      save(`\ufeff${await ask("writeLog", { records: store.get().records })}`, "swatches.csv", "text/csv");
    } catch (error) {
      notice(`The log could not be written: ${error.message}.`, { seconds: 8 });
    }
  }

  const open = async (chosen) => attempt(async () => take(await readText(chosen)));

  async function attempt(act) {
    try {
      await act();
    } catch (error) {
      faults.replaceChildren(
        element("p", { class: "fault" }, `This file could not be read: ${error.message}. The log is as it was.`),
      );
    }
  }

  /** Dates like 4/10/2024 are of two days: where the file does not tell, the painter does, once for all of it. */
  function askOrder(file, { written, dayFirst, monthFirst }) {
    const way = (words, day, first) =>
      button(`${words}: ${longDay(day)}`, () => attempt(() => take({ ...file, dayFirst: first })));
    const day = way("Day first", dayFirst, true);
    faults.replaceChildren(
      element("p", {}, `A date in this file is “${written}”. Which day is that?`),
      element(
        "div",
        { class: "verbs" },
        day,
        way("Month first", monthFirst, false),
        button("Cancel", () => faults.replaceChildren()),
      ),
    );
    day.focus();
    say(`Which day is ${written}?`);
  }

  /** Adds the records of a file `{text, said, dayFirst}`. */
  async function take({ text, said, dayFirst }) {
    const found = await ask("readLog", { text, dayFirst });
    if (found.unsure) return askOrder({ text, said }, found.unsure);
    const { patch, added, known, left: beyond } = addRecords(store.get(), found.found);
    if (!store.set(patch)) return;
    const left = [...found.faults, ...(beyond ? [`${beyond} records beyond ${MOST_RECORDS}`] : [])];
    const counted = `${added} ${added === 1 ? "record" : "records"}`;
    faults.replaceChildren(
      element(
        "p",
        { class: "quiet" },
        `${counted} came in${known ? `, ${known} known before` : ""}.${said ? ` ${said}` : ""}`,
      ),
      left.length
        ? element(
            "details",
            { class: "fault", open: left.length < 6 },
            element("summary", {}, `${left.length} left out`),
            element("ul", {}, ...left.map((fault) => element("li", {}, fault))),
          )
        : "",
    );
    say(`${counted} came in, ${left.length} left out`);
  }

  store.subscribe((state, changed) => ["records", "lesson", "studio"].some((key) => changed.has(key)) && show(state));
  show(store.get());
}

/** "4 October 2024" of an ISO date. */
const longDay = (day) => new Date(`${day}T00:00Z`).toLocaleDateString("en-GB", { dateStyle: "long", timeZone: "UTC" });
