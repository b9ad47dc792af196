// Puddles: mixes kept on the palette, each an end for further paths.

/** @import { Choose, Shelf, State, Store } from "../state/types.js" */

import { MOST_PUDDLES } from "../../pkg/facts.js";
import { dabOf } from "../page/dab.js";
import { button, byId, element, notice, say } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { isPair, pairOf, sameParts } from "../state/end.js";
import { keepPuddle, wipePuddle } from "../state/puddles.js";
import * as words from "../words/puddles.js";
import { recipe } from "../words/terms.js";

/**
 * A load as a link carries it: in quarters of a doubling.
 *
 * @param {number} load
 */
const quarters = (load) => Math.round(4 * Math.log2(load));

/**
 * Shows the kept mixes, with verbs to keep the mix at hand and to choose or wipe one.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Choose} choose
 */
export function attachPuddles(store, shelf, choose) {
  const frame = byId("puddles");

  function keep() {
    const state = store.get();
    const { recipe: parts } = state.studio.mix(pairOf(state), state.share, state.load);
    const load = quarters(state.load);
    if (state.kit.puddles.some((known) => sameParts(known.parts, parts) && quarters(known.load) === load))
      return notice(words.known, { seconds: 4 });
    if (state.kit.puddles.length >= MOST_PUDDLES) return notice(words.full, { seconds: 8 });
    store.set({ kit: keepPuddle(state.kit, { parts, load: 2 ** (load / 4) }) });
    say(words.kept(store.get().kit.puddles.length, recipe(parts, shelf)));
  }

  /** @param {State} state */
  function show(state) {
    const { kit, studio } = state;
    const rows = kit.puddles.map(({ parts, load }, i) => {
      const name = recipe(parts, shelf);
      const take = button("", () => choose({ parts }), { class: "take" });
      take.append(
        dabOf(studio, parts, 34, load),
        element("span", { class: "name" }, name, element("span", { class: "traits" }, words.about(i + 1, load))),
      );
      const wipe = button(
        words.wipe,
        () => {
          store.set({ kit: wipePuddle(store.get().kit, i) });
          say(words.wiped);
        },
        {
          class: "pack",
          "aria-label": words.wipeIt(i + 1),
        },
      );
      return element("li", {}, take, wipe);
    });
    const keeping = button(state.laid === 0 ? words.keep : words.keepMixed, keep, {
      disabled: !isPair(state),
      "data-focus": "keep",
    });
    remake(
      frame,
      element("div", { class: "title-row" }, element("h3", {}, words.title), keeping),
      rows.length ? element("ul", { class: "rows" }, ...rows) : element("p", { class: "quiet" }, words.empty),
    );
  }

  store.subscribe((state, changed) => {
    if (["kit", "studio", "ends"].some((key) => changed.has(key))) show(state);
  });
  show(store.get());
}
