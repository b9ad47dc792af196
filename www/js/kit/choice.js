// A kit that the core chose: how good it is, why each paint is in it, and how it lies in the tin. No state.

import { dabOf } from "../page/dab.js";
import { element } from "../page/dom.js";
import { emptyKit } from "../state/kit.js";

export const percent = (part) => `${(100 * part).toFixed(1)} %`;

/** How much the chosen kit misses, and what is proven of it. */
export function verdict({ cost, bound, exact }) {
  const sure = exact
    ? "No other kit under these rules does better: all were tried."
    : `No kit under these rules can do better than ${percent(bound)}: proven. So this one is within ${percent(cost - bound)} of the best.`;
  return element("p", {}, element("b", {}, `Misses ${percent(cost)}. `), sure);
}

/** A paint of the chosen kit and why it is in it. */
export function reasonRow(reason, paint, studio) {
  return element(
    "li",
    {},
    dabOf(studio, paint.number, 30),
    element(
      "span",
      { class: "name" },
      `${paint.name} `,
      element("small", {}, paint.code),
      element("span", { class: "traits" }, `${paint.hue} · ${whyOf(reason)}`),
    ),
  );
}

function whyOf({ lost, required }) {
  if (required) return "asked for";
  if (lost < 0.0005) return "fills a rule or the last place; little is lost without it";
  return `without it ${percent(lost)} more is missed`;
}

/** A kit of the chosen paints for the same paper and, if they have room there, the same tin as `kit`. */
export function kitOfChosen(chosen, { capacity, stock, paper }, place, studio) {
  return {
    ...emptyKit(),
    stock,
    paper,
    capacity: Math.max(capacity, Math.ceil(chosen.length / 2)),
    pans: pansOf(byHue(chosen, studio), capacity),
    places: place ? [place] : [],
  };
}

/** Pans of so many paints: one each, and two side by side where the tin has no more room. */
function pansOf(paints, capacity) {
  const halves = Math.max(0, paints.length - capacity);
  const whole = paints.slice(0, paints.length - 2 * halves).map((paint) => [paint]);
  const rest = paints.slice(paints.length - 2 * halves);
  const split = Array.from({ length: halves }, (_, i) => [rest[2 * i], rest[2 * i + 1]]);
  return [...whole, ...split];
}

/** Round the wheel from yellow, so that the tin reads as a palette does. */
function byHue(paints, studio) {
  const angle = (paint) => {
    const { hue, chroma, lightness } = studio.swatch([[paint, 1]], 0.5);
    return chroma < 8 ? 400 + lightness : (460 - hue) % 360;
  };
  return [...paints].sort((a, b) => angle(a) - angle(b));
}
