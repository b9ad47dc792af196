// A painter's terms that many views use: loads, recipes, lights, and where a path crosses grey.

import { LOADS, NEARLY_GREY } from "../../pkg/facts.js";
import { isolated, number, plural } from "./form.js";

/** @typedef {[paint: number, count: number]} Part */
/** @typedef {{ get(number: number): { name: string } | undefined }} Names what knows paints by their numbers, such as the shelf */

/**
 * The name of the nearest wash.
 *
 * @type {(load: number) => string}
 */
export function loadName(load) {
  /** @type {(stop: [number, string, string]) => number} */
  const far = ([stop]) => Math.abs(Math.log2(stop / load));
  return LOADS.reduce((best, stop) => (far(stop) < far(best) ? stop : best))[1];
}

/** @type {(parts: number) => string} */
export const count = (parts) => plural(parts, { one: `${parts} part`, other: `${parts} parts` });

export const gonePaint = "a paint that is gone";

/** Letters of a path's ends. */
export const ENDS = "AB";

/** What has no name or title. */
export const untitled = "untitled";

/**
 * A paint's name as it stands among other words.
 *
 * @type {(number: number, shelf: Names) => string}
 */
export const nameIn = (number, shelf) => isolated(shelf.get(number)?.name ?? gonePaint);

/**
 * "2 parts Ultramarine blue, 1 part Burnt sienna"; a paint alone by its name.
 *
 * @type {(parts: Part[], shelf: Names) => string}
 */
export function recipe(parts, shelf) {
  if (parts.length === 1) return nameIn(parts[0][0], shelf);
  return parts.map(([paint, parts]) => `${count(parts)} ${nameIn(paint, shelf)}`).join(", ");
}

/**
 * One part of a paint in so many of a mix.
 *
 * @type {(rest: string, paint: string, whole: number) => string}
 */
export const touch = (rest, paint, whole) => `${rest} + a touch of ${paint} (1 in ${whole})`;

/**
 * A recipe, how thickly it is laid, and what colour that is.
 *
 * @type {(recipe: string, load: number, colour: string) => string}
 */
export const laid = (recipe, load, colour) => `${recipe}, ${loadName(load)}: ${colour}`;

/**
 * "bluish" of "blue", "reddish orange" of "red orange".
 *
 * @type {(hue: string) => string}
 */
const tinged = (hue) =>
  hue
    .replace(/^red/, "reddish")
    .replace(/^(yellow|green)/, "$1ish")
    .replace(/^blue/, "bluish");

/**
 * "under a tungsten lamp", "in warm daylight".
 *
 * @type {(light: string) => string}
 */
export const inLight = (light) =>
  light.endsWith("lamp") ? `under ${/^[AL]/.test(light) ? "an" : "a"} ${light}` : `in ${light}`;

/**
 * What the crossing is, as one plain sentence.
 *
 * @type {(crossing: { kind: string, lean: string, mix: any }, names: string[]) => string}
 */
export function crossingSentence({ kind, lean, mix }, [first, second]) {
  const [a, b] = mix.parts;
  const value = `L*\u00a0${number(mix.swatch.lightness)}`;
  switch (kind) {
    case "pure":
      return `Reaches a pure grey at ${a}:${b} (${value}).`;
    case "near":
      return `Almost grey at ${a}:${b} (${value}), leaning ${lean}.`;
    case "dull":
      if (mix.swatch.chroma <= NEARLY_GREY)
        return `Comes close to grey at ${a}:${b} (${value}), leaning ${lean} (C*\u00a0${number(mix.swatch.chroma)}).`;
      return `Never reaches grey. Dullest at ${a}:${b}, still ${tinged(lean)} (C*\u00a0${number(mix.swatch.chroma)}).`;
    default:
      return `No mix of these is greyer than ${mix.share < 0.5 ? first : second} alone.`;
  }
}

/**
 * A kit was taken in hand, and the one before waits.
 *
 * @type {(name: string, before: string) => string}
 */
export const nowYours = (name, before) => `“${name}” is your kit now. “${before}” is kept in the list above the tin.`;
