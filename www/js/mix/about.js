// What to know of the paints at hand: how they behave, how long they last, what to beware of.

import { byId, element } from "../page/dom.js";
import { capital, grade, strengthOf } from "../page/words.js";

export function attachAbout(store, shelf) {
  const show = ({ ends, studio }) => byId("about").replaceChildren(...about(ends, shelf, studio));
  store.subscribe((state, changed) => (changed.has("ends") || changed.has("studio")) && show(state));
  show(store.get());
}

function about(ends, shelf, studio) {
  const numbers = ends.flatMap((end) => end?.parts ?? []).map(([paint]) => paint);
  const known = [...new Set(numbers)].map((number) => shelf.get(number));
  if (known.length === 0) return [element("p", { class: "quiet" }, "Choose paints to read here how they behave.")];
  return [...known.map((paint) => section(paint, studio)), element("p", { class: "quiet" }, SOURCES)];
}

function section(paint, studio) {
  const traits = [...RATED.map((property) => grade(property, paint[property])), strengthOf(paint.strength)].filter(
    Boolean,
  );
  const fastness =
    paint.lightfastTint == null ? null : `Lightfast tint: Blue Wool ${+paint.lightfastTint.toFixed(1)} of 8.`;
  return element(
    "section",
    {},
    element("h3", {}, `${paint.name} `, element("small", {}, paint.code)),
    element("p", {}, thinned(paint, studio)),
    element("p", {}, traits.length ? `${capital(traits.join(", "))}. ` : "", fastness),
    paint.caution ? element("p", { class: "caution" }, element("b", {}, "Caution. "), paint.caution) : null,
    element("p", { class: "quiet" }, `Spectrum ${paint.tier}. Source: ${paint.source}.`),
  );
}

/** What a maker rates of a paint, as it is told. */
const RATED = /** @type {const} */ (["transparency", "granulation", "staining"]);

/** Loads between which the turn of a paint's hue is told. */
const [THICK, THIN] = [1, 1 / 16];
/** A turn of so many degrees is seen. */
const SEEN_TURN = 4;

/** What thinning does to a paint, in words. */
function thinned({ number }, studio) {
  const [thick, thin] = [THICK, THIN].map((load) => studio.swatch([[number, 1]], load));
  const turn = Math.abs(((thin.hue - thick.hue + 540) % 360) - 180);
  const turns =
    Math.min(thick.chroma, thin.chroma) < 5 || turn < SEEN_TURN ? "" : `; the hue turns ${turn.toFixed(0)}°`;
  return `From masstone to pale wash: ${thick.words} to ${thin.words}${turns}.`;
}

const SOURCES =
  "Ratings: B. MacEvoy, handprint.com/HP/WCL, averaged over makers. Cautions and most strengths: common practice; the label and the safety data sheet come first.";
