// A painted dab on a small canvas of its own.

import { penOf } from "./canvas.js";
import { element } from "./dom.js";

/** A canvas of `size` CSS pixels showing a paint, or a mix by its parts, bleeding from masstone to wash, or at the load given. */
export function dabOf(studio, paint, size, load) {
  const canvas = blank(size);
  draw(canvas, studio, paint, size, load);
  return canvas;
}

/** The same, drawn when it first comes into sight: for long lists. */
export function dabInSight(studio, paint, size) {
  const canvas = blank(size);
  waiting.set(canvas, () => draw(canvas, studio, paint, size));
  sight.observe(canvas);
  return canvas;
}

const waiting = new WeakMap();
const sight = new IntersectionObserver((entries) => {
  for (const { target, isIntersecting } of entries) {
    if (!isIntersecting) continue;
    sight.unobserve(target);
    waiting.get(target)();
  }
});

function blank(size) {
  const pixels = size * scale();
  const canvas = element("canvas", { width: pixels, height: pixels, class: "dab", "aria-hidden": "true" });
  canvas.style.setProperty("--size", `${size}px`);
  return canvas;
}

function draw(canvas, studio, paint, size, load) {
  const parts = typeof paint === "number" ? [[paint, 1]] : paint;
  const context = penOf(canvas);
  context.scale(canvas.width / size, canvas.height / size);
  studio.draw_dab(context, parts, load, size);
}

const scale = () => Math.min(window.devicePixelRatio || 1, 3);

/**
 * A paint's name and code, and below them what is to be said of it.
 *
 * @type {(paint: { name: string, code: string }, said: string) => HTMLElement}
 */
export const paintLine = ({ name, code }, said) =>
  element(
    "span",
    { class: "name" },
    `${name} `,
    element("small", {}, code),
    element("span", { class: "traits" }, said),
  );

/** A colour as a chip. */
export const chip = (css) => element("span", { class: "chip", style: { "--wash": css } });

/** Two colours edge to edge: what is wanted and what comes nearest. */
export const twin = (wanted, nearest) => element("span", { class: "twin" }, chip(wanted), chip(nearest));
