// A range with its name, its value in words and a track painted with what it runs through.

import { element, put } from "./dom.js";

/**
 * `onchange` hears of each new position, and whether a pointer holds the thumb.
 *
 * @param {string} name
 * @param {{ max: number }} what
 * @param {(position: number, isHeld: boolean) => void} onchange
 */
export function slider(name, { max }, onchange) {
  let held = false;
  const input = element("input", {
    type: "range",
    min: 0,
    max,
    step: 1,
    "aria-label": name,
    onpointerdown: () => (held = true),
    onpointerup: () => (held = false),
    onpointercancel: () => (held = false),
    oninput: () => onchange(Number(input.value), held),
  });
  const value = element("output", {});
  const node = element(
    "div",
    { class: "slider" },
    element("div", { class: "caption" }, element("span", {}, name), value),
    input,
  );
  return {
    node,
    /**
     * @param {number} position
     * @param {string} text
     * @param {string} spoken
     */
    show(position, text, spoken) {
      input.value = String(Math.round(position));
      put(value, text);
      input.setAttribute("aria-valuetext", spoken);
    },
    /** @param {string[]} colours */
    tint: (colours) => input.style.setProperty("--track", `linear-gradient(to right, ${colours.join(", ")})`),
  };
}
