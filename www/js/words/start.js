// The start of the page, undo, and what is said when something breaks.

import { plural } from "./form.js";

/** @type {(reason: string) => string} */
export const noStart = (reason) => `Washpath could not start: ${reason}. It needs a browser of 2023 or later.`;
/** @type {(reason: string) => string} */
export const noStartWithKept = (reason) =>
  `Washpath could not start with what this browser keeps: ${reason}. None of it is lost.`;
export const saveEverything = "Save everything as a file";
export const startWithout = "Start without it";
export const startAnew = "Start anew";
export const reallyAnew = "Really throw all of it away?";

/**
 * So many kits, own paints and records could not be read; nothing is counted where it was something else.
 *
 * @type {(counts: { kit: number, own: number, record: number }) => string}
 */
export function unread({ kit, own, record }) {
  const some = [
    kit && plural(kit, { one: "one kit", other: `${kit} kits` }),
    own && plural(own, { one: "one paint of yours", other: `${own} paints of yours` }),
    record && plural(record, { one: "one record", other: `${record} records` }),
  ].filter(Boolean);
  return `Of what this browser keeps, ${some.join(" and ") || "a part of it"} could not be read. Everything else is here.`;
}
export const saveUnread = "Save what could not be read";
export const throwAway = "Throw it away";

export const broken = "Something broke inside. What you had is kept.";
export const startAgain = "Start again";

export const denied = "This browser does not let the page keep anything. Share your kit as a link to keep it.";
export const full =
  "This browser has no room left to keep your changes. Share your kit as a link or save it as a file, then free some room.";
/** @type {(name?: string) => string} */
export const elsewhere = (name) => `${name} was changed in another tab`;
/** @type {(name?: string) => string} */
export const beside = (name) => `“${name}” was changed in two tabs at once. Both are kept, side by side.`;
export const partStays = "Part of this has since been changed in another tab, and those changes stay.";
