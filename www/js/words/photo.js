// A photo, and studies of it.

import { number } from "./form.js";

export const title = "Photo";
export const invited = "Open one from disk or camera, or paste it. It stays in this browser.";
export const opened =
  "Click a spot to match its colour. If the light was coloured, first show what is white paper or mid grey.";
export const open = "Open a photo";
export const opening = "Opening …";
export const enlarge = "Enlarge";
export const asItWas = "As it was";
export const putAway = "Put away";
/** @type {(fault: string) => string} */
export const earlierStays = (fault) => `${fault} The earlier photo is still here.`;
export const balanced = "Balanced. Click a spot to match its colour.";
export const balanceSet = "White balance set";
export const balanceBack = "White balance taken back";
export const click = "What a click does";
export const modes = { sample: "Sample a colour", white: "This is white paper", grey: "This is mid grey" };
export const size = "Size of the sample";
export const canvas = "The photo: click to sample a colour";

// Why a file is no photo.

export const emptyFile = "This file is empty.";
/** @type {(most: number) => string} */
export const tooLarge = (most) => `This file is larger than ${number(most / 1e6)} MB.`;
/** @type {(pixels: number, most: number) => string} */
export const tooManyPixels = (pixels, most) =>
  `This photo has ${number(pixels / 1e6)} megapixels, and at most ${number(most / 1e6)} can be opened.`;
export const noRoom = "The browser has no room for this photo.";
export const noImage = "The browser cannot read this file as an image.";

// Value studies.

export const study = "Value study";
export const steps = "Steps of value";
export const allValues = "all values";
/** @type {(values: number) => string} */
export const values = (values) => `${values} values`;
export const repaint = "Repaint with this kit";
export const emptyTin = "The tin is empty: pack paints first.";
export const repainting = "Repainting …";
/** @type {(reason: string) => string} */
export const notRepainted = (reason) => `It could not be repainted: ${reason}.`;
export const original = "The photo";
export const withKit = "With this kit";
export const inGreys = "In greys";
