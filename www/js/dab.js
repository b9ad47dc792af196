// A painted dab on a small canvas of its own.

import { element } from "./dom.js";

/** A canvas of `size` CSS pixels showing a paint, or a mix by its parts, at its strongest load or the one given. */
export function dabOf(studio, paint, size, load) {
  const parts = typeof paint === "number" ? [[paint, 1]] : paint;
  const scale = Math.min(window.devicePixelRatio || 1, 3);
  const canvas = element("canvas", { width: size * scale, height: size * scale, class: "dab", "aria-hidden": "true" });
  canvas.style.setProperty("--size", `${size}px`);
  const context = canvas.getContext("2d");
  context.scale(scale, scale);
  studio.draw_dab(context, parts, load ?? studio.strongest_load(parts), size);
  return canvas;
}
