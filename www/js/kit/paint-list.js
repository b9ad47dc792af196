// A list of paints picked from the shelf one by one, each of which can be taken off again.

/** @import { Shelf } from "../state/types.js" */

import { button, element, first } from "../page/dom.js";
import * as words from "../words/choosing.js";

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

  function show() {
    const rest = shelf.all.filter(({ number }) => !picked.has(number));
    const select = element(
      "select",
      { "aria-label": word, onchange: () => pick(select.value) },
      element("option", { value: "" }, words.pick(word)),
      ...rest.map(({ number, name, code }) => element("option", { value: number }, `${name} ${code}`)),
    );
    frame.replaceChildren(select, ...[...picked].map(chip));
  }

  /** @param {number} number */
  function chip(number) {
    const { name } = shelf.paint(number);
    return button(words.picked(name), () => drop(number), { "aria-label": words.takeOff(name) });
  }

  /** @param {string} value */
  function pick(value) {
    if (value) picked.add(Number(value));
    show();
    first(frame, "select").focus();
  }

  /** @param {number} number */
  function drop(number) {
    picked.delete(number);
    show();
  }

  return {
    paints: () => [...picked],
    clear() {
      picked.clear();
      show();
    },
  };
}
