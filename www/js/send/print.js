// Sheets to print and to paint on: chosen in a dialog, looked at, printed or saved.

/** @import { Ask, Core, State, Store } from "../state/types.js" */

import { LOADS } from "../../pkg/facts.js";
import { all, byId, element } from "../page/dom.js";
import { fieldsOf } from "../page/form.js";
import { withLetters } from "../page/letters.js";
import { fileName, save } from "../page/save.js";
import { DEMO_LOAD } from "../state/demo.js";
import { isPair, pairOf } from "../state/end.js";
import { paperOf } from "../state/kit.js";
import * as words from "../words/print.js";
import { hostField, isHosted, linkOf } from "./host.js";
import { createProof, nodeOf } from "./print-proof.js";

/** Names of the pages' sizes in the style sheet, in the core's order. */
const PAGES = ["a4", "a5", "letter"];

/**
 * Opens the dialog; makes what is chosen anew with every choice.
 *
 * @param {Store} store
 * @param {Core} core
 * @param {Ask} ask
 */
export function attachPrint(store, core, ask) {
  const dialog = byId("print-dialog", HTMLDialogElement);
  const form = byId("print-form", HTMLFormElement);
  const field = fieldsOf(form);
  const proof = createProof();
  let asked = 0;

  // The form hears of every change, the address too.
  const hosting = hostField(() => {});
  const forCode = element("div", {}, hosting.node);
  field("code").closest("label").after(forCode);
  field("load").append(
    ...LOADS.map(([load, name]) => element("option", { value: load, selected: load === DEMO_LOAD }, name)),
  );

  const order = () => orderOf(field, store.get(), core);

  async function make() {
    asked += 1;
    const turn = asked;
    const what = field("what").value;
    for (const set of all(form, "[data-for]")) set.hidden = set.dataset.for !== what;
    forCode.hidden = !field("code").checked;
    if (what === "pair" && !isPair(store.get())) return proof.refuse(words.noPair);
    try {
      const pages = await ask("print", order());
      if (turn === asked) proof.show(pages, field("what").selectedOptions[0].text);
    } catch (error) {
      if (turn === asked) proof.refuse(error.message);
    }
  }

  /**
   * @param {string | Promise<BlobPart>} made
   * @param {string} ending
   * @param {string} type
   */
  async function saveAs(made, ending, type) {
    const name = fileName(store.get().kit.title, field("what").value) + ending;
    try {
      save(await made, name, type);
    } catch (error) {
      proof.refuse(error.message);
    }
  }

  function saveSvg() {
    const { page, index } = proof.page();
    saveAs(withLetters(page), proof.pages().length > 1 ? `-${index + 1}.svg` : ".svg", "image/svg+xml");
  }

  byId("print").addEventListener("click", () => {
    hosting.show();
    dialog.showModal();
    make();
  });
  form.addEventListener("change", make);
  form.addEventListener("submit", (event) => event.preventDefault());
  byId("print-close").addEventListener("click", () => dialog.close());
  byId("print-svg").addEventListener("click", saveSvg);
  byId("print-pdf").addEventListener("click", () => saveAs(ask("printPdf", order()), ".pdf", "application/pdf"));
  byId("print-now").addEventListener("click", () => printPages(proof.pages(), field));
  addEventListener("afterprint", clear);
}

/**
 * What the core is asked for: what the form says, of the kit and the pair at hand.
 *
 * @param {(name: string) => any} field
 * @param {State} state
 * @param {Core} core
 */
function orderOf(field, state, core) {
  const { kit, laid, ends } = state;
  return {
    what: field("what").value,
    title: kit.title,
    date: words.date(),
    format: Number(field("format").value),
    landscape: Boolean(field("landscape").value),
    outlines: Boolean(field("outlines").value),
    paper: paperOf(kit),
    capacity: kit.capacity,
    pans: kit.pans,
    pair: pairOf({ laid, ends }),
    load: Number(field("load").value),
    strips: field("strips").checked,
    labels: [field("half").checked, field("full").checked],
    link: field("code").checked && isHosted() ? linkOf(state, core) : null,
  };
}

/**
 * Prints these pages instead of what is on the screen.
 *
 * @param {string[]} pages
 * @param {(name: string) => any} field
 */
function printPages(pages, field) {
  document.body.dataset.printing = PAGES[Number(field("format").value)] + (field("landscape").value ? "-side" : "");
  byId("print-root").replaceChildren(...pages.map(nodeOf));
  print();
}

function clear() {
  delete document.body.dataset.printing;
  byId("print-root").replaceChildren();
}
