// What to know of the paints at hand: how they behave, how long they last, what to beware of.

/** @import { Paint, Shelf, State, Store, Studio } from "../state/types.js" */

import { byId, element } from "../page/dom.js";
import * as words from "../words/about.js";
import { grade, strengthOf } from "../words/ratings.js";

/**
 * @param {Store} store
 * @param {Shelf} shelf
 */
export function attachAbout(store, shelf) {
  /** @param {State} state */
  const show = ({ ends, studio }) => byId("about").replaceChildren(...about(ends, shelf, studio));
  store.subscribe((state, changed) => (changed.has("ends") || changed.has("studio")) && show(state));
  show(store.get());
}

/**
 * @param {State["ends"]} ends
 * @param {Shelf} shelf
 * @param {Studio} studio
 */
function about(ends, shelf, studio) {
  const numbers = ends.flatMap((end) => end?.parts ?? []).map(([paint]) => paint);
  const known = [...new Set(numbers)].map((number) => shelf.paint(number));
  if (known.length === 0) return [element("p", { class: "quiet" }, words.empty)];
  return [...known.map((paint) => section(paint, studio)), element("p", { class: "quiet" }, words.sources)];
}

/**
 * @param {Paint} paint
 * @param {Studio} studio
 */
function section(paint, studio) {
  const traits = [...RATED.map((property) => grade(property, paint[property])), strengthOf(paint.strength)].filter(
    (trait) => trait !== null,
  );
  const fastness = paint.lightfastTint == null ? null : words.lightfast(paint.lightfastTint);
  return element(
    "section",
    {},
    element("h3", {}, `${paint.name} `, element("small", {}, paint.code)),
    element("p", {}, thinned(paint, studio)),
    element("p", {}, traits.length ? words.traits(traits) : "", fastness),
    paint.caution ? element("p", { class: "caution" }, element("b", {}, words.caution), paint.caution) : null,
    element("p", { class: "quiet" }, words.spectrum(paint.tier, paint.source)),
  );
}

/** What a maker rates of a paint, as it is told. */
const RATED = /** @type {const} */ (["transparency", "granulation", "staining"]);

/** Loads between which the turn of a paint's hue is told. */
const [THICK, THIN] = [1, 1 / 16];
/** A turn of so many degrees is seen. */
const SEEN_TURN = 4;

/**
 * What thinning does to a paint, in words.
 *
 * @param {Paint} paint
 * @param {Studio} studio
 */
function thinned({ number }, studio) {
  const [thick, thin] = [THICK, THIN].map((load) => studio.swatch([[number, 1]], load));
  const turn = Math.abs(((thin.hue - thick.hue + 540) % 360) - 180);
  const isSeen = Math.min(thick.chroma, thin.chroma) >= 5 && turn >= SEEN_TURN;
  return words.thinned(thick.words, thin.words, isSeen ? turn : null);
}
