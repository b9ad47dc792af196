// A first visit: whose kit this is and what to do with it. Gone for good once it is closed or another kit is in hand;
// not when a pan changes, as the page would move up under the hand.

import { button, byId, element } from "./dom.js";

/** Shows the line under the header; `startOwn` begins an empty kit. */
export function attachWelcome(store, startOwn) {
  const frame = byId("welcome");
  const close = () => store.set({ welcome: false });
  frame.replaceChildren(
    element("p", {}, "This is a demo kit. Choose two of its paints, then drag along their path."),
    element("div", { class: "verbs" }, button("Start my own kit", startOwn), button("Got it", close)));
  const show = ({ welcome }) => (frame.hidden = !welcome);
  store.subscribe((state, changed) => {
    if (changed.has("others") && state.welcome) close();
    else if (changed.has("welcome")) show(state);
  });
  show(store.get());
}
