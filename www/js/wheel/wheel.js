// The wheel's canvases, one on the other: paints, path, labels, and the mark of the mix, which alone a drag moves.

/** @import { Labels } from "../../pkg/studio.js" */
/** @import { Choose, Shelf, Store, Studio } from "../state/types.js" */

/** @typedef {(studio: Studio, next: () => CanvasRenderingContext2D, size: number) => void} DrawOn */
/** @typedef {typeof LAYERS[number]} Layer */

import { penOf } from "../page/canvas.js";
import { byId } from "../page/dom.js";
import { attachGestures } from "./gestures.js";
import { attachKeys } from "./keys.js";
import { sceneOf, stillSceneOf } from "./scene.js";

/** From below to above, counted from 0; where one is drawn anew, so are those above it. */
const LAYERS = /** @type {const} */ (["ground", "path", "labels", "mark"]);

/** What the wheel's words are written in. */
const LETTERS = '16px "Source Sans 3"';

/** What of the state the lowest canvas shows. */
const ON_GROUND = ["kit", "showShelf", "ends", "studio", "dim", "reach", "pinnedKit", "guest"];

/**
 * The lowest layer that a change of the state shows on.
 *
 * @param {Set<string>} changed
 * @returns {Layer}
 */
function lowest(changed) {
  if (ON_GROUND.some((key) => changed.has(key))) return "ground";
  return changed.size === 1 && changed.has("share") ? "mark" : "path";
}

/**
 * Draws the wheel and lets it be used by mouse, touch and keys. Answers a promise of its first drawing, and how it is drawn elsewhere, on paper-white.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Choose} choose
 * @param {() => Float32Array[]} outlines
 */
export function attachWheel(store, shelf, choose, outlines) {
  const hand = byId("wheel-path", HTMLCanvasElement);
  const { drawn, redraw, scene } = createLayers(store, hand, outlines);
  // Canvas text is drawn once: it is drawn again where the page's own letters come later.
  if (!document.fonts.check(LETTERS))
    document.fonts.load(LETTERS).then(
      () => redraw("ground"),
      () => {},
    );
  matchMedia("print").addEventListener("change", () => redraw("ground"));
  store.subscribe((_, changed) => redraw(lowest(changed)));
  attachGestures(hand, store, shelf, choose, scene);
  attachKeys(hand, store, shelf, choose, scene);

  /** @type {DrawOn} */
  const drawOn = (studio, next, size) => {
    const now = stillSceneOf(store.get(), studio, size);
    studio.draw_wheel(next(), now, outlines());
    studio.draw_path(next(), now);
    const labels = studio.draw_labels(next(), now);
    studio.draw_mark(next(), now, labels);
    labels.free();
  };
  return { drawn, drawOn };
}

/**
 * Draws the canvases as large as their frame, at most once a frame: `redraw(layer)`, what they show as `scene()`, and a promise of the first drawing.
 *
 * @param {Store} store
 * @param {HTMLCanvasElement} hand
 * @param {() => Float32Array[]} outlines
 */
function createLayers(store, hand, outlines) {
  const stage = hand.parentElement ?? document.body;
  let size = 0;
  /** The lowest layer to draw, by its place among all. */
  let due = Infinity;
  let isAsked = false;
  /** @type {Labels | null} */
  let labels = null;
  /** @type {() => void} */
  let stands = () => {};
  const drawn = new Promise((/** @type {(nothing?: void) => void} */ resolve) => (stands = resolve));
  const scene = () => sceneOf(store.get(), size);

  /** @param {Layer} layer */
  function redraw(layer) {
    due = Math.min(due, LAYERS.indexOf(layer));
    if (isAsked) return;
    isAsked = true;
    requestAnimationFrame(() => {
      isAsked = false;
      draw();
    });
    // The first step of a drag in a frame is drawn before other views change the page: what letters look like on a
    // canvas is asked of the page's styles, and they would be worked out for all that has changed.
    if (layer === "mark") draw();
  }

  function draw() {
    const from = due;
    due = Infinity;
    if (!size || from === Infinity) return;
    const { studio } = store.get();
    if (from === 0) studio.draw_wheel(cleared("ground", size, studio), scene(), outlines());
    if (labels) drawOver(from);
    // At the start in a task of its own: each layer takes long on a slow machine.
    else setTimeout(drawOver, 0);
  }

  /** What lies over the ground: all of it, or from a layer on. */
  function drawOver(from = 1) {
    const { studio } = store.get();
    const now = scene();
    /** @param {Layer} layer */
    const pen = (layer) => cleared(layer, size, studio);
    if (from < 2) studio.draw_path(pen("path"), now);
    const relabelled = () => {
      labels?.free();
      labels = studio.draw_labels(pen("labels"), now);
      return labels;
    };
    const standing = labels && from > 2 ? labels : relabelled();
    // The mark pushes aside what it would cover.
    if (!studio.draw_mark(pen("mark"), now, standing)) relabelled();
    stands();
  }

  new ResizeObserver(() => {
    size = Math.floor(Math.min(stage.clientWidth, stage.clientHeight || stage.clientWidth));
    // Told between layout and paint: what is drawn now is in this frame.
    due = 0;
    draw();
  }).observe(stage);
  return { drawn, redraw, scene };
}

/**
 * The context of a layer of `size` CSS pixels with nothing on it.
 *
 * @param {Layer} layer
 * @param {number} size
 * @param {Studio} studio
 */
function cleared(layer, size, studio) {
  const canvas = byId(`wheel-${layer}`, HTMLCanvasElement);
  const scale = window.devicePixelRatio || 1;
  const pixels = Math.round(size * scale);
  if (canvas.width !== pixels) canvas.width = canvas.height = pixels;
  canvas.style.width = canvas.style.height = `${size}px`;
  const context = penOf(canvas, { colorSpace: studio.colour_space() });
  context.setTransform(scale, 0, 0, scale, 0, 0);
  context.clearRect(0, 0, size, size);
  return context;
}
