// Undo and redo by button and by key.

/** @import { Store } from "./state/types.js" */

import { byId, notice } from "./page/dom.js";
import { createHistory } from "./state/history.js";
import { partStays } from "./words/start.js";

/**
 * Puts the buttons and keys to work.
 *
 * @param {Store} store
 */
export function attachHistory(store) {
  const [undo, redo] = [byId("undo", HTMLButtonElement), byId("redo", HTMLButtonElement)];
  const history = createHistory(store, show);
  /** @param {() => number} verb */
  const act = (verb) => {
    if (verb() > 0) notice(partStays, { seconds: 8 });
  };

  function show() {
    undo.disabled = !history.canUndo();
    redo.disabled = !history.canRedo();
  }

  undo.addEventListener("click", () => act(history.undo));
  redo.addEventListener("click", () => act(history.redo));
  document.addEventListener("keydown", (event) => {
    // In a text field the keys undo typing.
    if (
      !(event.ctrlKey || event.metaKey) ||
      (event.target instanceof Element && event.target.matches("input, textarea"))
    )
      return;
    const key = event.key.toLowerCase();
    if (key !== "z" && key !== "y") return;
    event.preventDefault();
    act(key === "y" || event.shiftKey ? history.redo : history.undo);
  });
}
