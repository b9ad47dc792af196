// The wheel: what it says to a screen reader and below a resting mouse.

/** @type {(number: number) => string} */
export const puddle = (number) => `Puddle ${number}`;
/** @type {(paint: { name: string, code: string }) => string} */
export const hint = ({ name, code }) => `${name} ${code}`;
/** @type {(paint: { name: string, code: string }) => string} */
export const paint = ({ name, code }) => `${name}, ${code}`;
export const cross = "A cross is on the wheel: arrows move it, Enter takes the nearest mix, Escape puts it away";
export const emptyKit = "Pack a paint first: an empty kit reaches no place";
export const targetTaken = "The colour to match is taken from the wheel";
/** @type {(light: string) => string} */
export const seenIn = (light) => `Seen in ${light.toLowerCase()}`;
export const pinned = "Path pinned: choose other paints to compare";
export const unpinned = "Pins cleared";
