// The kit in hand, edited.

import { say } from "../page/dom.js";

/** Puts what `verb` makes of the kit in hand in its place; `word` says what was done. */
export function editKit(store, verb, word) {
  store.set({ kit: verb(store.get().kit) });
  if (word) say(word);
}
