// What to paint next: the swatches that teach most about a kit.

/** @import { Step } from "../state/answers.js" */
/** @import { Shelf, State, Studio } from "../state/types.js" */

import { button, element } from "../page/dom.js";
import { shortName } from "../state/end.js";
import { capital } from "../words/form.js";
import * as words from "../words/lesson.js";

/**
 * The nodes of a plan; `setUp(step)` brings the mix of a step to hand.
 *
 * @param {State} state
 * @param {Shelf} shelf
 * @param {(step: Step) => void} setUp
 */
export function planNodes({ kit, lesson, studio }, shelf, setUp) {
  if (kit.pans.length === 0) return [element("p", { class: "quiet" }, words.noKit)];
  if (!lesson) return [element("p", { class: "quiet" }, words.working)];
  const steps = lesson.plan.filter(({ parts }) => parts.every(([paint]) => shelf.get(paint)));
  return [
    element("p", { class: "quiet" }, words.expectation(lesson)),
    element(
      "ol",
      { class: "rows plan" },
      ...steps.map((step, i) => {
        const before = i === 0 ? lesson.now : steps[i - 1].after;
        const take = button("", () => setUp(step), { class: "take", "data-focus": `plan-${i}` });
        take.append(...stepNodes(step, before, shelf, studio));
        return element("li", {}, take);
      }),
    ),
  ];
}

/**
 * @param {Step} step
 * @param {number} before
 * @param {Shelf} shelf
 * @param {Studio} studio
 */
const stepNodes = ({ parts, load, after }, before, shelf, studio) => [
  element("span", { class: "chip", style: { "--wash": studio.swatch(parts, load).css } }),
  element(
    "span",
    { class: "name" },
    capital(shortName(parts, shelf)),
    element("span", { class: "traits" }, words.becomes(load, before, after)),
  ),
];
