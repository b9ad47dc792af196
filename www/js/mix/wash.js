// A broad wash of the mix at hand, with its grain and the pool along its edge.

/** @import { Swatch } from "../state/answers.js" */
/** @import { State, Store } from "../state/types.js" */

import { penOf } from "../page/canvas.js";
import { element } from "../page/dom.js";
import { isPair, pairOf } from "../state/end.js";

/** Most pixels of the canvas to one of the page: the grain takes long to lay. */
const FINEST = 2;

/**
 * A canvas of the wash. The colour itself stands there until the canvas has been measured.
 *
 * @param {Store} store
 */
export function createWash(store) {
  const canvas = element("canvas", { class: "wash", "aria-hidden": "true" });
  /** @type {ReturnType<typeof imageOf>} */
  let image = null;
  /** @param {State} state */
  const lay = (state) => {
    if (!image) return;
    const { studio, share, load } = state;
    const { width, height, data } = image.pixels;
    studio.wash(pairOf(state), share, load, width, height, image.scale, data);
    canvas.classList.add("painted");
    image.pen.putImageData(image.pixels, 0, 0);
  };
  const paint = () => {
    const state = store.get();
    image = imageOf(canvas, state.studio.colour_space());
    if (isPair(state)) lay(state);
  };
  // The first measuring comes by itself; it is in a task of its own, as the grain takes long.
  new ResizeObserver(() => (image ? paint() : setTimeout(paint, 0))).observe(canvas);
  return {
    node: canvas,
    /**
     * @param {State} state
     * @param {Swatch} swatch
     */
    show(state, swatch) {
      canvas.style.setProperty("--wash", swatch.css);
      if (image && image.pixels.colorSpace !== state.studio.colour_space()) paint();
      else lay(state);
    },
  };
}

/**
 * Room for the pixels of a canvas as large as it is shown, kept from one mix to the next; nothing where it is not shown.
 *
 * @param {HTMLCanvasElement} canvas
 * @param {PredefinedColorSpace} colorSpace
 */
function imageOf(canvas, colorSpace) {
  const scale = Math.min(window.devicePixelRatio || 1, FINEST);
  const [width, height] = [canvas.clientWidth, canvas.clientHeight].map((length) => Math.round(length * scale));
  if (width === 0 || height === 0) return null;
  if (canvas.width !== width || canvas.height !== height) [canvas.width, canvas.height] = [width, height];
  return {
    scale,
    pixels: new ImageData(width, height, { colorSpace }),
    pen: penOf(canvas, { colorSpace }),
  };
}
