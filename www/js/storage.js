// What stays on this device between visits. Where storage is denied the page works on without it.

const KEY = "washpath";
/** As it was when the last visit that could read it began. */
const BEFORE = "washpath before";
/** What could not be read, untouched, for whoever can. */
const UNREADABLE = "washpath unreadable";

/**
 * What was kept: the first of the last state and the one before it that `fits`. Answers `{kept, fault}`: `fault` is
 * the text that could not be read, if there was one; it is put aside.
 */
export function restore(fits) {
  let fault = null;
  try {
    const text = localStorage.getItem(KEY);
    const last = parsed(text);
    if (last && fits(last)) {
      localStorage.setItem(BEFORE, text);
      return { kept: last, fault };
    }
    if (text !== null) {
      fault = text;
      localStorage.setItem(UNREADABLE, text);
    }
    const before = parsed(localStorage.getItem(BEFORE));
    return { kept: before && fits(before) ? before : last ?? {}, fault };
  } catch {
    return { kept: {}, fault };
  }
}

function parsed(text) {
  try {
    const kept = JSON.parse(text);
    return kept && typeof kept === "object" && !Array.isArray(kept) ? kept : null;
  } catch {
    return null;
  }
}

/** Keeps the state; answers nothing, or why it could not: `full` or `denied`. One write either happens or does not. */
export function keep(kept) {
  try {
    localStorage.setItem(KEY, JSON.stringify(kept));
    return null;
  } catch (error) {
    return error?.name === "QuotaExceededError" ? "full" : "denied";
  }
}

/** Hears of what another tab keeps. */
export function onOther(hear) {
  addEventListener("storage", ({ key, newValue }) => {
    const kept = key === KEY && parsed(newValue);
    if (kept) hear(kept);
  });
}
