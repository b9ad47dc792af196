// Finding paints on the shelf: by words, by what they are like, in an order. Pure: no page.

/** @import { orders, traits } from "../words/shelf.js" */
/** @import { Swatch } from "../state/answers.js" */
/** @import { Paint } from "../state/types.js" */

import { GRANULATES, LIFTS, LIGHTFAST, OPAQUE, SMOOTH, TRANSPARENT } from "../../pkg/facts.js";

/**
 * Letters and digits only, without accents, in lower case.
 *
 * @param {string} text
 */
export const plain = (text) =>
  text
    .normalize("NFD")
    .replace(/[^\p{L}\p{N} ]/gu, "")
    .toLowerCase();

/**
 * Words of every name a paint goes by.
 *
 * @param {Paint} paint
 */
export const namesOf = (paint) =>
  plain([paint.code, paint.name, paint.hue, paint.family, ...paint.aliases].join(" "))
    .split(" ")
    .filter(Boolean);

/**
 * Slips a word may have: none in a short one or a code, then one, then two.
 *
 * @param {string} word
 */
const slips = (word) => (word.length < 5 || /\d/.test(word) ? 0 : word.length < 8 ? 1 : 2);

/**
 * Whether each word typed begins, or nearly is, one of a paint's names.
 *
 * @param {string[]} names
 * @param {string} typed
 */
export function fits(names, typed) {
  return plain(typed)
    .split(" ")
    .filter(Boolean)
    .every((word) => names.some((name) => name.includes(word) || near(word, name, slips(word))));
}

/**
 * How near a paint's name or code is to what was typed: 0 the same, more for a longer name that begins so, the most for others.
 *
 * @param {Paint} paint
 * @param {string} typed
 */
export function farness({ name, code }, typed) {
  const wanted = plain(typed).trim();
  if (wanted === "" || plain(code) === wanted) return 0;
  const known = plain(name);
  return known.startsWith(wanted) ? known.length - wanted.length : Number.MAX_VALUE;
}

/**
 * Whether two words differ by at most so many letters added, left out, changed or swapped (Damerau 1964).
 *
 * @param {string} word
 * @param {string} name
 * @param {number} most
 */
function near(word, name, most) {
  if (most === 0 || Math.abs(word.length - name.length) > most) return false;
  /** @type {number[]} */
  let before = [];
  let last = Array.from({ length: name.length + 1 }, (_, i) => i);
  for (let i = 1; i <= word.length; i++) {
    const row = [i];
    for (let j = 1; j <= name.length; j++) {
      const same = word[i - 1] === name[j - 1] ? 0 : 1;
      row[j] = Math.min(last[j] + 1, row[j - 1] + 1, last[j - 1] + same);
      const swapped = i > 1 && j > 1 && word[i - 1] === name[j - 2] && word[i - 2] === name[j - 1];
      if (swapped) row[j] = Math.min(row[j], before[j - 2] + 1);
    }
    [before, last] = [last, row];
  }
  return last[name.length] <= most;
}

/** @type {(rating: number | null | undefined, least: number) => boolean} */
const atLeast = (rating, least) => rating != null && rating >= least;
/** @type {(rating: number | null | undefined, bound: number) => boolean} */
const below = (rating, bound) => rating != null && rating < bound;

/** @typedef {Paint & { owned: boolean }} Asked */
/** @typedef {Paint & { masstone: Swatch }} Ordered */

/**
 * What paints can be asked to be; a property nobody measured fails the question.
 *
 * @type {{ key: keyof typeof traits, test: (paint: Asked) => boolean }[]}
 */
export const TRAITS = [
  { key: "transparent", test: (paint) => atLeast(paint.transparency, TRANSPARENT) },
  { key: "opaque", test: (paint) => below(paint.transparency, OPAQUE) },
  { key: "granulating", test: (paint) => atLeast(paint.granulation, GRANULATES) },
  { key: "smooth", test: (paint) => below(paint.granulation, SMOOTH) },
  { key: "lifting", test: (paint) => below(paint.staining, LIFTS) },
  { key: "lightfast", test: (paint) => atLeast(paint.lightfastTint, LIGHTFAST) },
  { key: "mild", test: (paint) => paint.caution === "" },
  { key: "owned", test: (paint) => paint.owned },
  { key: "measured", test: (paint) => paint.tier !== "estimated" },
];

/**
 * Whether a paint has every trait asked for.
 *
 * @param {Asked} paint
 * @param {Set<string>} keys
 */
export const has = (paint, keys) => TRAITS.every(({ key, test }) => !keys.has(key) || test(paint));

/** @param {"transparency" | "granulation" | "lightfastTint"} property */
const most = (property) => (/** @type {Paint} */ a, /** @type {Paint} */ b) =>
  (b[property] ?? -1) - (a[property] ?? -1);

/**
 * Codes in the order of the Colour Index: letters first, then the number.
 *
 * @param {Paint} a
 * @param {Paint} b
 */
function byCode(a, b) {
  const [first, second] = [a, b].map(({ code }) => code.match(/^(\D+)(\d+)/) ?? [code, code, "0"]);
  return first[1].localeCompare(second[1]) || Number(first[2]) - Number(second[2]) || a.code.localeCompare(b.code);
}

/**
 * Orders of the shelf. `masstone` of each paint is its swatch at load 1.
 *
 * @type {{ key: keyof typeof orders, compare: (a: Ordered, b: Ordered) => number }[]}
 */
export const ORDERS = [
  { key: "hue", compare: (a, b) => fromRed(a.masstone) - fromRed(b.masstone) },
  { key: "name", compare: (a, b) => a.name.localeCompare(b.name) },
  { key: "code", compare: byCode },
  { key: "value", compare: (a, b) => a.masstone.lightness - b.masstone.lightness },
  { key: "chroma", compare: (a, b) => b.masstone.chroma - a.masstone.chroma },
  { key: "transparency", compare: most("transparency") },
  { key: "granulation", compare: most("granulation") },
  { key: "lightfast", compare: most("lightfastTint") },
];

/**
 * Hue from violet red on; near-neutrals last, dark to light.
 *
 * @param {Swatch} swatch
 */
const fromRed = ({ hue, chroma, lightness }) => (chroma < 6 ? 400 + lightness : (hue + 20) % 360);
