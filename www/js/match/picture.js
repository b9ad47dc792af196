// The photo on its canvas: drawn, and pointed into by pointer or by arrow keys.

/** @typedef {{ x: number, y: number, radius: number }} Circle in pixels of the photo */

import { penOf } from "../page/canvas.js";
import { element } from "../page/dom.js";
import * as words from "../words/photo.js";

/** A circle that is seen on light and on dark. */
const RINGS = [
  { width: 4, colour: "#fff" },
  { width: 1.5, colour: "#000" },
];

/** @type {{ [key: string]: number[] }} */
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

/**
 * Answers the canvas and the field for the size of a sample, as nodes; `show` takes pixels, or nothing, and `mark` draws a
 * circle on them. `onpoint` hears what is pointed at: a circle in pixels of the photo, as `{x, y, radius}`.
 *
 * @param {(circle: Circle) => void} onpoint
 */
export function createPicture(onpoint) {
  /** @type {ImageData | null} */
  let pixels = null;
  /**
   * Where the arrow keys are.
   *
   * @type {{ x: number, y: number } | null}
   */
  let cursor = null;
  const size = element("input", { type: "range", min: 1, max: 40, value: 6, "aria-label": words.size });
  const sizeField = element("label", { class: "slider" }, element("span", { class: "caption" }, words.size), size);
  const canvas = element("canvas", {
    class: "picture",
    tabindex: 0,
    role: "img",
    "aria-label": words.canvas,
    /** @param {MouseEvent} event */
    onclick: (event) => pixels && onpoint(at(event, pixels)),
    /** @param {KeyboardEvent} event */
    onkeydown: (event) => pixels && byKey(event, pixels),
  });
  show(null);

  /** @param {ImageData | null} next */
  function show(next) {
    pixels = next;
    canvas.hidden = sizeField.hidden = !pixels;
    if (pixels) draw(pixels);
  }

  /** @param {ImageData} pixels */
  function draw(pixels) {
    canvas.style.setProperty("--ratio", String(pixels.width / pixels.height));
    canvas.width = pixels.width;
    canvas.height = pixels.height;
    penOf(canvas).putImageData(pixels, 0, 0);
  }

  /** @param {Circle} circle */
  function mark({ x, y, radius }) {
    if (!pixels) return;
    draw(pixels);
    const context = penOf(canvas);
    for (const { width, colour } of RINGS) {
      context.beginPath();
      context.arc(x, y, radius, 0, 2 * Math.PI);
      context.lineWidth = width * (pixels.width / canvas.clientWidth);
      context.strokeStyle = colour;
      context.stroke();
    }
  }

  /**
   * @param {MouseEvent} event
   * @param {ImageData} pixels
   */
  function at({ clientX, clientY }, pixels) {
    const { left, top, width } = canvas.getBoundingClientRect();
    const scale = pixels.width / width;
    return { x: (clientX - left) * scale, y: (clientY - top) * scale, radius: Number(size.value) * scale };
  }

  /**
   * Arrows move the circle, with Shift farther; Enter points at what is in it.
   *
   * @param {KeyboardEvent} event
   * @param {ImageData} pixels
   */
  function byKey(event, { width, height }) {
    const step = ARROWS[event.key];
    if (!step && event.key !== "Enter") return;
    event.preventDefault();
    const { x, y } = cursor ?? { x: width / 2, y: height / 2 };
    const far = width / (event.shiftKey ? 16 : 80);
    cursor = step ? { x: within(x + step[0] * far, width), y: within(y + step[1] * far, height) } : { x, y };
    const circle = { ...cursor, radius: (Number(size.value) * width) / canvas.clientWidth };
    if (step) mark(circle);
    else onpoint(circle);
  }

  return { canvas, sizeField, show, mark };
}

/**
 * @param {number} value
 * @param {number} most
 */
const within = (value, most) => Math.min(Math.max(value, 0), most - 1);
