// How much of a place the kit reaches: colour by colour, and which paints would bring more.

/** @import { Candidate, Match, Swatch } from "../state/answers.js" */
/** @import { Ask, Colour, Paint, Place, Shelf, State, Store } from "../state/types.js" */

/** @typedef {{ showMix: () => void, chooseFor: (place: Place | null) => void }} Ways */

import { REACHED } from "../../pkg/facts.js";
import { question } from "../core/adviser.js";
import { editKit } from "../kit/edit.js";
import { packPaint } from "../kit/packing.js";
import { paintLine, twin } from "../page/dab.js";
import { button, element } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { shortName } from "../state/end.js";
import { paintsOf } from "../state/kit.js";
import { pathOf } from "../state/path.js";
import { dropColour, weigh } from "../state/places.js";
import { targetOf } from "../state/target.js";
import * as words from "../words/place.js";
import { packIt, pack as packWord } from "../words/tin.js";

/** Most paints that are said to bring more, and the least part of the place that is worth saying. */
const FEW = 3;
const LEAST_GAIN = 0.005;

/**
 * Answers a node, and `look`, which fills it for the place of the kit at an index. `showMix` leads to the mix, `chooseFor` to
 * the choosing of a kit for a place.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Ask} ask
 * @param {Ways} what
 */
export function createReach(store, shelf, ask, { showMix, chooseFor }) {
  const node = element("div", {});
  let turn = 0;

  /** @param {number} index */
  async function look(index) {
    turn += 1;
    const own = turn;
    const state = store.get();
    const place = state.kit.places[index];
    if (!place) return remake(node, noPlace());
    if (paintsOf(state.kit).length === 0) return remake(node, quiet(words.emptyTin));
    try {
      const asked = { place: place.colours.map(({ lab, weight }) => [lab, weight]) };
      const nearest = await ask("nearest", question(state, asked));
      if (own !== turn) return;
      const said = answer(state, index, nearest);
      remake(node, ...said);
      const candidates = Uint16Array.from(shelf.all, ({ number }) => number);
      const better = await ask("nextForPlace", question(state, { ...asked, candidates }));
      if (own === turn)
        remake(
          node,
          ...said,
          wouldBring(better, shelf, (paint) => packPaint(store, paint)),
        );
    } catch (error) {
      if (own === turn) remake(node, quiet(words.failed(error.message)));
    }
  }

  /**
   * @param {State} state
   * @param {number} index
   * @param {Match[]} nearest
   */
  function answer({ studio, kit }, index, nearest) {
    const place = kit.places[index];
    const whole = weightOf(place.colours);
    const rows = place.colours.map((colour, i) => {
      const seen = studio.colour(Float32Array.from(colour.lab));
      return element(
        "li",
        {},
        takeButton(colour, seen, nearest[i], i),
        weightField(seen, (100 * colour.weight) / whole, i, (hundredths) =>
          editKit(store, (kit) => weigh(kit, index, i, hundredths)),
        ),
        dropButton(seen, i, () => editKit(store, (kit) => dropColour(kit, index, i), words.dropped)),
      );
    });
    return [
      sentence(place.colours, nearest),
      element("ul", { class: "rows" }, ...rows),
      button(words.choose, () => chooseFor(place), { class: "wide", "data-focus": "choose" }),
    ];
  }

  /**
   * A colour beside the nearest mix; a click puts that mix on the path.
   *
   * @param {Colour} colour
   * @param {Swatch} seen
   * @param {Match} match
   * @param {number} i
   */
  function takeButton({ lab }, seen, { parts, load, swatch, error }, i) {
    const take = () => {
      store.set({ ...pathOf(parts), load, laid: 0, next: 0, target: targetOf(lab, "place") });
      showMix();
    };
    const node = button("", take, { class: "take", "data-focus": `take-${i}` });
    node.append(
      twin(seen.css, swatch.css),
      element(
        "span",
        { class: "name" },
        seen.words,
        element("span", { class: "traits" }, words.nearest(shortName(parts, shelf), load, error)),
      ),
    );
    return node;
  }

  return { node, look };
}

/** @param {string} text */
const quiet = (text) => element("p", { class: "quiet" }, text);

const noPlace = () => quiet(words.none);

/** @param {Colour[]} colours */
const weightOf = (colours) => colours.reduce((sum, { weight }) => sum + weight, 0);

/**
 * How many colours the kit reaches, and how much of the place that is.
 *
 * @param {Colour[]} colours
 * @param {Match[]} nearest
 */
function sentence(colours, nearest) {
  const reached = colours.filter((_, i) => nearest[i].error <= REACHED);
  const part = weightOf(reached) / weightOf(colours);
  return element("p", {}, element("b", {}, words.reaches(reached.length, colours.length, part)), words.within);
}

/**
 * How much of the place a colour is, in percent.
 *
 * @param {Swatch} seen
 * @param {number} hundredths
 * @param {number} i
 * @param {(hundredths: number) => void} weighed
 */
function weightField(seen, hundredths, i, weighed) {
  const field = element("input", {
    type: "number",
    min: 1,
    max: 100,
    value: Math.max(1, Math.round(hundredths)),
    "aria-label": words.weight(seen.words),
    "data-focus": `weight-${i}`,
    onchange: () => weighed(Number(field.value)),
  });
  return element("span", { class: "percent" }, field, "%");
}

/**
 * @param {Swatch} seen
 * @param {number} i
 * @param {() => void} drop
 */
const dropButton = (seen, i, drop) =>
  button("×", drop, { class: "drop", "aria-label": words.drop(seen.words), "data-focus": `drop-${i}` });

/**
 * The paints of the shelf that would bring most of what is missing.
 *
 * @param {Candidate[]} found
 * @param {Shelf} shelf
 * @param {(paint: Paint) => void} pack
 */
function wouldBring(found, shelf, pack) {
  const best = found.filter(({ gain }) => gain > LEAST_GAIN).slice(0, FEW);
  if (best.length === 0) return quiet(words.noneBrings);
  const rows = best.map(({ paint: number, gain }) => {
    const paint = shelf.paint(number);
    return element(
      "li",
      {},
      paintLine(paint, words.gain(gain)),
      button(packWord, () => pack(paint), { class: "pack", "aria-label": packIt(paint.name) }),
    );
  });
  return element("div", {}, element("h4", {}, words.wouldAdd), element("ul", { class: "rows" }, ...rows));
}
