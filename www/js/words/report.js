// The report on a kit, in a painter's sentences.

import { listed, number, percent, plural } from "./form.js";

export const empty = "Pack some paints to read here what they reach, their darks and greys, and what is missing.";
/** @type {(reason: string) => string} */
export const failed = (reason) => `The report could not be made: ${reason}.`;
export const legend =
  "The bar shows how much of real surface colours the kit reaches, within CIEDE2000 5; its stronger part is matched closely, within 2.";

// What it can do and lacks.

/** @type {(near: number, close: number) => string} */
export const reaches = (near, close) =>
  `Reaches ${percent(near)} of real surface colours, ${percent(close)} so closely that the eye hardly sees a difference.`;
export const noGap = "No hue is missing: all round it reaches nearly as far as the whole shelf.";
/** @type {(hues: string[], reach: number) => string} */
export const gap = (hues, reach) =>
  `Weak in ${listed(hues)}: there it reaches as little as ${percent(reach)} of the chroma of the whole shelf.`;
/** @type {(hue: string, lightness: number) => string} */
export const deepest = (hue, lightness) => `Its deepest dark is ${hue} at L* ${number(lightness)}.`;
/** @type {(hue: string, paint: { name: string, code: string }, lightness: number) => string} */
export const noDark = (hue, { name, code }, lightness) =>
  `It has no dark ${hue}; ${name} ${code} would take it to ${number(lightness)}.`;
/** @type {(hue: string, now: number, paint: { name: string, code: string }, lightness: number) => string} */
export const deeper = (hue, now, { name, code }, lightness) =>
  `Its darkest ${hue} is L* ${number(now)}; ${name} ${code} would take it to ${number(lightness)}.`;
export const noGrey = "No two of its paints mix to a grey.";
/** @type {(pairs: number, lightness: number, warm: number) => string} */
export const greys = (pairs, lightness, warm) =>
  plural(pairs, {
    one: `${pairs} pair makes greys, down to L* ${number(lightness)}: ${warm} warm, ${pairs - warm} cool.`,
    other: `${pairs} pairs make greys, down to L* ${number(lightness)}: ${warm} warm, ${pairs - warm} cool.`,
  });

/**
 * How many paints are like this.
 *
 * @type {(counts: { granulate: number, smooth: number, transparent: number, stain: number, earth: number }) => string}
 */
export function textures({ granulate, smooth, transparent, stain, earth }) {
  const counted = [
    plural(granulate, { one: `${granulate} paint granulates`, other: `${granulate} paints granulate` }),
    plural(smooth, { one: `${smooth} is smooth`, other: `${smooth} are smooth` }),
    plural(transparent, { one: `${transparent} is transparent`, other: `${transparent} are transparent` }),
    plural(stain, { one: `${stain} stains`, other: `${stain} stain` }),
    plural(earth, { one: `${earth} is an earth`, other: `${earth} are earths` }),
  ];
  return `${counted.join(", ")}.`;
}

export const fastnessUnknown = "The lightfastness of its paints is not known.";
/** @type {(name: string, grade: number, unknown: number) => string} */
export const leastLightfast = (name, grade, unknown) =>
  unknown
    ? `Least lightfast: ${name}, Blue Wool ${number(grade, 1, 0)} of 8; ${unknown} not rated.`
    : `Least lightfast: ${name}, Blue Wool ${number(grade, 1, 0)} of 8.`;
/** @type {(names: string[]) => string} */
export const careful = (names) =>
  `Handle with care: ${listed(names)}. See each paint’s caution, its label and safety data sheet.`;
export const careless = "None of its paints calls for more than ordinary care.";
/** @type {(names: string[]) => string} */
export const spare = (names) =>
  plural(names.length, {
    one: `You could leave out ${names[0]}: hardly a colour, no dark and no texture would be lost.`,
    other: `You could leave out any one of ${listed(names)}: hardly a colour, no dark and no texture would be lost.`,
  });
/** @type {(names: string[], error: number) => string} */
export const duplicates = (names, error) =>
  `${listed(names)} are near-duplicates: on average they differ by CIEDE2000\u00a0${number(error, 1)}, alone and mixed.`;

// What each paint does.

export const added =
  "How much of real surface colours each paint adds that the rest of the kit does not reach, and its darks.";
export const couldGo = "could go";
/** @type {(others: number) => string} */
export const greysOthers = (others) =>
  plural(others, { one: `greys ${others} other`, other: `greys ${others} others` });

/**
 * What a paint adds to the others: a part of all colours, closer matches, and the hues of which it makes the darkest.
 *
 * @type {(colours: number, isCloser: boolean, darks: string[]) => string}
 */
export function adds(colours, isCloser, darks) {
  const things = [
    colours > 0 && percent(colours, 1),
    isCloser && "closer matches",
    darks.length > 2 && `the darkest of ${darks.length} hues`,
    darks.length > 0 && darks.length <= 2 && `the darkest ${listed(darks)}`,
  ].filter((thing) => typeof thing === "string");
  return things.length ? `adds ${listed(things)}` : "adds nothing";
}

// What would come next.

export const nextFor = "What the next paint is for";
export const nextFrom = "Where it may come from";
export const wishes = { reach: "more colours", darks: "deeper darks", neutrals: "more greys" };
export const sources = { shelf: "from the shelf", owned: "from my paints" };
export const noneMarked = "Mark the paints you own on the shelf to see them ranked here.";
export const comparing = "Comparing …";
export const noneAdds = "None of these paints would add anything.";
/** @type {(reason: string) => string} */
export const notCompared = (reason) => `Paints could not be compared: ${reason}.`;

/**
 * What a paint would add by each wish.
 *
 * @type {{ [wish: string]: (gain: number) => string }}
 */
export const gains = {
  reach: (gain) => `reaches ${percent(gain, 1)} more of real surface colours`,
  darks: (gain) => `makes the darks L* ${number(gain)} deeper, all hues together`,
  neutrals: (gain) => `greys ${number(gain)} more of the kit’s paints`,
};
