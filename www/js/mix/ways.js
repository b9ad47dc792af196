// The same paint mixed, and laid in two layers either way: each shows its colour and chooses it.

import { WAYS } from "../../pkg/facts.js";
import { all, button, element, focusedAmong } from "../page/dom.js";
import { pairOf } from "../state/end.js";

/** The three ways as buttons. */
export function createWays(store) {
  const frame = element("div", { class: "ways", role: "group", "aria-label": "Mixed or glazed" });
  return {
    node: frame,
    show(state) {
      const ways = state.studio.ways(pairOf(state), state.share, state.load);
      const focused = focusedAmong(all(frame, "button"));
      frame.replaceChildren(...ways.map((way, i) => verb(way, i, state.laid === i, () => store.set({ laid: i }))));
      if (focused >= 0) all(frame, "button")[focused].focus();
    },
  };
}

function verb({ swatch, difference }, i, isChosen, choose) {
  const way = button("", choose, { class: "way", "aria-pressed": String(isChosen), style: { "--wash": swatch.css } });
  way.append(
    element("span", { class: "chip" }),
    element("span", {}, WAYS[i], element("small", {}, i === 0 ? "in one wash" : difference)),
  );
  return way;
}
