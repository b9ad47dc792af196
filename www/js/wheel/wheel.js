// The wheel's two canvases: paints below, path and marks above.

/** @import { Scene } from "./scene.js" */
/** @import { Choose, Shelf, Store, Studio } from "../state/types.js" */

/** @typedef {"ground" | "path"} Layer */
/** @typedef {(studio: Studio, layer: Layer, context: CanvasRenderingContext2D, size: number) => void} DrawOn */

import { penOf } from "../page/canvas.js";
import { byId } from "../page/dom.js";
import { attachGestures } from "./gestures.js";
import { attachKeys } from "./keys.js";
import { sceneOf, stillSceneOf } from "./scene.js";

/** What the wheel's words are written in. */
const LETTERS = '16px "Source Sans 3"';

/** What of the state the lower canvas shows. */
const ON_GROUND = ["kit", "showShelf", "ends", "studio", "dim", "reach", "pinnedKit", "guest"];

/**
 * Draws the wheel and lets it be used by mouse, touch and keys. Answers a promise of its first drawing, and how a layer of it is drawn elsewhere, on paper-white.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Choose} choose
 * @param {() => Float32Array[]} outlines
 */
export function attachWheel(store, shelf, choose, outlines) {
  const top = byId("wheel-path", HTMLCanvasElement);
  const { drawn, redraw, scene } = createLayers(store, byId("wheel-ground", HTMLCanvasElement), top, outlines);
  // Canvas text is drawn once: it is drawn again where the page's own letters come later.
  if (!document.fonts.check(LETTERS))
    document.fonts.load(LETTERS).then(
      () => redraw("ground"),
      () => {},
    );
  matchMedia("print").addEventListener("change", () => redraw("ground"));
  store.subscribe((_, changed) => redraw(ON_GROUND.some((key) => changed.has(key)) ? "ground" : "path"));
  attachGestures(top, store, shelf, choose, scene);
  attachKeys(top, store, shelf, choose, scene);

  /**
   * @param {Studio} studio
   * @param {Layer} layer
   * @param {CanvasRenderingContext2D} context
   * @param {number} size
   */
  const drawOn = (studio, layer, context, size) => {
    const now = stillSceneOf(store.get(), studio, size);
    if (layer === "ground") studio.draw_wheel(context, now, outlines());
    else studio.draw_path(context, now);
  };
  return { drawn, drawOn };
}

/**
 * Draws both canvases as large as their frame, at most once a frame: `redraw(layer)`, what they show as `scene()`, and a promise of the first drawing.
 *
 * @param {Store} store
 * @param {HTMLCanvasElement} ground
 * @param {HTMLCanvasElement} top
 * @param {() => Float32Array[]} outlines
 */
function createLayers(store, ground, top, outlines) {
  const stage = top.parentElement ?? document.body;
  let size = 0;
  /** @type {Set<Layer>} */
  let due = new Set();
  let isDrawn = false;
  /** @type {() => void} */
  let stands = () => {};
  const drawn = new Promise((/** @type {(nothing?: void) => void} */ resolve) => (stands = resolve));
  const scene = () => sceneOf(store.get(), size);

  /** @param {Layer} layer */
  function redraw(layer) {
    if (due.size === 0) requestAnimationFrame(draw);
    due.add(layer);
  }

  function draw() {
    const layers = due;
    due = new Set();
    if (size === 0 || layers.size === 0) return;
    const { studio } = store.get();
    const now = scene();
    if (layers.has("ground")) studio.draw_wheel(cleared(ground, size, studio), now, outlines());
    if (isDrawn) drawPath(studio, now);
    // At the start in a task of its own: each layer takes long on a slow machine.
    else setTimeout(() => drawPath(store.get().studio, scene()), 0);
  }

  /**
   * @param {Studio} studio
   * @param {Scene} now
   */
  function drawPath(studio, now) {
    studio.draw_path(cleared(top, size, studio), now);
    isDrawn = true;
    stands();
  }

  new ResizeObserver(() => {
    size = Math.floor(Math.min(stage.clientWidth, stage.clientHeight || stage.clientWidth));
    // Told between layout and paint: what is drawn now is in this frame.
    due.add("ground");
    draw();
  }).observe(stage);
  return { drawn, redraw, scene };
}

/**
 * The context of a canvas of `size` CSS pixels with nothing on it.
 *
 * @param {HTMLCanvasElement} canvas
 * @param {number} size
 * @param {Studio} studio
 */
function cleared(canvas, size, studio) {
  const scale = window.devicePixelRatio || 1;
  const pixels = Math.round(size * scale);
  if (canvas.width !== pixels) canvas.width = canvas.height = pixels;
  canvas.style.setProperty("width", `${size}px`);
  canvas.style.setProperty("height", `${size}px`);
  const context = penOf(canvas, { colorSpace: studio.colour_space() });
  context.setTransform(scale, 0, 0, scale, 0, 0);
  context.clearRect(0, 0, size, size);
  return context;
}
