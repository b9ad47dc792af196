// The mix at hand: its two ends, its colour, its ratio and load.

import { dabOf } from "./dab.js";
import { button, byId, element } from "./dom.js";
import { crossingSentence, grade, loadName, recipe, strengthOf } from "./words.js";

const RAMP = 41;

/** Shows the ends, the mix and what to know of the paints. */
export function attachMix(store, shelf) {
  const readout = createReadout(store, shelf);
  byId("readout").replaceChildren(readout.node);
  const show = (state, changed) => {
    const touched = (...keys) => !changed || keys.some((key) => changed.has(key));
    if (touched("ends", "next", "studio")) showEnds(store, shelf);
    if (touched("ends", "studio")) byId("about").replaceChildren(...about(state, shelf));
    if (touched("ends", "studio", "share", "load")) readout.show(state, touched("ends", "studio", "load"));
  };
  store.subscribe(show);
  show(store.get());
}

function showEnds(store, shelf) {
  const { ends, next, studio } = store.get();
  const choices = ends.map((_, end) =>
    button("", () => store.set({ next: end }), { class: "end", "aria-pressed": String(next === end) }));
  choices.forEach((choice, end) => {
    const known = shelf.get(ends[end]);
    choice.append(
      element("span", { class: "letter" }, "AB"[end]),
      known ? dabOf(studio, known.number, 36) : element("span", { class: "dab blank" }),
      element("span", { class: "name" }, known ? known.name : "Choose a paint", element("small", {}, known ? known.code : "on the wheel or in a list")),
      element("span", { class: "next" }, next === end ? "next" : ""),
    );
  });
  const swap = button("Swap", () => {
    const { ends: [a, b], share } = store.get();
    store.set({ ends: [b, a], share: 1 - share });
  }, { class: "swap", "aria-label": "Swap A and B" });
  const focused = [...byId("ends").children].indexOf(document.activeElement);
  byId("ends").replaceChildren(...choices, swap);
  if (focused >= 0) byId("ends").children[focused].focus();
}

function createReadout(store, shelf) {
  const swatch = element("div", { class: "wash" });
  const words = element("p", { class: "words", role: "status" });
  const parts = element("p", { class: "parts" });
  const numbers = element("dl", { class: "numbers" });
  const crossing = element("p", { class: "crossing" });
  const ratio = slider("Ratio", { max: 1000 }, (value) => store.set({ share: store.get().studio.share_of(value / 1000) }));
  const load = slider("Load", { max: 500 }, (value) => store.set({ load: 2 ** (value / 100 - 5) }));
  const filled = [swatch, words, parts, ratio.node, load.node, numbers, crossing];
  const empty = element("p", { class: "empty" }, "Choose two paints to see every mix of them: click them on the wheel, in the kit or on the shelf.");
  const node = element("div", {}, empty, ...filled);

  function show({ studio, ends, share, load: amount }, pathChanged) {
    const [a, b] = ends.map((end) => shelf.get(end));
    const ready = Boolean(a && b);
    empty.hidden = ready;
    filled.forEach((part) => (part.hidden = !ready));
    if (!ready) return;
    const mix = studio.mix(a.number, b.number, share, amount);
    swatch.style.setProperty("--wash", mix.swatch.css);
    words.textContent = mix.swatch.words;
    parts.textContent = recipe(mix.parts, a, b);
    ratio.show(studio.position_of(share) * 1000, mix.parts.join(" : "), recipe(mix.parts, a, b));
    load.show((Math.log2(amount) + 5) * 100, `${loadName(amount)}`, loadName(amount));
    numbers.replaceChildren(
      ...number("Value L*", mix.swatch.lightness.toFixed(0)),
      ...number("Chroma C*", mix.swatch.chroma.toFixed(0)),
      ...number("Hue h", mix.swatch.chroma < 2 ? "none" : `${mix.swatch.hue.toFixed(0)}°`),
      ...number("Expect", `±${mix.expected.toFixed(0)}`, "Median distance of real paint from this prediction, in CIEDE2000: spectrum, mixing model and spread of makers together. One step is just visible."),
      ...(mix.swatch.exact ? [] : number("Shown", "duller than it is: beyond this display")),
    );
    load.tint(RAMP_LOADS.map((stop) => studio.mix(a.number, b.number, share, stop).swatch.css));
    if (!pathChanged) return;
    ratio.tint(studio.ramp(a.number, b.number, amount, RAMP));
    const found = studio.crossing(a.number, b.number, amount);
    crossing.replaceChildren(
      element("span", {}, crossingSentence(found, a, b)),
      found.kind === "none" ? "" : button("Go there", () => store.set({ share: found.mix.share })),
    );
  }
  return { node, show };
}

const RAMP_LOADS = [1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1];

function number(name, value, title) {
  return [element("dt", { title }, name), element("dd", { title }, value)];
}

/** A range with its name, its value in words and a track painted with what it runs through. */
function slider(name, { max }, onchange) {
  const input = element("input", { type: "range", min: 0, max, step: 1, "aria-label": name, oninput: () => onchange(Number(input.value)) });
  const value = element("output", {});
  const node = element("div", { class: "slider" }, element("div", { class: "caption" }, element("span", {}, name), value), input);
  return {
    node,
    show(position, text, spoken) {
      input.value = String(Math.round(position));
      value.textContent = text;
      input.setAttribute("aria-valuetext", spoken);
    },
    tint: (colours) => input.style.setProperty("--track", `linear-gradient(to right, ${colours.join(", ")})`),
  };
}

/** What to know of both paints: how they behave, how long they last, what to beware of. */
function about({ ends }, shelf) {
  const known = [...new Set(ends)].map((end) => shelf.get(end)).filter(Boolean);
  if (known.length === 0) return [element("p", { class: "quiet" }, "What to know of the paints will stand here.")];
  return [...known.map((paint) => {
    const traits = [...["transparency", "granulation", "staining"].map((property) => grade(property, paint[property])), strengthOf(paint.strength)].filter(Boolean);
    const fastness = paint.lightfastTint == null ? null : `Lightfast tint: Blue Wool ${paint.lightfastTint} of 8.`;
    return element("section", {},
      element("h3", {}, `${paint.name} `, element("small", {}, paint.code)),
      element("p", {}, traits.length ? `${capital(traits.join(", "))}. ` : "", fastness),
      paint.caution ? element("p", { class: "caution" }, element("b", {}, "Caution. "), paint.caution) : null,
      element("p", { class: "quiet" }, `Spectrum ${paint.tier}. Source: ${paint.source}.`));
  }), element("p", { class: "quiet" }, SOURCES)];
}

const SOURCES = "Ratings: B. MacEvoy, handprint.com/HP/WCL, averaged over makers. Cautions and most strengths: common practice; the label and the safety data sheet come first.";

const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);
