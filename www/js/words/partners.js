// Partners of a paint.

import { number } from "./form.js";
import { ENDS } from "./terms.js";

/** @typedef {{ lightness: number, chroma: number }} Swatch */

export const title = "Partners";
export const titleOf = "Partners of";
export const empty = "Choose a paint to see what neutralises it and what shades it.";
export const whose = "Whose partners";
/** @type {(end: number, name: string) => string} */
export const side = (end, name) => `${ENDS[end]}: ${name}`;
export const kind = "Kind of partner";
export const inKit = "In the kit";
export const noneInKit = "None in the kit.";
export const onShelf = "On the shelf";
export const noneOnShelf = "None on the shelf.";
export const fewer = "Fewer";
/** @type {(count: number) => string} */
export const all = (count) => `All ${count}`;

export const kinds = { neutral: "Neutral", shading: "Shading" };
export const explained = {
  neutral:
    "These grey it, the greyest first. They need not stand opposite on the wheel: two paints neutralise when one absorbs the light that the other reflects, band by band, and paints of one colour can differ in that.",
  shading: "These darken it most while it keeps its hue. Greying, in contrast, takes the hue away.",
};

/**
 * At what ratio a partner neutralises, and what the mix is like.
 *
 * @type {(ratio: string, partner: { swatch: Swatch, lean: string, warmth: string, dark: number }) => string}
 */
export function neutralises(ratio, { swatch, lean, warmth, dark }) {
  const grey = `greyest at ${ratio}: ${warmth}, leaning ${lean}, L*\u00a0${number(swatch.lightness)}, C*\u00a0${number(swatch.chroma)}`;
  return number(dark) === number(swatch.lightness) ? grey : `${grey}; darkest L*\u00a0${number(dark)}`;
}

/**
 * At what ratio a partner shades, and what the mix is like.
 *
 * @type {(ratio: string, partner: { swatch: Swatch, drop: number, drift: number }) => string}
 */
export function shades(ratio, { swatch, drop, drift }) {
  const darker = `${ratio} · L* ${number(swatch.lightness)}, ${number(drop)} darker`;
  return drift < 0.5 ? `${darker}, hue unchanged` : `${darker}, hue turns ${number(drift)}°`;
}
