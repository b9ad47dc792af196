// Numbers in a painter's words.

import { GRANULATION, LOADS, STAINING, STRONG, TRANSPARENCY, TRANSPARENT, WEAK } from "../../pkg/facts.js";

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

/** @type {(text: string) => string} */
export const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);

/** @type {(parts: number) => string} */
export const count = (parts) => `${parts} ${parts === 1 ? "part" : "parts"}`;

/** Letters that are written from right to left: Hebrew, Arabic and their kin. */
const LEFTWARD = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1eeff}]/u;

/**
 * A name as it stands among other words: one written from right to left does not turn those round.
 *
 * @type {(name: string) => string}
 */
export const isolated = (name) => (LEFTWARD.test(name) ? `\u2068${name}\u2069` : name);

/**
 * A paint's name as it stands among other words.
 *
 * @type {(number: number, shelf: Names) => string}
 */
export const nameIn = (number, shelf) => isolated(shelf.get(number)?.name ?? "a paint that is gone");

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
 * A part of 1 in percent, which no line break parts from its sign.
 *
 * @type {(part: number, digits?: number) => string}
 */
export const percent = (part, digits = 0) => `${(100 * part).toFixed(digits)}\u00a0%`;

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
  const value = `L*\u00a0${Math.round(mix.swatch.lightness)}`;
  switch (kind) {
    case "pure":
      return `Reaches a pure grey at ${a}:${b} (${value}).`;
    case "near":
      return `Almost grey at ${a}:${b} (${value}), leaning ${lean}.`;
    case "dull":
      return `Never reaches grey. Dullest at ${a}:${b}, still ${tinged(lean)} (C*\u00a0${Math.round(mix.swatch.chroma)}).`;
    default:
      return `No mix of these is greyer than ${mix.share < 0.5 ? first : second} alone.`;
  }
}

const GRADES = { transparency: TRANSPARENCY, staining: STAINING, granulation: GRANULATION };

/**
 * A rating of 0 to 4 as a word, or nothing where it was not measured.
 *
 * @type {(property: "transparency" | "staining" | "granulation", rating: number | null | undefined) => string | null}
 */
export const grade = (property, rating) =>
  rating == null
    ? null
    : GRADES[property][property === "transparency" && rating >= TRANSPARENT ? 4 : Math.min(Math.round(rating), 4)];

/**
 * How much a volume of paint does in a mix, where it is far from the average paint's.
 *
 * @type {(strength: number) => string | null}
 */
export function strengthOf(strength) {
  if (strength >= STRONG) return "strong in mixes";
  return strength <= WEAK ? "weak in mixes" : null;
}
