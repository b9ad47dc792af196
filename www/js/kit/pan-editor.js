// Editing the pans of the kit: what fills each, in which order they lie, and emptying them all.

/** @import { Kit, Paint, Shelf, Store } from "../state/types.js" */

import { button, element } from "../page/dom.js";
import { emptyKit } from "../state/kit.js";
import { join, mayJoin, move, remove } from "../state/pans.js";
import * as words from "../words/tin.js";
import { attachDrag } from "./drag-rows.js";
import { editKit } from "./edit.js";
import { createHalves } from "./pan-halves.js";

/**
 * Places that an arrow key moves a pan by.
 *
 * @type {{ [key: string]: number }}
 */
const STEPS = { ArrowUp: -1, ArrowDown: 1 };

/**
 * Answers the editor of a kit as a node. It is large: it is made anew only where the kit or the shelf is another.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {() => void} packDemo
 */
export function createPanEditor(store, shelf, packDemo) {
  const halvesOf = createHalves(store, shelf);
  /** @type {{ kit: Kit, all: Paint[], node: HTMLElement } | null} */
  let made = null;
  return (/** @type {Kit} */ kit) => {
    if (made?.kit !== kit || made.all !== shelf.all) made = { kit, all: shelf.all, node: editorOf(kit) };
    return made.node;
  };

  /** @param {Kit} kit */
  function editorOf(kit) {
    const list = element("ol", { class: "rows" });
    list.append(...kit.pans.map((_, i) => rowOf(kit, i, list)));
    return element(
      "div",
      { class: "editor" },
      element("p", { class: "quiet" }, words.drag),
      list,
      element(
        "div",
        { class: "verbs" },
        button(words.emptyIt, () => editKit(store, emptied, words.emptied), { disabled: kit.pans.length === 0 }),
        button(words.demo, packDemo),
      ),
    );
  }

  /**
   * @param {Kit} kit
   * @param {number} i
   * @param {HTMLElement} list
   */
  function rowOf(kit, i, list) {
    const pan = kit.pans[i];
    const name = words.pan(pan.map((paint) => shelf.paint(paint).name));
    /**
     * @param {string} word
     * @param {string} sign
     * @param {(kit: Kit) => Kit} change
     * @param {string} done
     * @param {boolean} [disabled]
     */
    const verb = (word, sign, change, done, disabled = false) =>
      button(sign, () => editKit(store, change, done), {
        disabled,
        class: "small",
        "aria-label": words.verbOf(word, name),
        "data-focus": `${word}-${pan.join("-")}`,
      });
    return element(
      "li",
      {},
      gripOf(i, name, list),
      halvesOf(kit, i),
      element(
        "div",
        { class: "verbs" },
        verb(words.earlier, "↑", (kit) => move(kit, i, -1), words.movedEarlier(name), i === 0),
        verb(words.later, "↓", (kit) => move(kit, i, 1), words.movedLater(name), i === kit.pans.length - 1),
        verb(words.remove, "×", (kit) => remove(kit, i), words.removed(name)),
      ),
    );
  }

  /**
   * What a pan is dragged by; with it in focus, the arrow keys move the pan.
   *
   * @param {number} i
   * @param {string} name
   * @param {HTMLElement} list
   */
  function gripOf(i, name, list) {
    const grip = button("", () => {}, {
      class: "grip",
      title: words.grip,
      "aria-label": words.gripOf(name),
      "data-focus": `grip-${store.get().kit.pans[i].join("-")}`,
      /** @param {KeyboardEvent} event */
      onkeydown: (event) => {
        const by = STEPS[event.key];
        if (!by) return;
        event.preventDefault();
        editKit(store, (kit) => move(kit, i, by), by < 0 ? words.movedEarlier(name) : words.movedLater(name));
      },
    });
    attachDrag(
      grip,
      list,
      (from, onto) => mayJoin(store.get().kit, from, onto),
      ({ from, to = from, onto }) => {
        if (onto === undefined) editKit(store, (kit) => move(kit, from, to - from), words.moved(name));
        else editKit(store, (kit) => join(kit, from, onto), words.shares(name));
      },
    );
    return grip;
  }
}

/**
 * Of the kit only its title, tin and paper stay.
 *
 * @param {Kit} kit
 */
const emptied = ({ id, title, capacity, stock, paper }) => ({ ...emptyKit(title), id, capacity, stock, paper });
