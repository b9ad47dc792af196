// A colour that was seen: typed, picked, taken from the target, or read from a meter's file.

/** @import { Ask, Core, State, Store } from "../state/types.js" */

import { button, element } from "../page/dom.js";
import { labelled } from "../page/form.js";
import { sentence } from "../words/form.js";
import * as words from "../words/record.js";
import { createMeterFile } from "./meter-file.js";

/**
 * A field for what a swatch looked like. `onchange` hears of it as L*, a*, b* or 36 reflectances, or of nothing.
 *
 * @param {{ id: string, name: string }} which
 * @param {{ store: Store, core: Core, ask: Ask }} what
 * @param {(seen: number[] | null) => void} onchange
 */
export function seenField({ id, name }, { store, core, ask }, onchange) {
  /** @type {number[] | null} */
  let found = null;
  const text = element("input", {
    type: "text",
    autocomplete: "off",
    spellcheck: "false",
    placeholder: words.example,
    oninput: read,
  });
  const picker = element("input", {
    type: "color",
    value: "#808080",
    "aria-label": words.pickOf(name),
    oninput: () => {
      text.value = picker.value;
      read();
    },
  });
  const said = element("p", { class: "quiet", role: "status" });
  const target = button(words.asInMatch, () => put(store.get().target?.lab ?? null, words.fromMatch), {
    title: words.asInMatchTitle,
  });
  const file = createMeterFile(`file-${id}`, ask, {
    put,
    said,
    failed: (error) => tell(found, words.unreadable(error.message)),
  });
  const node = element(
    "div",
    { class: "seen" },
    element("div", { class: "typed" }, labelled(name, text), labelled(words.pick, picker)),
    element("div", { class: "verbs" }, target, ...file.nodes),
    said,
  );

  function read() {
    file.hideSamples();
    if (!text.value.trim()) return tell(null, "");
    try {
      tell([...core.read_colour(text.value)], "");
    } catch (error) {
      tell(null, sentence(error.message));
    }
  }

  /**
   * @param {number[] | null} seen
   * @param {string} word
   */
  function tell(seen, word) {
    found = seen;
    said.textContent = word;
    onchange(seen);
  }

  /**
   * @param {number[] | null} seen
   * @param {string} [word]
   */
  function put(seen, word = "") {
    const lab = seen && labOf(seen, core);
    text.value = lab ? `lab(${lab.map((value) => Math.round(value)).join(" ")})` : "";
    if (lab) picker.value = core.hex_of(Float32Array.from(lab));
    tell(seen ? [...seen] : null, seen?.length === 36 ? words.spectrum : word);
  }

  /** @param {State} state */
  const show = (state) => (target.disabled = !state.target);
  store.subscribe((state, changed) => changed.has("target") && show(state));
  show(store.get());
  /**
   * What the picker starts from while nothing is seen.
   *
   * @param {string} css
   */
  const start = (css) => {
    if (!found) picker.value = css;
  };
  return { node, start, get: () => found, put };
}

/**
 * L*, a*, b* of what was seen.
 *
 * @returns {number[]}
 *
 * @param {number[]} seen
 * @param {Core} core
 */
export const labOf = (seen, core) => (seen.length === 36 ? [...core.lab_of_seen(Float32Array.from(seen))] : [...seen]);
