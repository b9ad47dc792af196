// How the wheel is looked at: the light, the ribbon over all loads, pinned paths, the kit's reach.

import { button, byId, element, say } from "./dom.js";
import { isPair, pairOf } from "./state/end.js";
import { paintsOf } from "./state/kit.js";

/** Lights in the order of the core's numbers. */
export const LIGHTS = ["Daylight", "Warm daylight", "Tungsten lamp", "LED lamp", "Fluorescent lamp"];

const MOST_PINS = 4;

/** Shows what can be changed about the wheel's drawing. */
export function attachView(store) {
  const frame = byId("view");
  const light = element("select", { "aria-label": "Light", onchange: () => (store.set({ light: light.selectedIndex }), say(`Seen in ${LIGHTS[light.selectedIndex].toLowerCase()}`)) },
    ...LIGHTS.map((name) => element("option", {}, name)));
  const toggle = (word, key, title) => button(word, () => store.set({ [key]: !store.get()[key] }), { title });
  const ribbon = toggle("All loads", "ribbon", "Show the path at every load, from wash to masstone");
  const reach = toggle("Reach", "reach", "Outline of all that the kit can mix");
  const pinReach = button("Pin reach", () => {
    const { pinnedKit, kit } = store.get();
    store.set({ pinnedKit: pinnedKit ? null : paintsOf(kit) });
  }, { title: "Keep this outline, dashed, to compare with while you change the kit" });
  const pin = button("Pin path", () => {
    const state = store.get();
    store.set({ pins: [...state.pins, { pair: pairOf(state), load: state.load }].slice(-MOST_PINS) });
    say("Path pinned: choose other paints to compare");
  }, { title: "Keep this path on the wheel and draw another over it" });
  const unpin = button("Clear pins", () => (store.set({ pins: [] }), pin.focus(), say("Pins cleared")));
  frame.replaceChildren(element("label", { class: "light" }, element("span", {}, "Light"), light), ribbon, pin, unpin, reach, pinReach);

  function show(state) {
    light.selectedIndex = state.light;
    ribbon.setAttribute("aria-pressed", String(state.ribbon));
    reach.setAttribute("aria-pressed", String(state.reach));
    pinReach.setAttribute("aria-pressed", String(Boolean(state.pinnedKit)));
    pinReach.hidden = !state.reach;
    pin.disabled = !isPair(state);
    unpin.hidden = state.pins.length === 0;
  }
  store.subscribe(show);
  show(store.get());
}

/** Answers the outlines to draw: the kit's own, then the pinned one. Each is computed once. */
export function createOutlines(store) {
  const known = new Map();
  const outline = (studio, paints) => {
    const key = paints.join(" ");
    if (known.studio !== studio) {
      known.clear();
      known.studio = studio;
    }
    if (!known.has(key)) {
      if (known.size > 8) known.clear();
      known.set(key, studio.outline(paints));
    }
    return known.get(key);
  };
  return () => {
    const { studio, kit, reach, pinnedKit, guest } = store.get();
    if (!reach) return [];
    return [paintsOf(kit), pinnedKit, guest && paintsOf(guest)].filter((paints) => paints?.length).map((paints) => outline(studio, paints));
  };
}
