// The painter's own paper, given by its colour.

/** @import { Core } from "../state/types.js" */

/** @typedef {(hex: string, handOn: (lab: number[]) => void) => void} AskPaper asks for a paper, beginning with the colour at hand */

import { byId } from "../page/dom.js";
import { sentence } from "../words/form.js";
import { paperColour } from "../words/tin.js";

/**
 * Answers a verb that asks for a paper's colour and hands it on as [L*, a*, b*].
 *
 * @param {Core} core
 */
export function createPaperDialog(core) {
  const dialog = byId("paper-dialog", HTMLDialogElement);
  const text = byId("paper-colour", HTMLInputElement);
  const picker = byId("paper-picker", HTMLInputElement);
  const said = byId("paper-said");
  const use = byId("paper-use", HTMLButtonElement);
  /** @type {number[] | null} */
  let found = null;
  /** @type {(lab: number[]) => void} */
  let onuse = () => {};

  function read() {
    try {
      const lab = [...core.read_paper(text.value)];
      found = lab;
      said.textContent = paperColour(lab);
    } catch (error) {
      found = null;
      said.textContent = text.value.trim() ? sentence(error.message) : "";
    }
    use.disabled = !found;
  }

  text.addEventListener("input", read);
  picker.addEventListener("input", () => {
    text.value = picker.value;
    read();
  });
  // At once, not when the dialog has closed: that is told a moment later.
  dialog.addEventListener("submit", () => found && onuse(found));
  byId("paper-cancel").addEventListener("click", () => dialog.close());

  /** @type {AskPaper} */
  const open = (hex, handOn) => {
    onuse = handOn;
    text.value = picker.value = hex;
    read();
    dialog.showModal();
    text.select();
  };
  return open;
}
