// What to paint next: the swatches that teach most about a kit.

import { button, element } from "../page/dom.js";
import { capital, loadName } from "../page/words.js";
import { shortName } from "../state/end.js";

/** The nodes of a plan; `setUp(step)` brings the mix of a step to hand. */
export function planNodes({ kit, lesson, studio }, shelf, setUp) {
  if (kit.pans.length === 0)
    return [element("p", { class: "quiet" }, "Pack a kit to see which swatches would teach most about it.")];
  if (!lesson) return [element("p", { class: "quiet" }, "Working it out …")];
  const steps = lesson.plan.filter(({ parts }) => parts.every(([paint]) => shelf.get(paint)));
  return [
    element(
      "p",
      { class: "quiet" },
      `${expectation(lesson)} Painting and recording these lowers that most; begin at the top.`,
    ),
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

/** How far off mixes may be, those of recorded paints apart from the rest. */
const expectation = ({ now, recorded }) =>
  recorded == null
    ? `Mixes of this kit are expected to be off by ${now.toFixed(1)} (CIEDE2000, half of them by less).`
    : `Mixes of the paints you have recorded are expected to be off by ${recorded.toFixed(1)}, all mixes of this kit by ${now.toFixed(1)} (CIEDE2000, half of them by less).`;

const stepNodes = ({ parts, load, after }, before, shelf, studio) => [
  element("span", { class: "chip", style: { "--wash": studio.swatch(parts, load).css } }),
  element(
    "span",
    { class: "name" },
    capital(shortName(parts, shelf)),
    element("span", { class: "traits" }, `${loadName(load)} · ${before.toFixed(2)} becomes ${after.toFixed(2)}`),
  ),
];
