// What belongs to the kit as a whole: its paper, how many pans its tin holds, and whether the pans are being edited.

/** @import { AskPaper } from "./paper-dialog.js" */
/** @import { Kit, Store } from "../state/types.js" */

import { MOST_PANS, PAPERS } from "../../pkg/facts.js";
import { button, element, notice } from "../page/dom.js";
import { resize } from "../state/pans.js";
import * as words from "../words/tin.js";
import { editKit } from "./edit.js";

/**
 * Answers the settings of a kit as a node. `askPaper` asks for the painter's own paper.
 *
 * @param {Store} store
 * @param {AskPaper} askPaper
 */
export function createSettings(store, askPaper) {
  /** @param {Kit} kit */
  const paperAt = ({ paper, stock }) => (paper ? PAPERS.length : stock);

  const askOwn = () =>
    askPaper(store.get().studio.paper_hex(), (paper) => editKit(store, (kit) => ({ ...kit, paper }), words.onOwnPaper));

  /** @param {Kit} kit */
  function paperField(kit) {
    const names = [...PAPERS, kit.paper ? words.ownPaper : words.askOwnPaper];
    const select = element(
      "select",
      { "data-focus": "paper", onchange: () => repaper(select) },
      ...names.map((name, i) => element("option", { selected: i === paperAt(kit) }, name)),
    );
    return element("label", { class: "field" }, element("span", {}, words.paper), select);
  }

  /**
   * One of the stocks, or the painter's own paper, which is asked for.
   *
   * @param {HTMLSelectElement} select
   */
  function repaper(select) {
    const stock = select.selectedIndex;
    if (stock < PAPERS.length) return editKit(store, (kit) => ({ ...kit, stock, paper: null }));
    // Until there is an answer the paper is what it was.
    select.selectedIndex = paperAt(store.get().kit);
    askOwn();
  }

  /** @param {Kit} kit */
  function capacityField(kit) {
    const input = element("input", {
      type: "number",
      min: Math.max(kit.pans.length, 1),
      max: MOST_PANS,
      inputmode: "numeric",
      "data-focus": "capacity",
      onchange: () => resized(input),
    });
    input.value = String(kit.capacity);
    return element("label", { class: "field" }, element("span", {}, words.holds), input);
  }

  /** @param {HTMLInputElement} input */
  function resized(input) {
    const { kit } = store.get();
    const wanted = Number(input.value);
    if (wanted < kit.pans.length) notice(words.tooSmall(kit.pans.length), { seconds: 8 });
    else if (wanted > MOST_PANS) notice(words.tooLarge(MOST_PANS), { seconds: 8 });
    else if (resize(kit, wanted) !== kit) return editKit(store, (kit) => resize(kit, wanted));
    input.value = String(kit.capacity);
  }

  return (/** @type {Kit} */ kit, /** @type {boolean} */ editing) =>
    element(
      "div",
      { class: "settings" },
      paperField(kit),
      kit.paper && button(words.itsColour, askOwn, { "data-focus": "own-paper" }),
      capacityField(kit),
      button(editing ? words.done : words.editPans, () => store.set({ editing: !editing }), {
        "aria-expanded": String(editing),
        "data-focus": "edit",
      }),
    );
}
