// The preview in the dialog for printing: the pages that were made, one at a time, or why there are none.

import { byId, element } from "../page/dom.js";
import { sentence } from "../words/form.js";
import * as words from "../words/print.js";

/**
 * An SVG document of the core as an element: parsed as XML, so that no text in it is ever markup.
 *
 * @param {string} svg
 */
export const nodeOf = (svg) =>
  document.importNode(new DOMParser().parseFromString(svg, "image/svg+xml").documentElement, true);

/** Answers `show`, which takes pages and what they are called, `refuse`, which takes a reason, and what is shown of them. */
export function createProof() {
  const frame = byId("print-proof");
  const said = byId("print-said");
  const [back, on] = ["print-back", "print-on"].map((id) => byId(id, HTMLButtonElement));
  const verbs = ["print-now", "print-pdf", "print-svg"].map((id) => byId(id, HTMLButtonElement));
  /** @type {string[]} */
  let pages = [];
  let title = "";
  let shown = 0;

  /**
   * @param {string[]} made
   * @param {string} called
   */
  function show(made, called) {
    pages = made;
    title = called;
    turnTo(0);
    for (const verb of verbs) verb.disabled = false;
  }

  /** @param {number} index */
  function turnTo(index) {
    shown = Math.min(Math.max(index, 0), pages.length - 1);
    frame.replaceChildren(nodeOf(pages[shown]));
    frame.setAttribute("aria-label", words.preview(title, shown + 1));
    said.textContent = pages.length === 1 ? words.onePage : words.pageOf(shown + 1, pages.length);
    back.disabled = shown === 0;
    on.disabled = shown === pages.length - 1;
  }

  /** @param {string} reason */
  function refuse(reason) {
    pages = [];
    frame.replaceChildren(element("p", { class: "fault" }, sentence(reason)));
    frame.setAttribute("aria-label", words.noPreview);
    said.textContent = words.nothing;
    for (const verb of [...verbs, back, on]) verb.disabled = true;
  }

  back.addEventListener("click", () => turnTo(shown - 1));
  on.addEventListener("click", () => turnTo(shown + 1));
  return {
    show,
    refuse,
    pages: () => pages,
    /** The page in sight, and which of the pages it is. */
    page: () => ({ page: pages[shown], index: shown }),
  };
}
