// The kit: its title, its tin of pans, and what can be done with them.

/** @import { AskPaper } from "./paper-dialog.js" */
/** @import { Kit, Paint, Shelf, State, Store } from "../state/types.js" */

import { LONGEST_TITLE } from "../../pkg/facts.js";
import { dabOf } from "../page/dab.js";
import { button, byId, element } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { demoKit } from "../state/demo.js";
import { endOf } from "../state/end.js";
import { paintsOf, retitle } from "../state/kit.js";
import { ENDS } from "../words/terms.js";
import * as words from "../words/tin.js";
import { codesOf } from "./codes.js";
import { editKit } from "./edit.js";
import { createPanEditor } from "./pan-editor.js";
import { createSettings } from "./tin-settings.js";

/**
 * Shows the tin; `choose` takes a paint as an end of the path, `showShelf` leads to the shelf.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {(paint: number) => void} choose
 * @param {AskPaper} askPaper
 * @param {() => void} showShelf
 */
export function attachTin(store, shelf, choose, askPaper, showShelf) {
  const frame = byId("tin");
  const packDemo = () => editKit(store, ({ id }) => ({ ...demoKit(shelf), id }), words.demoPacked);
  const settingsOf = createSettings(store, askPaper);
  const editorOf = createPanEditor(store, shelf, packDemo);

  /** @param {State} state */
  function show({ kit, ends, studio, editing }) {
    const codes = codesOf(paintsOf(kit).map((paint) => shelf.paint(paint)));
    /**
     * @param {number} paint
     * @param {number} size
     */
    const halfOf = (paint, size) =>
      halfPan(shelf.paint(paint), codes.get(paint) ?? "", endOf(ends, paint), dabOf(studio, paint, size), choose);
    remake(
      frame,
      heading(kit, (text) => editKit(store, (kit) => retitle(kit, text))),
      element(
        "ol",
        { class: "pans", "aria-label": words.pans },
        ...kit.pans.map((pan) => panOf(pan, halfOf)),
        ...gaps(kit),
      ),
      kit.pans.length === 0 ? emptyTin(showShelf, packDemo) : "",
      settingsOf(kit, editing),
      editing ? editorOf(kit) : "",
    );
  }

  store.subscribe((state, changed) => {
    if (["kit", "ends", "studio", "editing"].some((key) => changed.has(key))) show(state);
  });
  show(store.get());
}

/**
 * @param {Kit} kit
 * @param {(text: string) => void} retitled
 */
function heading(kit, retitled) {
  const input = element("input", {
    class: "title",
    "aria-label": words.title,
    placeholder: words.nameIt,
    maxlength: LONGEST_TITLE,
    "data-focus": "title",
    onchange: () => retitled(input.value),
  });
  input.value = kit.title;
  return element("div", { class: "heading" }, input, element("p", { class: "quiet" }, words.filled(kit)));
}

/**
 * A pan of one paint, or of two side by side.
 *
 * @param {number[]} pan
 * @param {(paint: number, size: number) => Node} halfOf
 */
const panOf = (pan, halfOf) =>
  pan.length > 1
    ? element("li", { class: "pan split" }, ...pan.map((paint) => halfOf(paint, 26)))
    : element("li", { class: "pan" }, ...pan.map((paint) => halfOf(paint, 38)));

/**
 * The button of a paint in its pan; `end` says whether it is A, 0, or B, 1, of the path.
 *
 * @param {Paint} paint
 * @param {string} shown
 * @param {number} end
 * @param {Node} dab
 * @param {(paint: number) => void} choose
 */
function halfPan(paint, shown, end, dab, choose) {
  const half = button("", () => choose(paint.number), {
    class: "paint",
    title: words.paint(paint),
    "data-focus": `pan-${paint.number}`,
    "aria-label": words.packedPaint(paint.name, shown, end),
    "data-end": ENDS[end],
  });
  half.append(dab, element("span", {}, ...brokenCode(shown)));
  return half;
}

/**
 * A code that breaks before its colon where there is no room: PB15:3.
 *
 * @param {string} code
 */
const brokenCode = (code) => code.split(/(?=:)/).flatMap((part, i) => (i ? [element("wbr"), part] : [part]));

/** @param {Kit} kit */
const gaps = ({ pans, capacity }) =>
  Array.from({ length: capacity - pans.length }, () => element("li", { class: "pan gap", "aria-hidden": "true" }));

/**
 * What to do about an empty tin.
 *
 * @param {() => void} showShelf
 * @param {() => void} packDemo
 */
const emptyTin = (showShelf, packDemo) =>
  element(
    "div",
    { class: "empty" },
    element("p", {}, words.empty),
    element(
      "div",
      { class: "verbs" },
      button(words.fromShelf, showShelf, { class: "main", "data-focus": "from-shelf" }),
      button(words.chooseForMe, () => byId("choose-open").click(), { "data-focus": "choose" }),
      button(words.demo, packDemo, { "data-focus": "demo" }),
    ),
  );
