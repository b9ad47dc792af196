// What the painter owns beside what the kit asks for.

import { number } from "./form.js";

export const noneMarked =
  "Mark the paints you own on the shelf to see which of them comes nearest to each paint of this kit.";
export const comparing = "Comparing …";
/** @type {(reason: string) => string} */
export const failed = (reason) => `Paints could not be compared: ${reason}.`;
export const allOwned = "You own every paint of this kit.";
export const turn = "Turn the kit into what I own";
/** @type {(kept: number) => string} */
export const turned = (kept) =>
  kept === 0
    ? "Paints you own have replaced the others"
    : `Paints you own have replaced the others, but for ${number(kept)} that nothing you own comes near`;
/** @type {(recipe: string, alone: number, mixed: number) => string} */
export const off = (recipe, alone, mixed) =>
  `${recipe}, off by ${number(alone, 1)} alone, ${number(mixed, 1)} in mixes`;
/** @type {(recipe: string, alone: number) => string} */
export const farOff = (recipe, alone) => `Nothing you own comes near: ${recipe} is off by ${number(alone)}`;
export const swap = "Swap";
/** @type {(name: string, by: string) => string} */
export const swapIt = (name, by) => `Swap ${name} for ${by}`;
export const swapped = "Swapped";
