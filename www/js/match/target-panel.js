// The colour to be matched: typed, picked, taken from the mix, the wheel or a photo.

/** @import { Core, State, Store, Target } from "../state/types.js" */

import { button, byId, element, say } from "../page/dom.js";
import { isPair, pairOf } from "../state/end.js";
import { targetOf } from "../state/target.js";
import { sentence } from "../words/form.js";
import * as words from "../words/target.js";

/**
 * Shows the target and the ways to set it.
 *
 * @param {Store} store
 * @param {Core} core
 */
export function attachTarget(store, core) {
  const typed = createTyped(core, read);
  const swatch = element("div", { class: "target-swatch", "aria-hidden": "true" });
  const said = element("p", { id: "target-said", class: "quiet", role: "status" });
  const value = createValue(revalue);
  const mix = button(words.mix, takeMix);
  const wheel = button(words.wheel, point, { title: words.wheelTitle });
  byId("target").replaceChildren(
    element("h3", {}, words.title),
    typed.node,
    swatch,
    said,
    value.node,
    element("div", { class: "verbs" }, mix, wheel),
  );

  /** @param {string} text */
  function read(text) {
    if (!text.trim()) return store.set({ target: null });
    try {
      store.set({ target: targetOf(core.read_colour(text), "typed") });
    } catch (error) {
      said.textContent = sentence(error.message);
    }
  }

  /** @param {number} lightness */
  function revalue(lightness) {
    const { target } = store.get();
    if (target) store.set({ target: targetOf([lightness, target.lab[1], target.lab[2]], "typed") });
  }

  function takeMix() {
    const state = store.get();
    store.set({ target: targetOf(state.studio.lab_of(pairOf(state), state.share, state.load), "mix") });
  }

  function point() {
    const picking = !store.get().picking;
    store.set({ picking });
    // Where one of them is beyond the window: the wheel while it is asked, then what it answered.
    if (picking) byId("wheel").scrollIntoView({ block: "nearest" });
    say(picking ? words.pointing : words.pointed);
  }

  /** @param {State} state */
  function show(state) {
    const { target, studio, picking } = state;
    mix.disabled = !isPair(state);
    wheel.setAttribute("aria-pressed", String(Boolean(picking)));
    swatch.classList.toggle("blank", !target);
    value.show(target);
    if (!target) {
      said.textContent = words.empty;
      return;
    }
    const seen = studio.colour(Float32Array.from(target.lab));
    swatch.style.setProperty("--wash", seen.css);
    said.textContent = words.is(seen.words, target.lab, seen.exact);
    typed.show(target);
  }

  store.subscribe((state, changed) => {
    if (["target", "ends", "studio", "picking"].some((key) => changed.has(key))) show(state);
    if (changed.has("picking") && changed.has("target")) byId("target").scrollIntoView({ block: "nearest" });
  });
  show(store.get());
}

/** @param {Target} target */
const rounded = ({ lab }) => lab.map((part) => Math.round(part));

/**
 * The field for a colour as text, and the browser's own picker beside it; `read` hears the text of either.
 *
 * @param {Core} core
 * @param {(text: string) => void} read
 */
function createTyped(core, read) {
  const text = element("input", {
    type: "text",
    id: "target-text",
    autocomplete: "off",
    spellcheck: "false",
    placeholder: words.example,
    "aria-describedby": "target-said",
    oninput: () => read(text.value),
  });
  const picker = element("input", {
    type: "color",
    "aria-label": words.pickColour,
    // Grey until a colour is known: an empty picker is black.
    value: "#808080",
    oninput: () => {
      text.value = picker.value;
      read(text.value);
    },
  });
  return {
    node: element(
      "div",
      { class: "typed" },
      element("label", { class: "field" }, element("span", {}, words.type), text),
      element("label", { class: "field" }, element("span", {}, words.pick), picker),
    ),
    /**
     * Puts the target into the fields, but not into the one that is being used.
     *
     * @param {Target} target
     */
    show(target) {
      if (document.activeElement !== text) text.value = `lab(${rounded(target).join(" ")})`;
      if (document.activeElement !== picker) picker.value = core.hex_of(Float32Array.from(target.lab));
    },
  };
}

/**
 * The slider for the target's lightness; `onvalue` hears of another.
 *
 * @param {(lightness: number) => void} onvalue
 */
function createValue(onvalue) {
  const input = element("input", {
    type: "range",
    min: 5,
    max: 98,
    step: 1,
    "aria-label": words.value,
    oninput: () => onvalue(Number(input.value)),
  });
  const said = element("output", {});
  return {
    node: element(
      "div",
      { class: "slider" },
      element("div", { class: "caption" }, element("span", {}, words.value), said),
      input,
    ),
    /** @param {Target | null} target */
    show(target) {
      input.disabled = !target;
      if (target) input.value = String(target.lab[0]);
      said.textContent = target ? words.lightness(target.lab[0]) : "";
    },
  };
}
