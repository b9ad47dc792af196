// The painter's own paints.

import { number } from "./form.js";

export const title = "My paints";
export const explained =
  "A paint the shelf lacks, from two swatches of it, a measurement, or as the mixture it is. It goes along with links of kits that hold it.";
export const fromSwatches = "New from swatches";
export const fromMix = "New from the mix at hand";
export const noMix = "Choose two paints first: their mix becomes the paint.";
export const notBuiltIn = "A mixture is made of paints of the built-in shelf.";
export const onePaint = "The mix at hand is one paint alone. Move the ratio off its end to make a mixture of it.";
/** @type {(name: string) => string} */
export const doubled = (name) => `A copy of ${name} is on your shelf`;
/** @type {(name: string) => string} */
export const deleted = (name) => `“${name}” is deleted, and taken out of kits and records.`;
export const edit = "Edit";
export const duplicate = "Duplicate";
export const remove = "Delete";
/** @type {(verb: string, name: string) => string} */
export const verbOf = (verb, name) => `${verb}: ${name}`;

// The editor.

/** @type {[string, string[]][]} */
export const ratings = [
  ["Transparency", ["not rated", "0 opaque", "1", "2", "3", "4 transparent"]],
  ["Staining", ["not rated", "0 lifts", "1", "2", "3", "4 stains"]],
  ["Granulation", ["not rated", "0 smooth", "1", "2", "3", "4 granulates"]],
];
export const masstone = "Masstone, dry";
export const wash = "A wash of it, dry";
export const howThin = "How thin that wash is";
/** @type {(name: string) => string} */
export const editTitle = (name) => `Edit ${name}`;
export const mixtureTitle = "A mixture as a paint";
export const swatchesTitle = "A paint from swatches";
/** @type {(recipe: string) => string} */
export const mixture = (recipe) => `${recipe}, filled as one.`;
export const swatches =
  "Paint it as heavily as you ever would, and as a thin wash, on the paper of this kit, and let both dry. The masstone alone is enough, but with the wash the prediction is much better.";
export const swapped = "The masstone is lighter than the wash. Are they swapped? ";
export const swap = "Swap them";
export const areRight = "They are right";
export const working = "Working it out …";
/** @type {(name: string) => string} */
export const added = (name) => `${name} is on your shelf`;
/** @type {(name: string, given: number, predicted: number) => string} */
export const noFilm = (name, given, predicted) =>
  `${name} is on your shelf, but no dry film of paint shows the masstone you gave (L*\u00a0${number(given)}): it is predicted as L*\u00a0${number(predicted)}. A wet swatch, a photo taken too dark, or a shiny spot looks like that.`;
