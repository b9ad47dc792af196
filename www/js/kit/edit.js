// The kit in hand, edited.

/** @import { Kit, Store } from "../state/types.js" */

import { say } from "../page/dom.js";

/**
 * Puts what `verb` makes of the kit in hand in its place; `word` says what was done.
 *
 * @param {Store} store
 * @param {(kit: Kit) => Kit} verb
 * @param {string} [word]
 */
export function editKit(store, verb, word) {
  store.set({ kit: verb(store.get().kit) });
  if (word) say(word);
}
