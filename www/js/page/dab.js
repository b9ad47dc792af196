// A painted dab on a small canvas of its own.

/** @typedef {[paint: number, count: number][]} Parts */
/** @typedef {{ draw_dab(context: CanvasRenderingContext2D, parts: Parts, load: number | null | undefined, size: number): void }} Dabs what draws dabs, as the studio does */

import { penOf } from "./canvas.js";
import { element } from "./dom.js";

/**
 * A canvas of `size` CSS pixels showing a paint, or a mix by its parts, bleeding from masstone to wash, or at the load given.
 *
 * @param {Dabs} studio
 * @param {number | Parts} paint
 * @param {number} size
 * @param {number} [load]
 */
export function dabOf(studio, paint, size, load) {
  const canvas = blank(size);
  draw(canvas, studio, paint, size, load);
  return canvas;
}

/**
 * The same, drawn when it first comes into sight: for long lists.
 *
 * @param {Dabs} studio
 * @param {number} paint
 * @param {number} size
 */
export function dabInSight(studio, paint, size) {
  const canvas = blank(size);
  waiting.set(canvas, () => draw(canvas, studio, paint, size));
  sight.observe(canvas);
  return canvas;
}

/** @type {WeakMap<Element, () => void>} */
const waiting = new WeakMap();
const sight = new IntersectionObserver((entries) => {
  for (const { target, isIntersecting } of entries) {
    if (!isIntersecting) continue;
    sight.unobserve(target);
    waiting.get(target)?.();
  }
});

/** @param {number} size */
function blank(size) {
  const pixels = size * scale();
  const canvas = element("canvas", { width: pixels, height: pixels, class: "dab", "aria-hidden": "true" });
  canvas.style.setProperty("--size", `${size}px`);
  return canvas;
}

/**
 * @param {HTMLCanvasElement} canvas
 * @param {Dabs} studio
 * @param {number | Parts} paint
 * @param {number} size
 * @param {number} [load]
 */
function draw(canvas, studio, paint, size, load) {
  /** @type {Parts} */
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

/**
 * A colour as a chip.
 *
 * @param {string} css
 */
export const chip = (css) => element("span", { class: "chip", style: { "--wash": css } });

/**
 * Two colours edge to edge: what is wanted and what comes nearest.
 *
 * @param {string} wanted
 * @param {string} nearest
 */
export const twin = (wanted, nearest) => element("span", { class: "twin" }, chip(wanted), chip(nearest));
