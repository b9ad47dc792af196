// Several kits.

import { number } from "./form.js";

export const inHand = "Kit in hand";
export const start = "New";
export const started = "A new, empty kit";
export const copy = "Copy";
export const copied = "Kit copied";
export const compare = "Compare";
export const throwAway = "Throw away";
/** @type {(name: string) => string} */
export const taken = (name) => `${name} in hand`;
/** @type {(name: string) => string} */
export const thrownAway = (name) => `“${name}” is thrown away.`;

// Two of them beside each other.

export const compareWith = "Compare with";
export const comparing = "Comparing …";
export const showReaches = "Show both reaches on the wheel";
/** @type {(reason: string) => string} */
export const failed = (reason) => `The kits could not be compared: ${reason}.`;
export const legend =
  "Reached: the part of real surface colours that a mix comes within CIEDE2000 5 of; closely, within 2. Darkest: the deepest mix that still shows the hue; the lower L*, the darker.";
export const reached = "Colours reached";
export const reachedClosely = "Reached closely";
export const greying = "Pairs that grey";
/** @type {(hue: string) => string} */
export const darkest = (hue) => `Darkest ${hue}`;
/** @type {(lightness: number) => string} */
export const value = (lightness) => ` L*\u00a0${number(lightness)}`;
export const none = "none";
/** @type {(name: string) => string} */
export const onlyIn = (name) => `Only in ${name}`;
export const nothing = "Nothing.";
