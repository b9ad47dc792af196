// What was sampled in the photo beside the kit's nearest mix.

/** @import { State, Store } from "../state/types.js" */

import { element } from "../page/dom.js";

/**
 * Answers the line as a node; `tell` takes the row of the nearest recipe, or nothing.
 *
 * @param {Store} store
 */
export function createAnswer(store) {
  const chip = element("span", { class: "chip blank" });
  const nearest = element("ul", { class: "rows" });
  const node = element("div", { class: "answer", hidden: true }, chip, nearest);

  /** @param {State} state */
  function show({ target, studio }) {
    const isOwn = target?.from === "photo";
    chip.classList.toggle("blank", !isOwn);
    nearest.hidden = !isOwn;
    if (isOwn) chip.style.setProperty("--wash", studio.colour(Float32Array.from(target.lab)).css);
  }

  store.subscribe((state, changed) => (changed.has("target") || changed.has("studio")) && show(state));
  show(store.get());
  return { node, tell: (/** @type {Node | null} */ row) => nearest.replaceChildren(...(row ? [row] : [])) };
}
