// The same paint mixed, and laid in two layers either way: each shows its colour and chooses it.

/** @import { State, Store } from "../state/types.js" */

import { WAYS } from "../../pkg/facts.js";
import { button, element, put } from "../page/dom.js";
import { pairOf } from "../state/end.js";
import * as words from "../words/mix.js";

/**
 * The three ways as buttons.
 *
 * @param {Store} store
 */
export function createWays(store) {
  const ways = WAYS.map((name, i) => {
    const difference = element("small", {}, words.oneWash);
    const node = button("", () => store.set({ laid: i }), { class: "way" });
    node.append(element("span", { class: "chip" }), element("span", {}, name, difference));
    return { node, difference };
  });
  return {
    node: element("div", { class: "ways", role: "group", "aria-label": words.ways }, ...ways.map(({ node }) => node)),
    /** @param {State} state */
    show(state) {
      state.studio.ways(pairOf(state), state.share, state.load).forEach(({ swatch, difference }, i) => {
        ways[i].node.style.setProperty("--wash", swatch.css);
        ways[i].node.setAttribute("aria-pressed", String(state.laid === i));
        if (i > 0) put(ways[i].difference, difference);
      });
    },
  };
}
