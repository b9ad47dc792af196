// What is clicked before its part of the page is there, done once it is.

/**
 * Keeps clicks on what is marked `data-later`, which `further.js` attaches. Answers a verb that ends this and does
 * each once, in their order, where it still stands.
 */
export function keepEarly() {
  const kept = new Set();
  const keep = ({ target }) => {
    const control = target.closest("[data-later]");
    if (control) kept.add(control);
  };
  document.addEventListener("click", keep, true);
  return () => {
    document.removeEventListener("click", keep, true);
    for (const control of kept) if (control.isConnected) control.click();
  };
}
