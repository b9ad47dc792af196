// One state for the whole page, replaced and never changed in place, and the one door to it.

/** @import { Patch, State, Store, View } from "./types.js" */
/** @typedef {(next: State, changed: Set<string>) => State} Settle */

/** @type {(state: State) => (keyof State)[]} */
export const keysOf = (state) => /** @type {any} */ (Object.keys(state));

/**
 * A store of plain state; views subscribe and learn which parts changed.
 *
 * `settle(next, changed)` answers the state as it may stand, or throws why it may not; `derive(next, changed)` answers
 * what follows from it. Both come before any view hears, so that a state they refuse has never been.
 * `refused` hears why.
 *
 * @type {(initial: State, ways?: { settle?: Settle, derive?: (next: State, changed: Set<string>) => Patch, refused?: (error: Error) => void }) => Store}
 */
export function createStore(
  initial,
  { settle = (/** @type {State} */ next) => next, derive = () => ({}), refused = () => {} } = {},
) {
  let state = initial;
  /** @type {Set<View>} */
  const views = new Set();

  /** @type {(next: State) => Set<string>} */
  const differing = (next) => new Set(keysOf(next).filter((key) => next[key] !== state[key]));

  /**
   * Replaces some parts, or throws and leaves all as it is. A verb answers the parts from the state. `how` tells views where the change comes from.
   *
   * @type {Store["change"]}
   */
  function change(patch, how = {}) {
    const wanted = { ...state, ...(typeof patch === "function" ? patch(state) : patch) };
    const first = differing(wanted);
    if (first.size === 0) return;
    const settled = settle(wanted, first);
    const next = { ...settled, ...derive(settled, differing(settled)) };
    const changed = differing(next);
    if (changed.size === 0) return;
    const before = state;
    state = next;
    for (const view of views) view(state, changed, before, how);
  }

  return {
    get: () => state,
    change,
    /** The same; what is refused is said. Answers whether it was taken. */
    set(patch, how) {
      try {
        change(patch, how);
        return true;
      } catch (error) {
        refused(error);
        return false;
      }
    },
    subscribe(view) {
      views.add(view);
      return () => views.delete(view);
    },
  };
}
