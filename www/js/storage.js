// What stays on this device between visits. Where storage is denied the page works on without it.

const KEY = "washpath";

/** The state kept last time: kit as link text, ends, settings; or nothing. */
export function restore() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY));
    return kept && typeof kept === "object" ? kept : {};
  } catch {
    return {};
  }
}

/** Keeps the state; answers whether it could. */
export function keep(kept) {
  try {
    localStorage.setItem(KEY, JSON.stringify(kept));
    return true;
  } catch {
    return false;
  }
}
