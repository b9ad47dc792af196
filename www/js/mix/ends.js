// The two ends of the path: which paints, mixes or places it runs between.

import { dabOf } from "../page/dab.js";
import { all, button, byId, element, focusedAmong, say } from "../page/dom.js";
import { chooseEnd, paintEnd, paintOf, shortName } from "../state/end.js";

/** Answers a verb that fills the next end; the other one is next then. An end that is chosen again stays: the other is next. */
export function createChoose(store, shelf) {
  return (end) => {
    const { next } = store.get();
    if (!store.set((state) => chooseEnd(state, end)) || store.get().ends[next] !== end) return;
    const off = end.asked ? `, ${offBy(end.asked.off)}` : "";
    say(`${shortName(end.parts, shelf)} is ${"AB"[next]}${off}`);
  };
}

/** The same for a paint by its number. */
export const choosePaint = (choose) => (number) => choose(paintEnd(number));

/** How near a recipe came to the place asked for. */
function offBy(off) {
  if (off < 1) return "right on that place";
  return off < 3
    ? `${off.toFixed(0)} away from that place, hardly visible`
    : `the nearest this kit comes, ${off.toFixed(0)} away`;
}

/** Shows both ends; a click says which one is filled next. */
export function attachEnds(store, shelf) {
  const frame = byId("ends");

  function show({ ends, next, studio }) {
    const focused = focusedAmong(all(frame, "button"));
    const choices = ends.map((end, i) => {
      const choice = button("", () => store.set({ next: i }), { class: "end", "aria-pressed": String(next === i) });
      choice.append(
        element("span", { class: "letter" }, "AB"[i]),
        end ? dabOf(studio, end.parts, 36) : element("span", { class: "dab blank" }),
        element("span", { class: "name" }, ...naming(end)),
        element("span", { class: "next" }, next === i ? "next click goes here" : ""),
      );
      return choice;
    });
    const swap = button("Swap", swapEnds, { class: "swap", "aria-label": "Swap A and B" });
    frame.replaceChildren(...choices, swap);
    if (focused >= 0) all(frame, "button")[focused].focus();
  }

  function naming(end) {
    if (!end) return ["Choose a paint", element("small", {}, "on the wheel or in a list")];
    const paint = shelf.get(paintOf(end));
    if (paint)
      return [paint.name, element("small", {}, end.asked ? `${paint.code}, ${offBy(end.asked.off)}` : paint.code)];
    return [
      end.asked ? "A place" : "A puddle",
      element("small", {}, shortName(end.parts, shelf), end.asked ? `, ${offBy(end.asked.off)}` : ""),
    ];
  }

  function swapEnds() {
    const {
      ends: [a, b],
      share,
      laid,
    } = store.get();
    // What lay over stays over.
    store.set({ ends: [b, a], share: 1 - share, laid: [0, 2, 1][laid] });
  }

  store.subscribe((state, changed) => {
    if (["ends", "next", "studio"].some((key) => changed.has(key))) show(state);
  });
  show(store.get());
}
