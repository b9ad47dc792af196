// A kit that the core chose: how good it is, why each paint is in it, and how it lies in the tin. No state.

/** @import { Choice, Match, Reason } from "../state/answers.js" */
/** @import { Colour, KitContent, Paint, Place, Studio } from "../state/types.js" */

import { REACHED } from "../../pkg/facts.js";
import { dabOf, paintLine } from "../page/dab.js";
import { element } from "../page/dom.js";
import { emptyKit } from "../state/kit.js";
import * as words from "../words/choosing.js";

/**
 * What is reached of 100, from the part that is missed.
 *
 * @param {number} missed
 */
export const scoreOf = (missed) => 100 * (1 - missed);

/**
 * How much of a place's colours their nearest mixes reach, as a part of 1.
 *
 * @param {Colour[]} colours
 * @param {Match[]} nearest
 */
export function reachedOf(colours, nearest) {
  /** @param {Colour[]} some */
  const sum = (some) => some.reduce((sum, { weight }) => sum + weight, 0);
  return sum(colours.filter((_, i) => nearest[i].error <= REACHED)) / sum(colours);
}

/**
 * How much of a place, or of real surface colours, the chosen kit reaches, and what is proven of it.
 *
 * @param {Choice} choice
 * @param {number} reached
 * @param {Place | null} place
 */
export const verdict = ({ cost, bound, exact }, reached, place) =>
  element(
    "p",
    {},
    element("b", {}, words.reaches(reached, place)),
    exact ? words.nearest : words.nearlyBest(100 * (cost - bound)),
  );

/**
 * A paint of the chosen kit and why it is in it.
 *
 * @param {Reason} reason
 * @param {Paint} paint
 * @param {Studio} studio
 */
export function reasonRow(reason, paint, studio) {
  return element("li", {}, dabOf(studio, paint.number, 30), paintLine(paint, words.reason(paint.hue, whyOf(reason))));
}

/** @param {Reason} reason */
function whyOf({ lost, required }) {
  if (required) return words.asked;
  if (lost < 0.0005) return words.byRule;
  return words.without(100 * lost);
}

/**
 * A kit of the chosen paints for the same paper and, if they have room there, the same tin as `kit`.
 *
 * @param {number[]} chosen
 * @param {KitContent} kit
 * @param {Place | null} place
 * @param {Studio} studio
 */
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

/**
 * Pans of so many paints: one each, and two side by side where the tin has no more room.
 *
 * @param {number[]} paints
 * @param {number} capacity
 */
function pansOf(paints, capacity) {
  const halves = Math.max(0, paints.length - capacity);
  const whole = paints.slice(0, paints.length - 2 * halves).map((paint) => [paint]);
  const rest = paints.slice(paints.length - 2 * halves);
  const split = Array.from({ length: halves }, (_, i) => [rest[2 * i], rest[2 * i + 1]]);
  return [...whole, ...split];
}

/**
 * Round the wheel from yellow, so that the tin reads as a palette does.
 *
 * @param {number[]} paints
 * @param {Studio} studio
 */
function byHue(paints, studio) {
  /** @param {number} paint */
  const angle = (paint) => {
    const { hue, chroma, lightness } = studio.swatch([[paint, 1]], 0.5);
    return chroma < 8 ? 400 + lightness : (460 - hue) % 360;
  };
  return [...paints].sort((a, b) => angle(a) - angle(b));
}
