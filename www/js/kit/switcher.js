// Several kits: one is in hand, the others wait; they are switched, copied, thrown away and compared.

/** @import { Ask, Patch, Shelf, State, Store } from "../state/types.js" */

import { question } from "../core/adviser.js";
import { button, byId, element, notice, say, UNDO } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { copyKit, startKit, takeKit, throwKit } from "../state/collection.js";
import { nameOf, paintsOf } from "../state/kit.js";
import * as words from "../words/kits.js";
import { comparison } from "./comparison.js";

/**
 * Shows the list of kits and its verbs.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Ask} ask
 */
export function attachKits(store, shelf, ask) {
  const frame = byId("kits");
  const dialog = byId("compare-dialog", HTMLDialogElement);

  /** @param {State} state */
  function show({ kit, others }) {
    const list = element(
      "select",
      { "aria-label": words.inHand, "data-focus": "kits", onchange: () => take(list.selectedIndex - 1) },
      ...[kit, ...others].map((each, i) => element("option", { selected: i === 0 }, nameOf(each))),
    );
    remake(
      frame,
      others.length ? list : "",
      button(words.start, () => act((state) => startKit(state, shelf), words.started), { "data-focus": "new" }),
      button(words.copy, () => act((state) => copyKit(state, shelf), words.copied), { "data-focus": "copy" }),
      others.length ? button(words.compare, compare, { "data-focus": "compare" }) : "",
      others.length ? button(words.throwAway, throwAway, { "data-focus": "throw" }) : "",
    );
  }

  /**
   * Does a verb, and says so.
   *
   * @param {(state: State) => Patch} verb
   * @param {string} word
   */
  const act = (verb, word) => store.set(verb) && say(word);

  /** @param {number} i */
  function take(i) {
    if (i >= 0) act((state) => takeKit(state, i), words.taken(nameOf(store.get().others[i])));
  }

  function throwAway() {
    const { kit } = store.get();
    store.set(throwKit);
    notice(words.thrownAway(nameOf(kit)), { actions: [UNDO], seconds: 8 });
  }

  async function compare() {
    const { others } = store.get();
    const list = element(
      "select",
      { "aria-label": words.compareWith, onchange: fill },
      ...others.map((each) => element("option", {}, nameOf(each))),
    );
    const body = element("div", { class: "comparison", role: "status" });
    byId("compare-body").replaceChildren(
      element("label", { class: "field" }, element("span", {}, words.compareWith), list),
      body,
    );
    dialog.showModal();
    await fill();

    async function fill() {
      const state = store.get();
      const other = state.others[list.selectedIndex];
      body.replaceChildren(element("p", { class: "quiet" }, words.comparing));
      try {
        const kits = [state.kit, other];
        const reports = await Promise.all(
          kits.map((kit) => (kit.pans.length ? ask("report", question({ kit })) : null)),
        );
        body.replaceChildren(
          ...comparison(kits, reports, shelf, state.studio),
          button(words.showReaches, () => {
            store.set({ reach: true, pinnedKit: paintsOf(other) });
            dialog.close();
          }),
        );
      } catch (error) {
        body.replaceChildren(element("p", { class: "quiet" }, words.failed(error.message)));
      }
    }
  }

  store.subscribe((state, changed) => (changed.has("kit") || changed.has("others")) && show(state));
  show(store.get());
}
