// The painter's list of own paints: one more, one described anew, doubled or thrown away. Never changed in place.

/** @import { NumberOf, OwnPaint, Patch, State } from "./types.js" */

import { MOST_OWN } from "../../pkg/facts.js";
import { tooManyOwn } from "../words/own-list.js";
import { newId } from "./ids.js";
import { freeName } from "./own.js";

/**
 * What changes where a new paint, as the core read it, comes on the shelf. Throws where there is no room or the name is taken.
 *
 * @type {(state: Pick<State, "own">, paint: OwnPaint, numberOf: NumberOf) => Patch}
 */
export function addOwn({ own }, paint, numberOf) {
  if (own.length >= MOST_OWN) throw new Error(tooManyOwn);
  const id = newId();
  return { own: [...own, [numberOf(id), { ...paint, id }]] };
}

/**
 * What changes where a paint is described anew.
 *
 * @type {(state: Pick<State, "own">, number: number, paint: OwnPaint) => Patch}
 */
export const editOwn = ({ own }, number, paint) => ({
  own: own.map(([other, known]) => [other, other === number ? { ...paint, id: known.id } : known]),
});

/**
 * What changes where a paint is doubled under a free name.
 *
 * @type {(state: Pick<State, "own">, paint: OwnPaint, numberOf: NumberOf) => Patch}
 */
export const doubleOwn = (state, paint, numberOf) =>
  addOwn(state, { ...paint, name: freeName(paint.name, state.own) }, numberOf);

/**
 * What changes where a paint is thrown away; whatever refers to it is resolved with it.
 *
 * @type {(state: Pick<State, "own">, number: number) => Patch}
 */
export const dropOwn = ({ own }, number) => ({ own: own.filter(([other]) => other !== number) });
