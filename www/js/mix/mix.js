// The mix at hand: its colour and texture, its ratio and load, its crossing, and what it matches in daylight only.

/** @import { Mix, Shift } from "../state/answers.js" */
/** @import { Part, Shelf, State, Store } from "../state/types.js" */

import { LEAST_LOAD } from "../../pkg/facts.js";
import { chip } from "../page/dab.js";
import { button, byId, element, put } from "../page/dom.js";
import { afterRest } from "../page/rest.js";
import { slider } from "../page/slider.js";
import { isPair, pairOf, shortName } from "../state/end.js";
import { paintsOf } from "../state/kit.js";
import { number } from "../words/form.js";
import * as words from "../words/mix.js";
import { crossingSentence, loadName, recipe } from "../words/terms.js";
import { createWash } from "./wash.js";
import { createWays } from "./ways.js";

const RAMP = 41;
const RAMP_LOADS = Float32Array.of(LEAST_LOAD, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1);
/** How near to whole parts the held slider snaps, as a position along the path. */
const SNAP = 0.007;
/** Milliseconds of rest before other mixes are compared. */
const REST = 250;

/** What changes the mix at hand, and what of it changes the whole path. */
const MIX = ["ends", "studio", "share", "load", "laid"];
const PATH = ["ends", "studio", "load", "laid"];

/**
 * Shows the mix of the two ends.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 */
export function attachMix(store, shelf) {
  const wash = createWash(store);
  const ways = createWays(store);
  const sliders = createSliders(store, shelf);
  const colour = element("p", { class: "words", role: "status" });
  const parts = element("p", { class: "parts" });
  const numbers = element("dl", { class: "numbers" });
  const crossing = element("p", { class: "crossing" });
  const texture = element("p", { class: "texture" });
  const shift = element("p", { class: "shift", hidden: true });
  const atHand = byId("wheel-mix");
  const [atHandChip, atHandRatio, atHandWords] = [chip(""), element("b", {}), element("span", {})];
  atHand.replaceChildren(atHandChip, atHandRatio, atHandWords);
  const own = element("p", { class: "quiet" }, words.taught);
  const filled = [wash.node, colour, parts, ...sliders.nodes, numbers, texture, own, crossing, ways.node];
  const empty = element("p", { class: "empty" }, words.empty);
  byId("readout").replaceChildren(element("div", {}, empty, ...filled));
  texture.after(shift);

  /**
   * @param {State} state
   * @param {boolean} pathChanged
   */
  function show(state, pathChanged) {
    const ready = isPair(state);
    empty.hidden = ready;
    [atHand, ...filled].forEach((part) => (part.hidden = !ready));
    if (!ready) return;
    const mix = state.studio.mix(pairOf(state), state.share, state.load);
    put(colour, mix.swatch.words);
    atHandChip.style.setProperty("--wash", mix.swatch.css);
    put(atHandRatio, mix.parts.join(":"));
    put(atHandWords, words.atHand(state.load, mix.swatch.words, mix.swatch.lightness));
    put(parts, recipe(mix.recipe, shelf));
    showNumbers(numbers, mix);
    put(texture, mix.texture);
    own.hidden = !isTaught(state, mix.recipe);
    wash.show(state, mix.swatch);
    ways.show(state);
    sliders.show(state, mix, pathChanged);
    if (pathChanged) crossing.replaceChildren(...crossingOf(state, shelf, (mix) => store.set({ share: mix.share })));
  }

  function showShift() {
    const found = shiftOf(store.get());
    shift.hidden = !found;
    if (found) shift.textContent = shiftSentence(found, shelf);
  }

  const shiftSoon = afterRest(showShift, REST);
  store.subscribe((state, changed) => {
    /** @param {string[]} keys */
    const touched = (keys) => keys.some((key) => changed.has(key));
    if (touched([...MIX, "kit"])) {
      shift.hidden = true;
      shiftSoon();
    }
    if (touched(MIX)) show(state, touched(PATH));
  });
  shiftSoon();
  show(store.get(), true);
}

/**
 * Whether what the painter recorded speaks in the prediction of a mix.
 *
 * @param {State} state
 * @param {Part[]} parts
 */
const isTaught = ({ learning, learned }, parts) =>
  learning && parts.some(([paint]) => learned.some(({ number }) => number === paint));

/**
 * Ratio and load as sliders whose tracks show what they run through.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 */
function createSliders(store, shelf) {
  const ratio = slider(words.ratio, { max: 1000 }, (value, held) => {
    const { studio } = store.get();
    const share = studio.share_of(value / 1000);
    store.set({ share: (held && studio.snap(share, SNAP)) || share });
  });
  const load = slider(words.load, { max: 500 }, (value) => store.set({ load: 2 ** (value / 100 - 5) }));
  return {
    nodes: [ratio.node, load.node],
    /**
     * @param {State} state
     * @param {Mix} mix
     * @param {boolean} pathChanged
     */
    show(state, mix, pathChanged) {
      const { studio, share, load: amount } = state;
      const pair = pairOf(state);
      ratio.show(studio.position_of(share) * 1000, mix.parts.join(" : "), recipe(mix.recipe, shelf));
      load.show((Math.log2(amount) + 5) * 100, loadName(amount), loadName(amount));
      load.tint(studio.fade(pair, share, RAMP_LOADS));
      if (pathChanged) ratio.tint(studio.ramp(pair, amount, RAMP));
    },
  };
}

/**
 * Shows a mix in numbers, as terms and what they are.
 *
 * @param {HTMLElement} frame
 * @param {Mix} mix
 */
function showNumbers(frame, mix) {
  const told = figures(mix);
  if (frame.childElementCount !== 2 * told.length) frame.replaceChildren(...told.flatMap(figure));
  told.forEach(({ value }, i) => put(frame.children[2 * i + 1], value));
}

/**
 * @param {Mix} mix
 * @returns {{ name: string, value: string, title?: string }[]}
 */
const figures = ({ swatch, expected }) => [
  { name: words.value, value: number(swatch.lightness) },
  { name: words.chroma, value: number(swatch.chroma) },
  { name: words.hue, value: swatch.chroma < 2 ? words.noHue : words.angle(swatch.hue) },
  { name: words.expect, value: words.giveOrTake(expected), title: words.expectation },
  ...(swatch.exact ? [] : [{ name: words.shown, value: words.asNear }]),
];

/** @param {{ name: string, title?: string }} told */
const figure = ({ name, title }) => [element("dt", { title }, name), element("dd", { title })];

/**
 * Where the path crosses neutral, and a way there.
 *
 * @param {State} state
 * @param {Shelf} shelf
 * @param {(mix: Mix) => void} goTo
 */
function crossingOf(state, shelf, goTo) {
  const found = state.studio.crossing(pairOf(state), state.load);
  const names = pairOf(state).ends.map((parts) => shortName(parts, shelf));
  return [
    element("span", {}, crossingSentence(found, names)),
    found.kind === "none" ? "" : button(words.goThere, () => goTo(found.mix)),
  ];
}

/**
 * Another mix of the kit that matches this one in daylight and not in another light, or nothing.
 *
 * @param {State} state
 */
function shiftOf(state) {
  if (!isPair(state)) return null;
  const { studio, share, load, kit } = state;
  const pair = pairOf(state);
  // One paint alone is no mix: nobody chose it to match.
  if (studio.mix(pair, share, load).recipe.length < 2) return null;
  return studio.shift(pair, share, load, paintsOf(kit));
}

/**
 * @param {Shift} shift
 * @param {Shelf} shelf
 */
const shiftSentence = ({ light, parts, load, there }, shelf) =>
  words.shift(shortName(parts, shelf), load, light, there);
