// A kit that came by a link.

export const title = "A kit came with this link";
export const pack = "Pack the shared kit";
export const keepMine = "Keep mine";
export const shared = "Shared with you";
export const yours = "Yours";
/** @type {(pans: number) => string} */
export const stands = (pans) => `A shared kit of ${pans} pans stands beside yours`;
/** @type {(reason: string) => string} */
export const unreadable = (reason) => `The link could not be read: ${reason}. Your kit is as it was.`;
export const alreadyInHand = "This link holds the kit you already have.";
/** @type {(name: string) => string} */
export const already = (name) => `You have this kit already: “${name}”.`;
export const takeIt = "Take it in hand";
/** @type {(pans: number, capacity: number, paper: string) => string} */
export const tin = (pans, capacity, paper) => `${pans} of ${capacity} pans, ${paper.toLowerCase()} paper`;
/** @type {(paint: { name: string, code: string }) => string} */
export const chooseIt = ({ name, code }) => `${name}, ${code}: choose as an end`;
