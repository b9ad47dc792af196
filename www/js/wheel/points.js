// Empty places of the wheel: what choosing one means.

/** @import { Choose, Store } from "../state/types.js" */

import { byId } from "../page/dom.js";
import { paintsOf } from "../state/kit.js";
import { targetOf } from "../state/target.js";
import * as words from "../words/wheel.js";

/**
 * Says something about the wheel to a screen reader.
 *
 * @param {string} text
 */
export function announce(text) {
  byId("wheel-said").textContent = text;
}

/**
 * The kit's recipe nearest to a place becomes an end; while a colour is picked, the place gives the target its hue.
 *
 * @param {Store} store
 * @param {Choose} choose
 * @param {number[]} place
 */
export function takePoint(store, choose, place) {
  const { studio, kit, load, picking } = store.get();
  if (picking) return pickTarget(store, place);
  const [x, y] = place;
  const found = studio.nearest_recipe(paintsOf(kit), x, y, load);
  if (!found) return announce(words.emptyKit);
  choose({ parts: found.parts, asked: { place, off: found.off } });
}

/**
 * Takes the colour to match from a place.
 *
 * @param {Store} store
 * @param {number[]} place
 */
export function pickTarget(store, place) {
  const { studio, target } = store.get();
  const [x, y] = place;
  store.set({ target: targetOf(studio.lab_at(target?.lab[0] ?? 50, x, y), "wheel"), picking: false });
  announce(words.targetTaken);
}
