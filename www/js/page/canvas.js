// Canvases to draw on.

import * as words from "../words/page.js";

/**
 * What draws on a canvas. Throws where the browser has no room for one.
 *
 * @param {HTMLCanvasElement} canvas
 * @param {CanvasRenderingContext2DSettings} [settings]
 */
export function penOf(canvas, settings) {
  const pen = canvas.getContext("2d", settings);
  if (!pen) throw new Error(words.noCanvas);
  return pen;
}
