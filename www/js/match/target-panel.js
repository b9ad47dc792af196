// The colour to be matched: typed, picked, taken from the mix, the wheel or a photo.

import { button, byId, element, say } from "../page/dom.js";
import { capital } from "../page/words.js";
import { isPair, pairOf } from "../state/end.js";
import { targetOf } from "../state/target.js";

/** Shows the target and the ways to set it. */
export function attachTarget(store, core) {
  const frame = byId("target");
  const text = element("input", {
    type: "text",
    id: "target-text",
    autocomplete: "off",
    spellcheck: "false",
    placeholder: "#7a8b5c, lab(50 10 20), lch(50 22 63)",
    "aria-describedby": "target-said",
    oninput: read,
  });
  const picker = element("input", {
    type: "color",
    "aria-label": "Pick a colour",
    oninput: () => {
      text.value = picker.value;
      read();
    },
  });
  const said = element("p", { id: "target-said", class: "quiet", role: "status" });
  const swatch = element("div", { class: "target-swatch", "aria-hidden": "true" });
  const mix = button("The mix at hand", takeMix);
  const wheel = button(
    "From the wheel",
    () => {
      const picking = !store.get().picking;
      store.set({ picking });
      say(picking ? "Point at the wheel: hue and chroma are taken from there, the value stays" : "Picking ended");
    },
    { title: "Then click the wheel: hue and chroma are taken from there, the value stays" },
  );
  const value = element("input", {
    type: "range",
    min: 5,
    max: 98,
    step: 1,
    "aria-label": "Value L*",
    oninput: () => {
      const { target } = store.get();
      if (target) store.set({ target: targetOf([Number(value.value), target.lab[1], target.lab[2]], "typed") });
    },
  });
  const valueSaid = element("output", {});
  frame.replaceChildren(
    element("h3", {}, "Colour to match"),
    element(
      "div",
      { class: "typed" },
      element("label", { class: "field" }, element("span", {}, "Type it, or pick"), text),
      element("label", { class: "field" }, element("span", {}, "Pick"), picker),
    ),
    swatch,
    said,
    element(
      "div",
      { class: "slider" },
      element("div", { class: "caption" }, element("span", {}, "Value L*"), valueSaid),
      value,
    ),
    element("div", { class: "verbs" }, mix, wheel),
  );

  function read() {
    if (!text.value.trim()) return store.set({ target: null });
    try {
      store.set({ target: targetOf(core.read_colour(text.value), "typed") });
    } catch (error) {
      said.textContent = `${error.message}.`;
    }
  }

  function takeMix() {
    const state = store.get();
    store.set({ target: targetOf(state.studio.lab_of(pairOf(state), state.share, state.load), "mix") });
  }

  function show(state) {
    const { target, studio, picking } = state;
    mix.disabled = !isPair(state);
    wheel.setAttribute("aria-pressed", String(Boolean(picking)));
    swatch.hidden = value.disabled = !target;
    valueSaid.textContent = target ? target.lab[0].toFixed(0) : "";
    if (!target) {
      said.textContent = "Then the kit’s recipes for it stand below.";
      return;
    }
    const seen = studio.colour(Float32Array.from(target.lab));
    swatch.style.setProperty("--wash", seen.css);
    value.value = String(target.lab[0]);
    const [l, a, b] = target.lab.map((part) => Math.round(part));
    said.textContent = `${capital(seen.words)}: L* ${l}, a* ${a}, b* ${b}${seen.exact ? "" : "; duller on this display than it is"}`;
    if (document.activeElement !== text) text.value = `lab(${l} ${a} ${b})`;
    if (document.activeElement !== picker) picker.value = core.hex_of(Float32Array.from(target.lab));
  }

  store.subscribe((state, changed) => {
    if (["target", "ends", "studio", "picking"].some((key) => changed.has(key))) show(state);
  });
  show(store.get());
}
