// A broad wash of the mix at hand, with its grain.

import { penOf } from "../page/canvas.js";
import { element } from "../page/dom.js";
import { isPair, pairOf } from "../state/end.js";

/** Most pixels of the canvas to one of the page: the grain takes long to lay. */
const FINEST = 2;

/** A canvas of the wash. The colour itself stands behind it, where the canvas has no room to be measured yet. */
export function createWash(store) {
  const canvas = element("canvas", { class: "wash", "aria-hidden": "true" });
  let isMeasured = false;
  const paint = () => {
    isMeasured = true;
    if (isPair(store.get())) lay(canvas, store.get());
  };
  // The first measuring comes by itself; it is in a task of its own, as the grain takes long.
  new ResizeObserver(() => (isMeasured ? paint() : setTimeout(paint, 0))).observe(canvas);
  return {
    node: canvas,
    show(state, swatch) {
      canvas.style.setProperty("--wash", swatch.css);
      if (isMeasured) lay(canvas, state);
    },
  };
}

function lay(canvas, state) {
  const { studio, share, load } = state;
  const scale = Math.min(window.devicePixelRatio || 1, FINEST);
  const [width, height] = [canvas.clientWidth, canvas.clientHeight].map((length) => Math.round(length * scale));
  if (width === 0 || height === 0) return;
  if (canvas.width !== width || canvas.height !== height) [canvas.width, canvas.height] = [width, height];
  const bytes = new Uint8ClampedArray(studio.wash(pairOf(state), share, load, width, height, scale));
  const colorSpace = studio.colour_space();
  penOf(canvas, { colorSpace }).putImageData(new ImageData(bytes, width, height, { colorSpace }), 0, 0);
}
