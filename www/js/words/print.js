// Sheets to print, and pictures to send.

import { capital, longDay, number } from "./form.js";
import { loadName } from "./terms.js";

export const noLetters = "the page’s letters are not at hand";

// The preview.

/** @type {(title: string, page: number) => string} */
export const preview = (title, page) => `Preview of ${title}, page ${page}`;
export const onePage = "1 page";
/** @type {(page: number, pages: number) => string} */
export const pageOf = (page, pages) => `Page ${page} of ${pages}`;
export const noPreview = "No preview";
export const nothing = "Nothing to print yet";
export const noPair = "choose two ends, A and B, first";
/** @type {() => string} */
export const date = () => longDay(new Date());

// Pictures.

export const noPicture = "the browser made no picture";
export const someKit = "A kit of watercolours";
export const onWheel = "The kit on the hue wheel";
/** @type {(laid: number, a: string, b: string) => string} */
export const ends = (laid, a, b) => [`${a} and ${b}`, `${a} over ${b}`, `${b} over ${a}`][laid];
/**
 * The light and paper a picture is seen in and on; `paper` is nothing for the painter's own.
 *
 * @type {(light: string, isWet: boolean, paper: string | null) => string}
 */
export function caption(light, isWet, paper) {
  const seen = isWet ? `${light}, still wet` : light;
  return `${seen}, ${paper?.toLowerCase() ?? "own"} paper. Predicted: real paint differs. Made with Washpath.`;
}
/** @type {(name: string) => string} */
export const endA = (name) => `A  ${name}`;
/** @type {(name: string) => string} */
export const endB = (name) => `${name}  B`;
/** @type {(load: number, ratio: string) => string} */
export const laid = (load, ratio) => `${capital(loadName(load))}, ${ratio}`;
/** @type {(swatch: { lightness: number, chroma: number, hue: number }, expected: number) => string} */
export const figures = ({ lightness, chroma, hue }, expected) =>
  `L* ${number(lightness)}   C* ${number(chroma)}   h ${number(hue)}°   ± ${number(expected)}`;
/** @type {(name: string, sign: string) => string} */
export const row = (name, sign) => `${capital(name)} ${sign}`;
