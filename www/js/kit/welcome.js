// A first visit: whose kit this is and what to do with it. Gone for good once it is closed or another kit is in hand;
// not when a pan changes, as the page would move up under the hand.

/** @import { State, Store } from "../state/types.js" */

import { byId } from "../page/dom.js";

/**
 * Shows the line under the header; `startOwn` begins an empty kit.
 *
 * @param {Store} store
 * @param {() => void} startOwn
 */
export function attachWelcome(store, startOwn) {
  const frame = byId("welcome");
  const close = () => store.set({ welcome: false });
  byId("welcome-own").addEventListener("click", startOwn);
  byId("welcome-close").addEventListener("click", close);
  /** @param {State} state */
  const show = ({ welcome }) => (frame.hidden = !welcome);
  store.subscribe((state, changed) => {
    if (changed.has("others") && state.welcome) close();
    else if (changed.has("welcome")) show(state);
  });
  show(store.get());
  // `looks.js` hid it before the state was read.
  delete document.documentElement.dataset.known;
}
