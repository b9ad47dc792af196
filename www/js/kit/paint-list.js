// A list of paints picked from the shelf one by one, each of which can be taken off again.

/** @import { Paint, Shelf } from "../state/types.js" */

import { button, element } from "../page/dom.js";
import * as words from "../words/choosing.js";
import { createPaintField } from "./paint-field.js";

/**
 * Fills `frame` with the list; `word` says what it is a list of. Answers `paints`, the numbers on it, and `clear`, which empties it.
 *
 * @param {HTMLElement} frame
 * @param {string} word
 * @param {Shelf} shelf
 */
export function createPaintList(frame, word, shelf) {
  /** @type {Set<number>} */
  const picked = new Set();

  /** The field is made anew with the list: what was typed has become a paint of it. */
  function show() {
    const field = createPaintField(word, shelf, row, { onpick: pick });
    frame.replaceChildren(field.node, ...[...picked].map(chip));
    return field;
  }

  const again = () => show().focus();

  /** @param {number} number */
  function chip(number) {
    const { name } = shelf.paint(number);
    return button(words.picked(name), () => drop(number), { "aria-label": words.takeOff(name) });
  }

  /** @param {number} number */
  function pick(number) {
    picked.add(number);
    again();
  }

  /** @param {number} number */
  function drop(number) {
    picked.delete(number);
    again();
  }

  return {
    paints: () => [...picked],
    clear() {
      picked.clear();
      show();
    },
  };
}

/** @param {Paint} paint */
const row = ({ name, code }) => [element("span", { class: "name" }, `${name} `, element("small", {}, code))];
