// What was learned, as a painter reads it: predictions before and after, and each paint that changed.

/** @import { Lesson } from "../state/answers.js" */
/** @import { Paint, Shelf, State, Studio } from "../state/types.js" */

/** @typedef {(number: number, isHeld: boolean) => void} Hold */

import { dabOf, paintLine } from "../page/dab.js";
import { button, element } from "../page/dom.js";
import * as words from "../words/lesson.js";

/** Below this much belief in a record it is said to be doubted. */
export const DOUBTED = 0.3;

/** What is told of each record. */
const KEYS = /** @type {const} */ (["before", "after", "without"]);

/**
 * The nodes of a lesson. `hold(paint, held)` resets a paint or lets it learn again, `learnOn(on)` predicts with what was learned or not.
 *
 * @param {State} state
 * @param {Shelf} shelf
 * @param {{ hold: Hold, learnOn: (isOn: boolean) => void }} what
 */
export function taughtNodes({ records, held, lesson, learning, studio }, shelf, { hold, learnOn }) {
  if (records.length === 0) return [quiet(words.noRecords)];
  if (!lesson || lesson.records.length !== records.length) return [quiet(words.learning)];
  const [before, after, without] = KEYS.map((key) => median(lesson.records.map((record) => record[key])));
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
    element("label", { class: "tick" }, tick, words.predict),
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

/** @param {string} text */
const quiet = (text) => element("p", { class: "quiet" }, text);

/**
 * How far off predictions are, as a table.
 *
 * @param {number} before
 * @param {number} without
 * @param {number} after
 */
const figures = (before, without, after) =>
  element(
    "table",
    { class: "figures" },
    element("thead", {}, element("tr", {}, element("td", {}), element("th", { scope: "col" }, words.offBy))),
    element(
      "tbody",
      {},
      figure(words.uncorrected, before),
      figure(words.unrecorded, without, words.unrecordedTitle),
      figure(words.corrected, after, words.correctedTitle),
    ),
  );

/**
 * @param {string} name
 * @param {number} value
 * @param {string} [title]
 */
const figure = (name, value, title) =>
  element("tr", {}, element("th", { scope: "row", title }, name), element("td", {}, words.figure(value)));

/**
 * @param {number} count
 * @param {number} before
 * @param {number} without
 */
function verdict(count, before, without) {
  if (count < 4) return words.tooFew;
  return without < before - 0.2 ? words.better : words.notBetter;
}

/** @param {number} count */
const doubts = (count) => (count === 0 ? "" : quiet(words.doubted(count)));

/**
 * A paint that changed, with a way back.
 *
 * @param {Lesson["learned"][number]} lesson
 * @param {Shelf} shelf
 * @param {Studio} studio
 * @param {Hold} hold
 */
function learnedRow({ number, strength, was, left }, shelf, studio, hold) {
  const times = strength / was;
  const gone = 1 - left[0];
  const changed = words.changed(Math.abs(Math.log(times)) < 0.05 ? null : times, gone >= 0.005 ? gone : null);
  const paint = shelf.paint(number);
  return row(paint, studio, changed, words.reset, words.resetIt(paint.name), () => hold(number, true));
}

/**
 * A paint that was reset, with a way to learn again.
 *
 * @param {number} number
 * @param {Shelf} shelf
 * @param {Studio} studio
 * @param {Hold} hold
 */
function heldRow(number, shelf, studio, hold) {
  const paint = shelf.paint(number);
  return row(paint, studio, words.held, words.learn, words.learnIt(paint.name), () => hold(number, false));
}

/**
 * @param {Paint} paint
 * @param {Studio} studio
 * @param {string} said
 * @param {string} verb
 * @param {string} spoken
 * @param {() => void} act
 */
const row = ({ number, name, code }, studio, said, verb, spoken, act) =>
  element(
    "li",
    {},
    dabOf(studio, number, 30),
    paintLine({ name, code }, said),
    button(verb, act, { class: "pack", "aria-label": spoken, "data-focus": `held-${number}` }),
  );

/** @param {number[]} values */
function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.length % 2
    ? sorted[(sorted.length - 1) / 2]
    : (sorted[sorted.length / 2 - 1] + sorted[sorted.length / 2]) / 2;
}
