// What was learned, as a painter reads it: predictions before and after, and each paint that changed.

import { dabOf, paintLine } from "../page/dab.js";
import { button, element } from "../page/dom.js";

/** Below this much belief in a record it is said to be doubted. */
export const DOUBTED = 0.3;

/** The nodes of a lesson. `hold(paint, held)` resets a paint or lets it learn again, `learnOn(on)` predicts with what was learned or not. */
export function taughtNodes({ records, held, lesson, learning, studio }, shelf, { hold, learnOn }) {
  if (records.length === 0)
    return [quiet("Two washes of each paint already bring predictions nearer to yours. Nothing is recorded yet.")];
  if (!lesson || lesson.records.length !== records.length) return [quiet("Learning …")];
  const [before, after, without] = ["before", "after", "without"].map((key) =>
    median(lesson.records.map((record) => record[key])),
  );
  const tick = element("input", {
    type: "checkbox",
    checked: learning,
    "data-focus": "learning",
    onchange: () => learnOn(tick.checked),
  });
  return [
    figures(before, without, after),
    quiet(verdict(records.length, before, without)),
    doubts(lesson.records.filter(({ believed }) => believed < DOUBTED).length),
    element("label", { class: "tick" }, tick, "Predict with what was learned"),
    element(
      "ul",
      { class: "rows" },
      ...lesson.learned
        .filter(({ number }) => shelf.get(number))
        .map((paint) => learnedRow(paint, shelf, studio, hold)),
      ...held.filter((number) => shelf.get(number)).map((number) => heldRow(number, shelf, studio, hold)),
    ),
  ];
}

const quiet = (text) => element("p", { class: "quiet" }, text);

/** How far off predictions are, as a table. */
const figures = (before, without, after) =>
  element(
    "table",
    { class: "figures" },
    element("thead", {}, element("tr", {}, element("td", {}), element("th", { scope: "col" }, "off by"))),
    element(
      "tbody",
      {},
      figure("Shelf paints, uncorrected", before),
      figure(
        "Corrected, for mixes you have not recorded",
        without,
        "Each record is predicted from all the other records, never from itself.",
      ),
      figure(
        "Corrected, for the mixes you recorded",
        after,
        "Each record is predicted from all records, itself included, so this looks better than it is.",
      ),
    ),
  );

const figure = (name, value, title) =>
  element("tr", {}, element("th", { scope: "row", title }, name), element("td", {}, value.toFixed(1)));

function verdict(count, before, without) {
  if (count < 4) return "Medians of CIEDE2000. Too few records to tell whether predictions became better.";
  if (without < before - 0.2)
    return "Medians of CIEDE2000; 1 is just visible. Mixes you have not recorded are predicted better than before.";
  return "Medians of CIEDE2000; 1 is just visible. Mixes you have not recorded are not yet predicted better than before.";
}

function doubts(count) {
  if (count === 0) return "";
  const [some, counts, them] =
    count === 1 ? ["One record does", "counts", "it"] : [`${count} records do`, "count", "them"];
  return quiet(`${some} not fit the others and ${counts} little; the log marks ${them}.`);
}

/** A paint that changed, with a way back. */
function learnedRow({ number, strength, was, left }, shelf, studio, hold) {
  const times = strength / was;
  const gone = Math.round(100 * (1 - left[0]));
  const words = [
    Math.abs(Math.log(times)) < 0.05
      ? "as strong as on the shelf"
      : `${times.toFixed(2)} times as strong as on the shelf`,
    gone > 0 ? `${gone} % more certain` : "no more certain than before",
  ];
  const paint = shelf.get(number);
  return row(paint, studio, words.join(" · "), "Reset", `Reset ${paint.name} to the shelf`, () => hold(number, true));
}

/** A paint that was reset, with a way to learn again. */
function heldRow(number, shelf, studio, hold) {
  const paint = shelf.get(number);
  const spoken = `Let records teach of ${paint.name} again`;
  return row(paint, studio, "reset: as on the shelf", "Learn", spoken, () => hold(number, false));
}

const row = ({ number, name, code }, studio, words, verb, spoken, act) =>
  element(
    "li",
    {},
    dabOf(studio, number, 30),
    paintLine({ name, code }, words),
    button(verb, act, { class: "pack", "aria-label": spoken, "data-focus": `held-${number}` }),
  );

function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.length % 2
    ? sorted[(sorted.length - 1) / 2]
    : (sorted[sorted.length / 2 - 1] + sorted[sorted.length / 2]) / 2;
}
