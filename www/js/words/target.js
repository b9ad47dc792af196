// The colour to match, and recipes for it.

import { capital, number } from "./form.js";
import { inLight, loadName } from "./terms.js";

export const title = "Colour to match";
export const mix = "The mix at hand";
export const wheel = "From the wheel";
export const wheelTitle = "Then click the wheel: hue and chroma are taken from there, the value stays";
export const pointing = "Point at the wheel: hue and chroma are taken from there, the value stays";
export const pointed = "Picking ended";
export const empty = "Set a colour, and the kit’s recipes for it appear below.";
export const type = "Type it, or pick";
export const example = "#7a8b5c, lab(50 10 20)";
export const pick = "Pick";
export const pickColour = "Pick a colour";
export const value = "Value L*";
/** @type {(lightness: number) => string} */
export const lightness = (lightness) => number(lightness);
/** @type {(colour: string, lab: number[], isShown: boolean) => string} */
export function is(colour, lab, isShown) {
  const [l, a, b] = lab.map((part) => number(part));
  const said = `${capital(colour)}: L* ${l}, a* ${a}, b* ${b}`;
  return isShown ? said : `${said}. This display shows it duller than it is`;
}

// Recipes.

export const recipes = "Recipes from";
export const sources = { kit: "the kit", owned: "what I own", shelf: "the whole shelf" };
export const noTarget = "Set a colour to match.";
export const noneMarked = "Mark the paints you own on the shelf.";
export const emptyTin = "The tin is empty. Pack a paint first.";
/** @type {(reason: string) => string} */
export const failed = (reason) => `No recipe could be found: ${reason}.`;
/** @type {(shortfall: string) => string} */
export const inexact = (shortfall) => `No recipe is exact, as the colour is ${shortfall}.`;
/** @type {(light: string) => string} */
export const differs = (light) =>
  `The nearest recipe looks the same in daylight, but may differ from your colour ${inLight(light)}.`;
/** @type {(doubt: number) => string} */
export const rank = (doubt) =>
  `Recipes of fewer paints come first, as differences below ${number(doubt)} (CIEDE2000) are smaller than what is known of real paint.`;
/** @type {(load: number, error: number, doubt: number) => string} */
export const off = (load, error, doubt) =>
  `${loadName(load)}, load ${number(load, 2, 1)} · off by ${number(error, 1)} ±\u00a0${number(doubt)}`;
