// The paints of a pan, each a button that opens a field to change it.

/** @import { Kit, Paint, Shelf, Store } from "../state/types.js" */

import { dabOf } from "../page/dab.js";
import { all, button, element, notice, UNDO } from "../page/dom.js";
import { isFull, part, refill } from "../state/pans.js";
import * as words from "../words/tin.js";
import { editKit } from "./edit.js";
import { createPaintField } from "./paint-field.js";

/**
 * Answers what makes the paints of a pan, the second of which may be missing, as a node.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 */
export function createHalves(store, shelf) {
  const openFilling = createFilling(store, shelf, named);

  /** @param {Paint} paint */
  function named({ number, name, code }) {
    const dab = dabOf(store.get().studio, number, 26);
    return [dab, element("span", { class: "name" }, `${name} `, element("small", {}, code))];
  }

  /**
   * @param {number[][]} pans
   * @param {number} i
   * @param {number} half
   */
  function halfOf(pans, i, half) {
    const paint = shelf.get(pans[i][half]);
    const verb = button("", () => openFilling(verb, i, half), {
      class: paint ? "half" : "half small",
      "aria-label": paint ? words.change(paint) : words.putBeside(shelf.paint(pans[i][0]).name),
      "aria-expanded": "false",
      "data-focus": `half-${i}-${half}`,
    });
    verb.append(...(paint ? named(paint) : ["+"]));
    return verb;
  }

  return (/** @type {Kit} */ { pans }, /** @type {number} */ i) => {
    const packed = pans.flat();
    const isTwice = pans[i].some((paint) => packed.filter((other) => other === paint).length > 1);
    return element(
      "div",
      { class: "halves" },
      ...[0, 1].map((half) => halfOf(pans, i, half)),
      isTwice && element("small", { class: "twice" }, words.twice),
    );
  };
}

/**
 * Answers a verb that opens the field for a half of a pan below its row, or closes it; one is open at a time.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {(paint: Paint) => Node[]} named
 */
function createFilling(store, shelf, named) {
  /**
   * @param {HTMLElement} verb
   * @param {number} i
   * @param {number} half
   */
  function toggle(verb, i, half) {
    const isOpen = verb.getAttribute("aria-expanded") === "true";
    const editor = verb.closest(".editor");
    if (!editor) return;
    for (const other of all(editor, ".half")) other.setAttribute("aria-expanded", "false");
    editor.querySelector(".filling")?.remove();
    if (isOpen) return;
    verb.setAttribute("aria-expanded", "true");
    const { kit } = store.get();
    const field = createPaintField(words.find(i + 1), shelf, (paint) => offer(paint, kit), {
      /** @param {number} paint */
      onpick(paint) {
        // What is typed counts as taken once the field is left.
        verb.focus();
        fill(i, half, paint);
      },
      onleave() {
        toggle(verb, i, half);
        verb.focus();
      },
    });
    verb.closest("li")?.append(element("div", { class: "filling" }, field.node, split(kit, i, half)));
    field.focus();
  }

  /**
   * @param {Paint} paint
   * @param {Kit} kit
   */
  const offer = (paint, kit) => [
    ...named(paint),
    ...(kit.pans.flat().includes(paint.number) ? [element("small", {}, words.offerPacked)] : []),
  ];

  /**
   * What else can be done about a half of a split pan.
   *
   * @param {Kit} kit
   * @param {number} i
   * @param {number} half
   */
  function split(kit, i, half) {
    if (kit.pans[i].length < 2) return null;
    const out = () => editKit(store, (kit) => refill(kit, i, [kit.pans[i][1 - half]]), words.takenOut);
    const apart = () => editKit(store, (kit) => part(kit, i), words.apart);
    return element(
      "div",
      { class: "verbs" },
      button(words.takeOut, out),
      button(words.giveEach, apart, { disabled: isFull(kit) }),
    );
  }

  /**
   * Puts a paint in a half of a pan. One that is in another pan already is packed twice, which may be meant: it is said.
   *
   * @param {number} i
   * @param {number} half
   * @param {number} paint
   */
  function fill(i, half, paint) {
    const { pans } = store.get().kit;
    const { name } = shelf.paint(paint);
    if (pans[i][half] === paint) return;
    const other = pans[i][1 - half];
    if (other === paint) return notice(words.inThisPan(name), { seconds: 6 });
    const paints = (half === 0 ? [paint, other] : [other, paint]).filter((one) => one !== undefined);
    const elsewhere = pans.findIndex((pan, j) => j !== i && pan.includes(paint));
    editKit(store, (kit) => refill(kit, i, paints), words.nowPacked(name));
    if (elsewhere < 0) return;
    const where = [elsewhere + 1, i + 1].sort((a, b) => a - b);
    notice(words.nowTwice(name, where), { actions: [UNDO], seconds: 10 });
  }

  return toggle;
}
