// The darkest mix of the kit in each hue family.

/** @import { Dark } from "../state/answers.js" */
/** @import { Part, Shelf, Store } from "../state/types.js" */

import { button, byId, element } from "../page/dom.js";
import { detailsAround } from "../page/fold.js";
import { afterRest } from "../page/rest.js";
import { shortName } from "../state/end.js";
import { paintsOf } from "../state/kit.js";
import { pathOf } from "../state/path.js";
import * as words from "../words/darks.js";

const REST = 250;

/**
 * Shows the darks; a click puts the mix on the path.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 */
export function attachDarks(store, shelf) {
  const frame = byId("darks");
  const details = detailsAround(frame);

  function show() {
    const { studio, kit } = store.get();
    const paints = paintsOf(kit);
    if (paints.length === 0) return frame.replaceChildren(element("p", { class: "quiet" }, words.empty));
    // All mixes of the kit are looked at: not before somebody looks.
    if (!details.open) return;
    frame.replaceChildren(
      element("p", { class: "quiet" }, words.explained),
      element("ul", { class: "darks" }, ...studio.darks(paints).map(row)),
    );
  }

  /** @param {Dark} dark */
  function row({ name, swatch, parts }) {
    if (!swatch)
      return element(
        "li",
        {},
        element(
          "span",
          { class: "take" },
          element("span", { class: "chip blank" }),
          element("span", { class: "name" }, name, element("span", { class: "traits" }, words.none)),
        ),
      );
    const take = button("", () => onPath(parts), { class: "take" });
    take.append(
      element("span", { class: "chip", style: { "--wash": swatch.css } }),
      element("span", { class: "name" }, name, element("span", { class: "traits" }, shortName(parts, shelf))),
      element("span", { class: "figure" }, words.value(swatch.lightness)),
    );
    return element("li", {}, take);
  }

  /**
   * A paint alone becomes the next end; a mix is shown on its path.
   *
   * @param {Part[]} parts
   */
  function onPath(parts) {
    if (parts.length === 1)
      return store.set({ ends: store.get().ends.map((end, i) => (i === store.get().next ? { parts } : end)), load: 1 });
    store.set({ ...pathOf(parts), load: 1, laid: 0, next: 0 });
  }

  const soon = afterRest(show, REST);
  details.addEventListener("toggle", show);
  store.subscribe((_, changed) => (changed.has("kit") || changed.has("studio")) && soon());
  soon();
}
