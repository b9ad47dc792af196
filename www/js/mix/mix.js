// The mix at hand: its colour and texture, its ratio and load, and the same paint laid as glazes.

import { button, byId, element } from "../page/dom.js";
import { afterRest } from "../page/rest.js";
import { slider } from "../page/slider.js";
import { crossingSentence, loadName, recipe } from "../page/words.js";
import { isPair, pairOf, shortName } from "../state/end.js";
import { paintsOf } from "../state/kit.js";

const RAMP = 41;
const RAMP_LOADS = Float32Array.of(1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1);
/** How near to whole parts the held slider snaps, as a position along the path. */
const SNAP = 0.007;
/** Milliseconds of rest before other mixes are compared. */
const REST = 250;
const WAYS = ["Mixed", "A over B", "B over A"];

/** Shows the mix of the two ends. */
export function attachMix(store, shelf) {
  const wash = element("canvas", { class: "wash", "aria-hidden": "true" });
  const words = element("p", { class: "words", role: "status" });
  const parts = element("p", { class: "parts" });
  const numbers = element("dl", { class: "numbers" });
  const crossing = element("p", { class: "crossing" });
  const texture = element("p", { class: "texture" });
  const shift = element("p", { class: "shift", hidden: true });
  const ways = element("div", { class: "ways", role: "group", "aria-label": "Mixed or glazed" });
  const ratio = slider("Ratio", { max: 1000 }, (value, held) => {
    const { studio } = store.get();
    const share = studio.share_of(value / 1000);
    store.set({ share: (held && studio.snap(share, SNAP)) || share });
  });
  const load = slider("Load", { max: 500 }, (value) => store.set({ load: 2 ** (value / 100 - 5) }));
  const atHand = byId("wheel-mix");
  let isMeasured = false;
  const filled = [wash, words, parts, ratio.node, load.node, numbers, texture, crossing, ways];
  const empty = element(
    "p",
    { class: "empty" },
    "Choose two paints to see every mix of them: click them on the wheel, in the kit or on the shelf.",
  );
  byId("readout").replaceChildren(element("div", {}, empty, ...filled));
  texture.after(shift);

  function show(state, pathChanged) {
    const ready = isPair(state);
    empty.hidden = ready;
    [atHand, ...filled].forEach((part) => (part.hidden = !ready));
    if (!ready) return;
    const { studio, ends, share, load: amount } = state;
    const pair = pairOf(state);
    const mix = studio.mix(pair, share, amount);
    words.textContent = mix.swatch.words;
    atHand.replaceChildren(
      element("b", {}, mix.parts.join(":")),
      ` ${mix.swatch.words}, L* ${mix.swatch.lightness.toFixed(0)}`,
    );
    parts.textContent = recipe(mix.recipe, shelf);
    ratio.show(studio.position_of(share) * 1000, mix.parts.join(" : "), recipe(mix.recipe, shelf));
    load.show((Math.log2(amount) + 5) * 100, loadName(amount), loadName(amount));
    numbers.replaceChildren(
      ...number("Value L*", mix.swatch.lightness.toFixed(0)),
      ...number("Chroma C*", mix.swatch.chroma.toFixed(0)),
      ...number("Hue h", mix.swatch.chroma < 2 ? "none" : `${mix.swatch.hue.toFixed(0)}°`),
      ...number(
        "Expect",
        `±${mix.expected.toFixed(0)}`,
        "Median distance of real paint from this prediction, in CIEDE2000: spectrum, mixing model and spread of makers together. One step is just visible.",
      ),
      ...(mix.swatch.exact ? [] : number("Shown", "duller than it is: beyond this display")),
    );
    texture.textContent = mix.texture;
    wash.style.setProperty("--wash", mix.swatch.css);
    if (isMeasured) paintWash(state, pair);
    showWays(state, pair);
    load.tint(studio.fade(pair, share, RAMP_LOADS));
    if (!pathChanged) return;
    ratio.tint(studio.ramp(pair, amount, RAMP));
    const found = studio.crossing(pair, amount);
    crossing.replaceChildren(
      element(
        "span",
        {},
        crossingSentence(
          found,
          ends.map((end) => shortName(end.parts, shelf)),
        ),
      ),
      found.kind === "none" ? "" : button("Go there", () => store.set({ share: found.mix.share })),
    );
  }

  /** Another mix of the kit that matches this one in daylight and not in another light; looked for when the hand rests. */
  function showShift() {
    const state = store.get();
    if (!isPair(state)) return;
    const { studio, share, load: amount, kit } = state;
    const pair = pairOf(state);
    // One paint alone is no mix: nobody chose it to match.
    if (studio.mix(pair, share, amount).recipe.length < 2) return;
    const found = studio.shift(pair, share, amount, paintsOf(kit));
    shift.hidden = !found;
    if (found)
      shift.textContent = `Matches in daylight only: under a ${found.light} it parts from ${shortName(found.parts, shelf)}, ${loadName(found.load)}, by ${found.there.toFixed(0)} (CIEDE2000).`;
  }

  /** The wash with its grain; the colour itself stands behind, where the canvas has no room to be measured yet. */
  function paintWash({ studio, share, load }, pair) {
    const scale = Math.min(window.devicePixelRatio || 1, 2);
    const [width, height] = [wash.clientWidth, wash.clientHeight].map((length) => Math.round(length * scale));
    if (width === 0 || height === 0) return;
    if (wash.width !== width || wash.height !== height) [wash.width, wash.height] = [width, height];
    const bytes = new Uint8ClampedArray(studio.wash(pair, share, load, width, height, scale));
    const colorSpace = studio.colour_space();
    wash.getContext("2d", { colorSpace }).putImageData(new ImageData(bytes, width, height, { colorSpace }), 0, 0);
  }

  /** The same paint mixed, and laid in two layers either way: each shows its colour and chooses it. */
  function showWays(state, pair) {
    const glazes = state.studio.ways(pair, state.share, state.load);
    const focused = [...ways.children].indexOf(document.activeElement);
    ways.replaceChildren(
      ...glazes.map(({ swatch }, i) =>
        button("", () => store.set({ laid: i }), {
          class: "way",
          "aria-pressed": String(state.laid === i),
          style: { "--wash": swatch.css },
        }),
      ),
    );
    [...ways.children].forEach((way, i) =>
      way.append(
        element("span", { class: "chip" }),
        element("span", {}, WAYS[i], element("small", {}, i === 0 ? "in one wash" : glazes[i].difference)),
      ),
    );
    if (focused >= 0) ways.children[focused].focus();
  }

  const shiftSoon = afterRest(showShift, REST);
  store.subscribe((state, changed) => {
    const touched = (...keys) => keys.some((key) => changed.has(key));
    if (touched("ends", "studio", "share", "load", "laid", "kit")) {
      shift.hidden = true;
      shiftSoon();
    }
    if (touched("ends", "studio", "share", "load", "laid")) show(state, touched("ends", "studio", "load", "laid"));
  });
  const paint = () => {
    isMeasured = true;
    if (isPair(store.get())) paintWash(store.get(), pairOf(store.get()));
  };
  // The first measuring comes by itself; it is in a task of its own, as the grain takes long.
  new ResizeObserver(() => (isMeasured ? paint() : setTimeout(paint, 0))).observe(wash);
  shiftSoon();
  show(store.get(), true);
}

function number(name, value, title) {
  return [element("dt", { title }, name), element("dd", { title }, value)];
}
