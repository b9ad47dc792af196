// The same paint mixed, and laid in two layers either way: each shows its colour and chooses it.

import { WAYS } from "../../pkg/facts.js";
import { button, element, put } from "../page/dom.js";
import { pairOf } from "../state/end.js";

/** The three ways as buttons. */
export function createWays(store) {
  const ways = WAYS.map((name, i) => {
    const difference = element("small", {}, "in one wash");
    const words = element("span", {}, name, difference);
    const node = button("", () => store.set({ laid: i }), { class: "way" });
    node.append(element("span", { class: "chip" }), words);
    return { node, difference };
  });
  return {
    node: element(
      "div",
      { class: "ways", role: "group", "aria-label": "Mixed or glazed" },
      ...ways.map(({ node }) => node),
    ),
    show(state) {
      state.studio.ways(pairOf(state), state.share, state.load).forEach(({ swatch, difference }, i) => {
        ways[i].node.style.setProperty("--wash", swatch.css);
        ways[i].node.setAttribute("aria-pressed", String(state.laid === i));
        if (i > 0) put(ways[i].difference, difference);
      });
    },
  };
}
