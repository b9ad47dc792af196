// The log of records, out to a file and in from one.

import { MOST_RECORDS } from "../../pkg/facts.js";
import { longDay, number, plural } from "./form.js";
import { loadName } from "./terms.js";

export const title = "Log";
export const empty = "Your records appear here as a table, newest first. They can be saved as a CSV file.";
export const exportIt = "Export";
export const deleted = "The record is deleted.";
/** @type {(reason: string) => string} */
export const notWritten = (reason) => `The log could not be written: ${reason}.`;
export const columns = ["Painted", "Seen", "Mix", "Off by"];
export const remove = "Delete";
/** @type {(name: string) => string} */
export const removeIt = (name) => `Delete the record of ${name}`;
/** @type {(load: number, date: string, note: string) => string} */
export const traits = (load, date, note) => [loadName(load), date, note].filter(Boolean).join(" · ");
/** @type {(error: number) => string} */
export const off = (error) => number(error);
export const doubted = "doubted";
export const doubtedTitle = "It does not fit the other records and counts little.";

// A file of records.

export const importIt = "Import";
/** @type {(reason: string) => string} */
export const unreadable = (reason) => `This file could not be read: ${reason}. The log is as it was.`;
/** @type {(records: number) => string} */
export const beyond = (records) => `${records} records beyond ${MOST_RECORDS}`;
/** @type {(added: number) => string} */
const cameIn = (added) => plural(added, { one: `${added} record came in`, other: `${added} records came in` });
/**
 * What came in, how many were known, and a sentence on how the file was read.
 *
 * @type {(added: number, known: number, how: string) => string}
 */
export const came = (added, known, how) =>
  [known ? `${cameIn(added)}, ${known} known before.` : `${cameIn(added)}.`, how].filter(Boolean).join(" ");
/** @type {(added: number, left: number) => string} */
export const cameSaid = (added, left) => `${cameIn(added)}, ${left} left out`;
/** @type {(faults: number) => string} */
export const leftOut = (faults) => `${faults} left out`;
/** @type {(written: string) => string} */
export const whichDay = (written) => `A date in this file is “${written}”. Which day is that?`;
/** @type {(written: string) => string} */
export const whichDaySaid = (written) => `Which day is ${written}?`;
/** @type {(day: string) => string} */
export const dayFirst = (day) => `Day first: ${isoDay(day)}`;
/** @type {(day: string) => string} */
export const monthFirst = (day) => `Month first: ${isoDay(day)}`;
export const cancel = "Cancel";

/** @type {(day: string) => string} */
const isoDay = (day) => longDay(new Date(`${day}T00:00Z`), "UTC");
