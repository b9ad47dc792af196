// What belongs to the kit as a whole: its paper, how many pans its tin holds, and whether the pans are being edited.

import { MOST_PANS, PAPERS } from "../../pkg/facts.js";
import { button, element, say } from "../page/dom.js";
import { resize } from "../state/kit.js";
import * as words from "../words/tin.js";
import { editKit } from "./edit.js";

/** Answers the settings of a kit as a node. `askPaper` asks for the painter's own paper. */
export function createSettings(store, askPaper) {
  const paperAt = ({ paper, stock }) => (paper ? PAPERS.length : stock);

  const askOwn = () =>
    askPaper(store.get().studio.paper_hex(), (paper) => editKit(store, (kit) => ({ ...kit, paper }), words.onOwnPaper));

  function paperField(kit) {
    const names = [...PAPERS, kit.paper ? words.ownPaper : words.askOwnPaper];
    const select = element(
      "select",
      { "data-focus": "paper", onchange: () => repaper(select) },
      ...names.map((name, i) => element("option", { selected: i === paperAt(kit) }, name)),
    );
    return element("label", { class: "field" }, element("span", {}, words.paper), select);
  }

  /** One of the stocks, or the painter's own paper, which is asked for. */
  function repaper(select) {
    const stock = select.selectedIndex;
    if (stock < PAPERS.length) return editKit(store, (kit) => ({ ...kit, stock, paper: null }));
    // Until there is an answer the paper is what it was.
    select.selectedIndex = paperAt(store.get().kit);
    askOwn();
  }

  function capacityField(kit) {
    const input = element("input", {
      type: "number",
      min: Math.max(kit.pans.length, 1),
      max: MOST_PANS,
      inputmode: "numeric",
      "data-focus": "capacity",
      onchange: () => resized(input),
    });
    input.value = kit.capacity;
    return element("label", { class: "field" }, element("span", {}, words.holds), input);
  }

  function resized(input) {
    const { kit } = store.get();
    const wanted = Number(input.value);
    if (wanted < kit.pans.length) say(words.tooSmall(kit.pans.length));
    if (resize(kit, wanted) === kit) input.value = kit.capacity;
    else editKit(store, (kit) => resize(kit, wanted));
  }

  return (kit, editing) =>
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
