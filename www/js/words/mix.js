// The mix at hand and its two ends.

import { number } from "./form.js";
import { ENDS, inLight, loadName } from "./terms.js";

// The ends.

export const nextClick = "next click goes here";
export const swap = "Swap";
export const swapEnds = "Swap A and B";
export const chooseEnd = "Choose a paint";
export const chooseWhere = "on the wheel or in a list";
export const place = "A colour of the wheel";
export const puddle = "A puddle";

/**
 * An end was chosen; with how near it came to where was pointed.
 *
 * @type {(name: string, end: number, off?: number) => string}
 */
export const chosen = (name, end, off) =>
  off === undefined ? `${name} is ${ENDS[end]}` : `${name} is ${ENDS[end]}, ${offBy(off)}`;

/**
 * A code or recipe with how near it came to where was pointed.
 *
 * @type {(name: string, off?: number) => string}
 */
export const reached = (name, off) => (off === undefined ? name : `${name}, ${offBy(off)}`);

/** @type {(off: number) => string} */
function offBy(off) {
  if (off < 1) return "right where you pointed";
  return off < 3
    ? `${number(off)} away from where you pointed, hardly visible`
    : `the nearest this kit comes, ${number(off)} away`;
}

// The mix.

export const empty = "Choose two paints to see every mix of them: click them on the wheel, in the kit or on the shelf.";
export const taught = "Predicted from your own swatches.";
export const ratio = "Ratio";
export const load = "Load";

/** @type {(load: number, colour: string, lightness: number) => string} */
export const atHand = (load, colour, lightness) => `${loadName(load)}: ${colour}, L* ${number(lightness)}`;

export const value = "Value L*";
export const chroma = "Chroma C*";
export const hue = "Hue h";
/** @type {(degrees: number) => string} */
export const angle = (degrees) => `${number(degrees)}°`;
export const noHue = "none";
export const expect = "Expect";
/** @type {(error: number) => string} */
export const giveOrTake = (error) => `±${number(error)}`;
export const expectation =
  "How far real paint is likely to be from this prediction (median CIEDE2000, where 1 is just visible): measurement, mixing model and differences between makers together.";
export const shown = "Shown";
export const asNear = "as near as this display comes";
export const goThere = "Go there";

/** @type {(recipe: string, load: number, light: string, difference: number) => string} */
export const shift = (recipe, load, light, difference) =>
  `Looks the same in daylight as ${recipe}, ${loadName(load)}, but differs ${inLight(light)} (CIEDE2000\u00a0${number(difference)}).`;

// Mixed or glazed.

export const ways = "Mixed or glazed";
export const oneWash = "in one wash";

// What a teacher asks.

export const tasks = "Tasks";
/** @type {(done: number, all: number) => string} */
export const tasksDone = (done, all) => `Tasks: ${done} of ${all} done`;
export const noteOnly = "A note with this kit";
/** @type {(tasks: number, most: number) => string} */
export const tooManyTasks = (tasks, most) => `there are ${tasks} tasks, and room for ${most}`;
/** @type {(task: number, most: number) => string} */
export const longTask = (task, most) => `task ${task} is longer than ${most} characters`;
