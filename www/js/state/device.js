// What stays on this device between visits: one entry of the browser's storage for each kept item, so that no tab writes
// over what another keeps. Where storage is denied the page works on without it.

const PREFIX = "washpath/";

/** Where a version of the page before this one kept everything. Read for ever, and never written. */
const OLD = ["washpath", "washpath before"];

/**
 * Entries as `[key, text]`, the old whole ones apart. Nothing where storage is denied.
 *
 * @type {() => [string, string][]}
 */
export function entries() {
  try {
    const keys = Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i) ?? "");
    return keys
      .filter((key) => key.startsWith(PREFIX))
      .map((key) => [key.slice(PREFIX.length), localStorage.getItem(key) ?? ""]);
  } catch {
    return [];
  }
}

/**
 * The state as a former version of the page kept it, newest first.
 *
 * @type {() => string[]}
 */
export function oldTexts() {
  try {
    return OLD.map((key) => localStorage.getItem(key)).filter((text) => text !== null);
  } catch {
    return [];
  }
}

/**
 * A note of this tab alone, which a reload finds again.
 *
 * @type {(key: string, text: string) => void}
 */
export function note(key, text) {
  try {
    sessionStorage.setItem(PREFIX + key, text);
  } catch {
    // Without it a reload shows what the last tab showed.
  }
}

/**
 * What this tab noted, or null.
 *
 * @type {(key: string) => string | null}
 */
export function noted(key) {
  try {
    return sessionStorage.getItem(PREFIX + key);
  } catch {
    return null;
  }
}

/**
 * The text of an entry, or null.
 *
 * @type {(key: string) => string | null}
 */
export function read(key) {
  try {
    return localStorage.getItem(PREFIX + key);
  } catch {
    return null;
  }
}

/**
 * Writes an entry; answers nothing, or why it could not: `full` or `denied`. A write either happens or does not.
 *
 * @type {(key: string, text: string) => "full" | "denied" | null}
 */
export function write(key, text) {
  try {
    localStorage.setItem(PREFIX + key, text);
    return null;
  } catch (error) {
    return error?.name === "QuotaExceededError" ? "full" : "denied";
  }
}

/** @type {(keys: string[]) => void} */
export function erase(keys) {
  try {
    for (const key of keys) localStorage.removeItem(PREFIX + key);
  } catch {
    // What cannot be erased stays, and harms nothing.
  }
}

/** Takes away what a former version of the page kept, once all of it is kept anew. */
export function eraseOld() {
  try {
    for (const key of OLD) localStorage.removeItem(key);
  } catch {
    // It stays, and is known again by its items.
  }
}

/** Everything that is kept, as a text that can be saved and read by a person. */
export function everything() {
  const old = Object.fromEntries(oldTexts().map((text, i) => [OLD[i], text]));
  return JSON.stringify(
    { ...old, ...Object.fromEntries(entries().map(([key, text]) => [PREFIX + key, text])) },
    null,
    1,
  );
}

/** Takes everything away. */
export function eraseEverything() {
  erase(entries().map(([key]) => key));
  eraseOld();
}

/**
 * Hands on an entry that another tab wrote or erased: `hear(key, text)`.
 *
 * @type {(event: { key: string | null, newValue: string | null }, hear: (key: string, text: string | null) => void) => void}
 */
export function heard({ key, newValue }, hear) {
  if (key?.startsWith(PREFIX)) hear(key.slice(PREFIX.length), newValue);
}
