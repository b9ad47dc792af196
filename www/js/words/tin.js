// The kit, its tin, its pans and its paper.

import { listed, number } from "./form.js";
import { ENDS } from "./terms.js";

/** @typedef {{ name: string, code: string }} Paint */

// The tin.

export const pans = "Pans";
export const title = "Title of the kit";
export const nameIt = "Name this kit";
/** @type {(kit: { pans: unknown[], capacity: number }) => string} */
export const filled = ({ pans, capacity }) => `${pans.length} of ${capacity} pans`;
/** @type {(paint: Paint) => string} */
export const paint = ({ name, code }) => `${name} ${code}`;
/**
 * A paint in its pan; `end` says whether it is A, 0, or B, 1, of the path.
 *
 * @type {(name: string, code: string, end: number) => string}
 */
export const packedPaint = (name, code, end) => (ENDS[end] ? `${name}, ${code}, is ${ENDS[end]}` : `${name}, ${code}`);
export const empty = "The tin is empty. How would you like to fill it?";
export const fromShelf = "From the shelf";
export const chooseForMe = "Choose for me";
export const demo = "Demo kit";
export const demoPacked = "Demo kit packed";

// Its settings.

export const paper = "Paper";
export const ownPaper = "My own";
export const askOwnPaper = "My own …";
export const onOwnPaper = "Painting on your own paper";
export const itsColour = "Its colour";
export const holds = "Tin holds";
/** @type {(pans: number) => string} */
export const tooSmall = (pans) => `${pans} pans are packed. Take some out first.`;
/** @type {(most: number) => string} */
export const tooLarge = (most) => `A tin holds ${most} pans at most.`;
export const done = "Done";
export const editPans = "Edit pans";
/** @type {(lab: number[]) => string} */
export const paperColour = ([l, a, b]) => `L* ${number(l)}, a* ${number(a)}, b* ${number(b)}`;

// Packing.

export const pack = "Pack";
export const packed = "Packed";
/** @type {(name: string) => string} */
export const packIt = (name) => `Pack ${name}`;
/** @type {(name: string) => string} */
export const isPacked = (name) => `${name} is packed`;
/** @type {(name: string) => string} */
export const nowPacked = (name) => `${name} packed`;
/** @type {(capacity: number) => string} */
export const full = (capacity) => `The tin holds ${capacity} pans and is full. Remove a pan, or let the tin hold more.`;

// Editing the pans.

export const drag = "Drag a pan by its handle: between two others, or onto one to share its pan.";
export const emptyIt = "Empty the tin";
export const emptied = "Tin emptied";
/** @type {(names: string[]) => string} */
export const pan = (names) => listed(names);
export const earlier = "Earlier";
export const later = "Later";
export const remove = "Remove";
/** @type {(verb: string, pan: string) => string} */
export const verbOf = (verb, pan) => `${verb}: ${pan}`;
/** @type {(pan: string) => string} */
export const movedEarlier = (pan) => `${pan} moved earlier`;
/** @type {(pan: string) => string} */
export const movedLater = (pan) => `${pan} moved later`;
/** @type {(pan: string) => string} */
export const moved = (pan) => `${pan} moved`;
/** @type {(pan: string) => string} */
export const removed = (pan) => `${pan} removed`;
/** @type {(pan: string) => string} */
export const shares = (pan) => `${pan} now shares a pan`;
export const grip = "Drag to move";
/** @type {(pan: string) => string} */
export const gripOf = (pan) => `Move ${pan} by dragging, or with the arrow keys`;

// The paints of a pan.

/** @type {(paint: Paint) => string} */
export const change = ({ name, code }) => `${name} ${code}: change`;
/** @type {(name: string) => string} */
export const putBeside = (name) => `Put a paint beside ${name}`;
export const twice = "packed twice";
/** @type {(pan: number) => string} */
export const find = (pan) => `Find a paint for pan ${pan}`;
export const offerPacked = "packed";
export const takenOut = "Paint taken out";
export const apart = "Each paint has a pan of its own";
export const takeOut = "Take it out";
export const giveEach = "Give each its own pan";
/** @type {(name: string) => string} */
export const inThisPan = (name) => `${name} is in this pan already.`;
/** @type {(name: string, pans: number[]) => string} */
export const nowTwice = (name, pans) => `${name} is packed twice now, in pans ${listed(pans.map(String))}.`;
export const fitting = "Paints that fit";
