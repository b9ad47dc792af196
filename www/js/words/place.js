// A place and how much of it the kit reaches.

import { MOST_COLOURS, MOST_PLACES, REACHED } from "../../pkg/facts.js";
import { number, percent } from "./form.js";
import { loadName } from "./terms.js";

export const title = "Place";
/** @type {(number: number) => string} */
export const name = (number) => `Place ${number}`;
export const nameField = "Name of the place";
export const find = "Find them in the photo";
export const addTarget = "Add the colour to match";
export const remove = "Remove this place";
export const howMany = "How many colours";
export const colours = " colours";
/** @type {(colours: number) => string} */
export const found = (colours) => `${colours} colours found`;
/** @type {(reason: string) => string} */
export const notFound = (reason) => `No colours could be found: ${reason}.`;
export const tooManyPlaces = `A kit keeps ${MOST_PLACES} places. Remove one first.`;
export const tooManyColours = `A place holds ${MOST_COLOURS} colours.`;
export const added = "Colour added to the place";
export const removed = "Place removed";

// Its reach.

export const none =
  "Open a photo of where you go, and find its colours; or add colours one by one. Then this says how much of the place the kit reaches.";
export const emptyTin = "The tin is empty: pack paints to see what they reach here.";
/** @type {(reason: string) => string} */
export const failed = (reason) => `The place could not be worked out: ${reason}.`;
/** @type {(reached: number, all: number, part: number) => string} */
export const reaches = (reached, all, part) => `Reaches ${reached} of ${all} colours, ${percent(part)} of the place`;
export const within = `, near enough to pass for them (within CIEDE2000\u00a0${REACHED}).`;
export const choose = "Choose a kit for this place";
/** @type {(recipe: string, load: number, error: number) => string} */
export function nearest(recipe, load, error) {
  const off = `${recipe}, ${loadName(load)}: off by ${number(error, 1)}`;
  return error > REACHED ? `${off}, out of reach` : off;
}
/** @type {(colour: string) => string} */
export const weight = (colour) => `Weight of ${colour}, percent`;
/** @type {(colour: string) => string} */
export const drop = (colour) => `Remove ${colour}`;
export const dropped = "Colour removed";
export const noneBrings = "No single paint on the shelf would bring the mixes much nearer to it.";
export const wouldAdd = "Paints that would bring the mixes nearer";
/** @type {(gain: number) => string} */
export const gain = (gain) => `all colours together ${percent(gain)} nearer`;
