// A kit that came by a link, shown beside the painter's own.

/** @import { Context, KitContent, Shelf, State, Store } from "../state/types.js" */

import { PAPERS } from "../../pkg/facts.js";
import { briefList } from "../mix/brief.js";
import { dabOf } from "../page/dab.js";
import { button, byId, element, first, notice, say, UNDO } from "../page/dom.js";
import { indexOfKit, takeKit } from "../state/collection.js";
import { leaveGuest, packGuest, showGuest } from "../state/guest.js";
import { nameOf } from "../state/kit.js";
import { textOf } from "../state/link.js";
import { linkText } from "../state/link-text.js";
import * as words from "../words/guest.js";
import { nowYours, untitled } from "../words/terms.js";

/**
 * Shows a kit that came by a link beside the painter's own, and asks. Never replaces by itself.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Context} context
 * @param {(paint: number) => void} choose
 */
export function attachGuest(store, shelf, { core, numberOf, learn }, choose) {
  const frame = byId("guest");

  let turn = 0;

  async function receive() {
    const text = linkText(location.hash);
    if (text === null) return;
    // The link is taken off the address, so that a reload does not ask again.
    history.replaceState(null, "", location.href.split("#")[0]);
    turn += 1;
    const mine = turn;
    try {
      const found = core.decode_kit(text);
      const films = await learn(
        found.own.map(([, paint]) => paint),
        store.get().films,
      );
      if (mine !== turn) return;
      const brought = showGuest(store.get(), found, films, numberOf);
      const own = [...store.get().own, ...brought.visiting];
      const index = indexOfKit(store.get(), brought.guest, (kit) => textOf({ own }, core, kit));
      if (index >= 0) return tellKnown(index);
      store.change(brought);
      first(frame, "button.main").focus({ preventScroll: true });
      say(words.stands(brought.guest.pans.length));
    } catch (error) {
      notice(words.unreadable(error.message));
    }
  }

  /** @param {number} index */
  function tellKnown(index) {
    if (index === 0) return notice(words.alreadyInHand, { seconds: 6 });
    const name = nameOf(store.get().others[index - 1]);
    return notice(words.already(name), {
      actions: [[words.takeIt, () => store.set((state) => takeKit(state, index - 1))]],
      seconds: 12,
    });
  }

  /** @param {State} state */
  function show({ guest, kit }) {
    frame.hidden = !guest;
    if (!guest) return frame.replaceChildren();
    const asked = guest.brief ? [element("div", { class: "asked" }, ...briefList(guest.brief, store))] : [];
    frame.replaceChildren(
      element(
        "div",
        { class: "heading" },
        element("h2", { id: "guest-title" }, words.title),
        element(
          "div",
          { class: "verbs" },
          button(words.pack, take, { class: "main" }),
          button(words.keepMine, () => store.set(leaveGuest())),
        ),
      ),
      ...asked,
      element("div", { class: "side-by-side" }, tin(words.shared, guest), tin(words.yours, kit)),
    );
  }

  function take() {
    const mine = nameOf(store.get().kit);
    if (!store.set((state) => packGuest(state, shelf))) return;
    notice(nowYours(nameOf(store.get().kit), mine), { actions: [UNDO], seconds: 12 });
  }

  /**
   * @param {string} heading
   * @param {KitContent} kit
   */
  const tin = (heading, kit) =>
    element(
      "div",
      {},
      element("h3", {}, heading, " ", element("small", {}, kit.title || untitled)),
      element("p", { class: "quiet" }, words.tin(kit.pans.length, kit.capacity, PAPERS[kit.stock])),
      element("ul", { class: "chips" }, ...kit.pans.map((pan) => element("li", {}, ...pan.map(chip)))),
    );

  /** @param {number} paint */
  function chip(paint) {
    const known = shelf.paint(paint);
    const take = button("", () => choose(paint), { title: known.name, "aria-label": words.chooseIt(known) });
    take.append(dabOf(store.get().studio, paint, 24), element("span", {}, known.code));
    return take;
  }

  store.subscribe((state, changed) => (changed.has("guest") || (state.guest && changed.has("kit"))) && show(state));
  addEventListener("hashchange", receive);
  receive();
}
