// Why a change may not be, why what was kept cannot be read, and the names the page gives.

import { MOST_MIXED, MOST_OWN } from "../../pkg/facts.js";

// Changes.

/** @type {(name: string) => string} */
export const nameTaken = (name) => `a paint of yours is already called ${name}`;
/** @type {(paints: number) => string} */
export const tooManyMixed = (paints) =>
  `A and B together are ${paints} paints, and a mix holds at most ${MOST_MIXED}: choose an end of fewer paints`;
/** @type {(key: string, value: unknown) => string} */
export const outOfRange = (key, value) => `${key} cannot be ${value}`;
/** @type {(most: number) => string} */
export const tooManyKits = (most) => `there is room for ${most} kits: throw one away first`;
export const guestOwn = `its own paints do not fit: ${MOST_OWN} are kept, and no more`;

// What was kept.

export const noParts = "it has no parts";
export const gonePaint = "it is of a paint that is not here";
export const noText = "it is not text";
export const noList = "it is not a list";
export const noState = "it is not a state";
export const noVersion = "it holds no version";
export const notTogether = "it could not be put together with the rest";
export const unseenPaint = "a paint of it cannot be shown";
/** @type {(key: string) => string} */
export const notOnShelf = (key) => `the shelf has no ${key}`;

// Names.

export const demo = "North Sea harbour, October";
export const sharedKit = "Shared kit";
export const firstPlace = "Place 1";
/** @type {(name: string) => string} */
export const copyOf = (name) => `${name}, copy`;
/** @type {(name: string) => string} */
export const otherTab = (name) => `${name}, other tab`;
/** @type {(name: string, count: number) => string} */
export const numbered = (name, count) => `${name} ${count}`;
