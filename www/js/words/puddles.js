// Puddles.

import { MOST_PUDDLES } from "../../pkg/facts.js";
import { loadName } from "./terms.js";

export const title = "Puddles";
export const empty = "Keep a mix and use it as A or B of another path, to mix three or more paints.";
export const keep = "Keep this mix";
/** A glaze is two washes; a puddle is one. */
export const keepMixed = "Keep it mixed";
export const known = "This mix is already kept.";
export const full = `There is room for ${MOST_PUDDLES} puddles. Wipe one first.`;
/** @type {(number: number, recipe: string) => string} */
export const kept = (number, recipe) => `Puddle ${number} kept: ${recipe}`;
/** @type {(number: number, load: number) => string} */
export const about = (number, load) => `Puddle ${number} · ${loadName(load)}`;
export const wipe = "Wipe";
/** @type {(number: number) => string} */
export const wipeIt = (number) => `Wipe puddle ${number}`;
export const wiped = "Puddle wiped";
