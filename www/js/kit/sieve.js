// What the shelf's list is asked for: its order, and what its paints are to be like.

/** @import { Ordered } from "./find.js" */

import { element } from "../page/dom.js";
import * as words from "../words/shelf.js";
import { ORDERS, TRAITS } from "./find.js";

/**
 * Fills `frame` with the choices; `changed` hears of each. Answers `compare`, the order, and `wanted`, the traits as a set of keys.
 *
 * @param {HTMLElement} frame
 * @param {() => void} changed
 */
export function createSieve(frame, changed) {
  const wanted = new Set();

  /** @param {typeof TRAITS[number]} trait */
  function traitBox({ key }) {
    const box = element("input", {
      type: "checkbox",
      onchange: () => {
        if (box.checked) wanted.add(key);
        else wanted.delete(key);
        changed();
      },
    });
    return element("label", { class: "tick" }, box, ` ${words.traits[key]}`);
  }

  const order = element(
    "select",
    { id: "shelf-order", onchange: () => changed() },
    ...ORDERS.map(({ key }) => element("option", { value: key }, words.orders[key])),
  );
  frame.replaceChildren(
    element("label", { class: "field" }, element("span", {}, words.order), order),
    element(
      "details",
      {},
      element("summary", {}, words.only),
      element("div", { class: "traits-asked" }, ...TRAITS.map(traitBox)),
    ),
  );
  // One of the options is always chosen.
  return {
    wanted,
    compare: (/** @type {Ordered} */ a, /** @type {Ordered} */ b) => ORDERS[order.selectedIndex].compare(a, b),
  };
}
