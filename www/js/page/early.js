// What is clicked or dropped before its part of the page is there, done once it is.

import { all } from "./dom.js";

/**
 * Whether files are dragged, and not a word of the page.
 *
 * @param {DragEvent} event
 */
export const holdsFiles = ({ dataTransfer }) => dataTransfer?.types.includes("Files") ?? false;

/**
 * Files as a drop or a field has them.
 *
 * @param {Iterable<File>} files
 */
export function holding(files) {
  const transfer = new DataTransfer();
  for (const file of files) transfer.items.add(file);
  return transfer;
}

/**
 * Keeps clicks on what is marked `data-soon`, which `main.js` attaches, or `data-later`, which `further.js` does; and
 * files that are dropped. Answers a verb for each mark, to be called once what bears it is attached: it does each once,
 * in their order, where it still stands.
 */
export function keepEarly() {
  const kept = new Set();
  /** @type {File[]} */
  let dropped = [];
  /** @param {Event} event */
  const keep = ({ target }) => {
    const control = target instanceof Element && target.closest("[data-soon], [data-later]");
    if (control) kept.add(control);
  };
  /**
   * Left to the browser, a file takes the page's place.
   *
   * @param {DragEvent} event
   */
  const hold = (event) => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    if (event.type === "drop") dropped = [...(event.dataTransfer?.files ?? [])];
  };
  /** @type {[string, (event: any) => void][]} */
  const early = [
    ["click", keep],
    ["dragover", hold],
    ["drop", hold],
  ];
  for (const [name, act] of early) document.addEventListener(name, act, true);
  /** @param {"soon" | "later"} mark */
  const click = (mark) => {
    for (const control of all(document, `[data-${mark}]`)) delete control.dataset[mark];
    for (const control of kept) {
      if (control.dataset.soon !== undefined || control.dataset.later !== undefined) continue;
      kept.delete(control);
      if (control.isConnected) control.click();
    }
  };
  return {
    doSoon: () => click("soon"),
    doLater() {
      for (const [name, act] of early) document.removeEventListener(name, act, true);
      click("later");
      if (dropped.length)
        document.body.dispatchEvent(new DragEvent("drop", { bubbles: true, dataTransfer: holding(dropped) }));
    },
  };
}
