// How the wheel is looked at: the light, wet paint or dry, the ribbon over all loads, pinned paths, the kit's reach.

/** @import { State, Store, Studio } from "../state/types.js" */

import { LIGHTS } from "../../pkg/facts.js";
import { byId, say } from "../page/dom.js";
import { isPair, pairOf } from "../state/end.js";
import { paintsOf } from "../state/kit.js";
import * as words from "../words/wheel.js";

const MOST_PINS = 4;

/**
 * What the buttons show.
 *
 * @type {(keyof State)[]}
 */
const SHOWN = ["light", "wet", "ribbon", "reach", "pinnedKit", "pins", "ends"];

/**
 * Shows what can be changed about the wheel's drawing.
 *
 * @param {Store} store
 */
export function attachView(store) {
  const light = byId("view-light", HTMLSelectElement);
  const [wet, ribbon, pin, unpin, reach, pinReach] = ["wet", "ribbon", "pin", "unpin", "reach", "pin-reach"].map(
    (name) => byId(`view-${name}`, HTMLButtonElement),
  );
  light.addEventListener("change", () => {
    store.set({ light: light.selectedIndex });
    say(words.seenIn(LIGHTS[light.selectedIndex]));
  });
  /**
   * @param {HTMLElement} verb
   * @param {"wet" | "ribbon" | "reach"} key
   */
  const toggle = (verb, key) => verb.addEventListener("click", () => store.set({ [key]: !store.get()[key] }));
  toggle(wet, "wet");
  toggle(ribbon, "ribbon");
  toggle(reach, "reach");
  pinReach.addEventListener("click", () => {
    const { pinnedKit, kit } = store.get();
    store.set({ pinnedKit: pinnedKit ? null : paintsOf(kit) });
  });
  pin.addEventListener("click", () => {
    const state = store.get();
    store.set({ pins: [...state.pins, { pair: pairOf(state), load: state.load }].slice(-MOST_PINS) });
    say(words.pinned);
  });
  unpin.addEventListener("click", () => {
    store.set({ pins: [] });
    pin.focus();
    say(words.unpinned);
  });

  /** @param {State} state */
  function show(state) {
    light.selectedIndex = state.light;
    wet.setAttribute("aria-pressed", String(state.wet));
    ribbon.setAttribute("aria-pressed", String(state.ribbon));
    reach.setAttribute("aria-pressed", String(state.reach));
    pinReach.setAttribute("aria-pressed", String(Boolean(state.pinnedKit)));
    pinReach.hidden = !state.reach;
    pin.disabled = !isPair(state);
    unpin.hidden = state.pins.length === 0;
  }
  store.subscribe((state, changed) => SHOWN.some((key) => changed.has(key)) && show(state));
  show(store.get());
}

/**
 * Answers the outlines to draw: the kit's own, then the pinned one. Each is computed once.
 *
 * @param {Store} store
 */
export function createOutlines(store) {
  /** @type {Map<string, Float32Array>} */
  const known = new Map();
  /**
   * The studio that made them.
   *
   * @type {Studio | null}
   */
  let maker = null;
  /**
   * @param {Studio} studio
   * @param {number[]} paints
   */
  const outline = (studio, paints) => {
    const key = paints.join(" ");
    if (maker !== studio) {
      known.clear();
      maker = studio;
    }
    const before = known.get(key);
    if (before) return before;
    if (known.size > 8) known.clear();
    const found = studio.outline(paints);
    known.set(key, found);
    return found;
  };
  return () => {
    const { studio, kit, reach, pinnedKit, guest } = store.get();
    if (!reach) return [];
    return [paintsOf(kit), pinnedKit, guest && paintsOf(guest)].flatMap((paints) =>
      paints?.length ? [outline(studio, paints)] : [],
    );
  };
}
