// How the first picture looks, before any module is there: the surround as it was left, and the first visit's line only
// on a first visit. What is read here is read again, and judged, by `state/start.js`.
{
  /** @param {() => Storage} storage */
  const kept = (storage) => {
    try {
      return JSON.parse(storage().getItem("washpath/looks") ?? "null");
    } catch {
      return null;
    }
  };
  const known = () => {
    try {
      return Object.keys(localStorage).some((key) => key.startsWith("washpath"));
    } catch {
      return false;
    }
  };
  const { dim, welcome } = kept(() => sessionStorage) ?? kept(() => localStorage) ?? {};
  const root = document.documentElement;
  root.dataset.surround = (dim ?? matchMedia("(prefers-color-scheme: dark)").matches) ? "dim" : "light";
  // Once it shows, what it did not need: links of the kind "then" are loaded ahead.
  globalThis.pictured = new Promise((/** @type {(nothing?: void) => void} */ resolve) =>
    document.hidden ? resolve() : requestAnimationFrame(() => setTimeout(resolve, 0)),
  );
  globalThis.pictured.then(() => {
    for (const link of document.querySelectorAll("link")) if (link.rel === "then") link.rel = "preload";
  });
  if (!(welcome ?? !(known() || location.hash.includes("kit=")))) root.dataset.known = "";
}
