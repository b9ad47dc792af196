// Sheets to print and to paint on: chosen in a dialog, looked at, printed or saved.

import { byId, element } from "../page/dom.js";
import { withLetters } from "../page/letters.js";
import { fileName, save } from "../page/save.js";
import { capital, LOADS } from "../page/words.js";
import { DEMO_LOAD } from "../state/demo.js";
import { isPair, pairOf } from "../state/end.js";
import { paperOf } from "../state/kit.js";
import { hostField, isHosted, linkOf } from "./host.js";

/** Names of the pages' sizes in the style sheet, in the core's order. */
const PAGES = ["a4", "a5", "letter"];

/** Opens the dialog; makes what is chosen anew with every choice. */
export function attachPrint(store, core, ask) {
  const dialog = byId("print-dialog");
  const form = byId("print-form");
  const field = (name) => form.elements.namedItem(name);
  const proof = byId("print-proof");
  const said = byId("print-said");
  const verbs = ["print-now", "print-pdf", "print-svg"].map(byId);
  let pages = [];
  let shown = 0;
  let asked = 0;

  // The form hears of every change, the address too.
  const hosting = hostField(() => {});
  const forCode = element("div", {}, hosting.node);
  field("code").closest("label").after(forCode);
  field("load").append(
    ...LOADS.map(([load, name]) => element("option", { value: load, selected: load === DEMO_LOAD }, name)),
  );

  byId("print").addEventListener("click", () => {
    hosting.show();
    dialog.showModal();
    make();
  });
  form.addEventListener("change", make);
  form.addEventListener("submit", (event) => event.preventDefault());
  byId("print-close").addEventListener("click", () => dialog.close());
  byId("print-back").addEventListener("click", () => turn(-1));
  byId("print-on").addEventListener("click", () => turn(1));
  byId("print-svg").addEventListener("click", () =>
    saveAs(withLetters(pages[shown]), pages.length > 1 ? `-${shown + 1}.svg` : ".svg", "image/svg+xml"),
  );
  byId("print-pdf").addEventListener("click", () => saveAs(ask("printPdf", wanted()), ".pdf", "application/pdf"));
  byId("print-now").addEventListener("click", printPages);
  addEventListener("afterprint", clear);

  async function saveAs(made, ending, type) {
    const name = fileName(store.get().kit.title, field("what").value) + ending;
    try {
      save(await made, name, type);
    } catch (error) {
      refuse(error.message);
    }
  }

  /** What the core is asked for. */
  function wanted() {
    const { kit, laid, ends } = store.get();
    return {
      what: field("what").value,
      title: kit.title,
      date: new Date().toLocaleDateString("en-GB", { dateStyle: "long" }),
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
      link: field("code").checked && isHosted() ? linkOf(store.get(), core) : null,
    };
  }

  async function make() {
    asked += 1;
    const turnOf = asked;
    const what = field("what").value;
    for (const set of form.querySelectorAll("[data-for]")) set.hidden = set.dataset.for !== what;
    forCode.hidden = !field("code").checked;
    if (what === "pair" && !isPair(store.get())) return refuse("choose two ends, A and B, first");
    try {
      const made = await ask("print", wanted());
      if (turnOf !== asked) return;
      pages = made;
      shown = 0;
      show();
      for (const verb of verbs) verb.disabled = false;
    } catch (error) {
      if (turnOf === asked) refuse(error.message);
    }
  }

  function show() {
    proof.replaceChildren(nodeOf(pages[shown]));
    const title = field("what").selectedOptions[0].text;
    proof.setAttribute("aria-label", `Preview of ${title}, page ${shown + 1}`);
    said.textContent = pages.length === 1 ? "1 page" : `Page ${shown + 1} of ${pages.length}`;
    byId("print-back").disabled = shown === 0;
    byId("print-on").disabled = shown === pages.length - 1;
  }

  function turn(by) {
    shown = Math.min(Math.max(shown + by, 0), pages.length - 1);
    show();
  }

  function refuse(reason) {
    pages = [];
    proof.replaceChildren(element("p", { class: "fault" }, `${capital(reason)}.`));
    proof.setAttribute("aria-label", "No preview");
    said.textContent = "Nothing to print yet";
    for (const verb of [...verbs, byId("print-back"), byId("print-on")]) verb.disabled = true;
  }

  function printPages() {
    document.body.dataset.printing = PAGES[Number(field("format").value)] + (field("landscape").value ? "-side" : "");
    byId("print-root").replaceChildren(...pages.map(nodeOf));
    print();
  }

  function clear() {
    delete document.body.dataset.printing;
    byId("print-root").replaceChildren();
  }
}

/** An SVG document of the core as an element: parsed as XML, so that no text in it is ever markup. */
function nodeOf(svg) {
  return document.importNode(new DOMParser().parseFromString(svg, "image/svg+xml").documentElement, true);
}
