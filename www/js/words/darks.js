// The darkest mixes of the kit.

import { number } from "./form.js";

export const empty = "Pack some paints to see their darkest mix of every hue here.";
export const explained = "The darkest masstone mix that still shows each hue.";
export const none = "none in this kit";
/** @type {(lightness: number) => string} */
export const value = (lightness) => `L* ${number(lightness)}`;
