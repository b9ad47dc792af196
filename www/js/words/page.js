// What any part of the page says.

export const undo = "Undo";
export const close = "Close";
export const saved = "Saved";
export const noCanvas = "the browser has no room for a canvas";

/** @type {(id: string) => string} */
export const noElement = (id) => `the page has no “${id}” of that kind`;
/** @type {(selector: string) => string} */
export const noneFound = (selector) => `the page has no “${selector}”`;
