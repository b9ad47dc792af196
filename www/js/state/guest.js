// A kit that came by a link stands beside the painter's own until it is packed or left. Each verb answers what changes. Pure: no page.

/** @import { KeptFilm, KitContent, Linked, NumberOf, Own, Patch, Shelf, State } from "./types.js" */

import { MOST_OWN } from "../../pkg/facts.js";
import * as words from "../words/state.js";
import { addNamed } from "./collection.js";
import { adopt } from "./own.js";

/**
 * Shows a kit as a link brought it, with its own paints on the shelf as long as it is shown.
 *
 * @type {(state: Pick<State, "own">, found: Linked, films: KeptFilm[], numberOf: NumberOf) => { guest: KitContent, visiting: Own[], films: KeptFilm[] }}
 */
export function showGuest({ own }, found, films, numberOf) {
  const { kit, added } = adopt(found, own, numberOf);
  return { guest: kit, visiting: added, films };
}

/**
 * Packs it: it comes in hand, and the painter's own kit waits beside it.
 *
 * @type {(state: State, shelf: Shelf) => Patch}
 */
export function packGuest(state, shelf) {
  const { own, visiting, guest } = state;
  if (!guest) return {};
  if (own.length + visiting.length > MOST_OWN) throw new Error(words.guestOwn);
  return {
    ...addNamed(state, guest, words.sharedKit, shelf),
    own: visiting.length ? [...own, ...visiting] : own,
    visiting: [],
    guest: null,
  };
}

/**
 * Leaves it. Paints of it that the painter's own work uses have come to stay; what else showed them lets go.
 *
 * @type {() => Patch}
 */
export const leaveGuest = () => ({ guest: null, visiting: [] });
