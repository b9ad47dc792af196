// The two ends of the path: which paints, mixes or places it runs between.

/** @import { Choose, End, Shelf, State, Store } from "../state/types.js" */

import { dabOf } from "../page/dab.js";
import { all, button, byId, element, focusedAmong, say } from "../page/dom.js";
import { chooseEnd, paintEnd, paintOf, shortName } from "../state/end.js";
import * as words from "../words/mix.js";
import { ENDS } from "../words/terms.js";

/**
 * Answers a verb that fills the next end; the other one is next then. An end that is chosen again stays: the other is next.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @returns {Choose}
 */
export function createChoose(store, shelf) {
  return (end) => {
    const { next } = store.get();
    if (!store.set((state) => chooseEnd(state, end)) || store.get().ends[next] !== end) return;
    say(words.chosen(shortName(end.parts, shelf), next, end.asked?.off));
  };
}

/**
 * The same for a paint by its number.
 *
 * @type {(choose: Choose) => (paint: number) => void}
 */
export const choosePaint = (choose) => (number) => choose(paintEnd(number));

/**
 * Shows both ends; a click says which one is filled next.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 */
export function attachEnds(store, shelf) {
  const frame = byId("ends");

  /** @param {State} state */
  function show({ ends, next, studio }) {
    const focused = focusedAmong(all(frame, "button"));
    const choices = ends.map((end, i) => {
      const choice = button("", () => store.set({ next: i }), { class: "end", "aria-pressed": String(next === i) });
      choice.append(
        element("span", { class: "letter" }, ENDS[i]),
        end ? dabOf(studio, end.parts, 36) : element("span", { class: "dab blank" }),
        element("span", { class: "name" }, ...naming(end)),
        element("span", { class: "next" }, next === i ? words.nextClick : ""),
      );
      return choice;
    });
    const swap = button(words.swap, swapEnds, { class: "swap", "aria-label": words.swapEnds });
    frame.replaceChildren(...choices, swap);
    if (focused >= 0) all(frame, "button")[focused].focus();
  }

  /** @param {End | null} end */
  function naming(end) {
    if (!end) return [words.chooseEnd, element("small", {}, words.chooseWhere)];
    const paint = shelf.get(paintOf(end) ?? 0);
    const known = paint?.code ?? shortName(end.parts, shelf);
    return [
      paint?.name ?? (end.asked ? words.place : words.puddle),
      element("small", {}, words.reached(known, end.asked?.off)),
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
