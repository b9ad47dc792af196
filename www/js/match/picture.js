// The photo on its canvas: drawn, and pointed into by pointer or by arrow keys.

import { element } from "../page/dom.js";

const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

/**
 * Answers the canvas and the field for the size of a sample, as nodes; `show` takes pixels, or nothing, and `mark` draws a
 * circle on them. `onpoint` hears what is pointed at: a circle in pixels of the photo, as `{x, y, radius}`.
 */
export function createPicture(onpoint) {
  let pixels = null;
  /** Where the arrow keys are. */
  let cursor = null;
  const size = element("input", { type: "range", min: 1, max: 40, value: 6, "aria-label": "Size of the sample" });
  const sizeField = element("label", { class: "field" }, element("span", {}, "Size of the sample"), size);
  const canvas = element("canvas", {
    class: "picture",
    tabindex: 0,
    role: "img",
    "aria-label": "The photo: click to sample a colour",
    onclick: (event) => pixels && onpoint(at(event)),
    onkeydown: (event) => pixels && byKey(event),
  });
  show(null);

  function show(next) {
    pixels = next;
    canvas.hidden = sizeField.hidden = !pixels;
    if (pixels) draw();
  }

  function draw() {
    canvas.width = pixels.width;
    canvas.height = pixels.height;
    canvas.getContext("2d").putImageData(pixels, 0, 0);
  }

  /** A circle that is seen on light and on dark. */
  function mark({ x, y, radius }) {
    draw();
    const context = canvas.getContext("2d");
    for (const [width, colour] of [
      [4, "#fff"],
      [1.5, "#000"],
    ]) {
      context.beginPath();
      context.arc(x, y, radius, 0, 2 * Math.PI);
      context.lineWidth = width * (pixels.width / canvas.clientWidth);
      context.strokeStyle = colour;
      context.stroke();
    }
  }

  function at({ clientX, clientY }) {
    const { left, top, width } = canvas.getBoundingClientRect();
    const scale = pixels.width / width;
    return { x: (clientX - left) * scale, y: (clientY - top) * scale, radius: Number(size.value) * scale };
  }

  /** Arrows move the circle, with Shift farther; Enter points at what is in it. */
  function byKey(event) {
    const step = ARROWS[event.key];
    if (!step && event.key !== "Enter") return;
    event.preventDefault();
    const { width, height } = pixels;
    cursor ??= { x: width / 2, y: height / 2 };
    if (step) {
      const far = width / (event.shiftKey ? 16 : 80);
      cursor = { x: within(cursor.x + step[0] * far, width), y: within(cursor.y + step[1] * far, height) };
    }
    const circle = { ...cursor, radius: (Number(size.value) * width) / canvas.clientWidth };
    if (step) mark(circle);
    else onpoint(circle);
  }

  return { canvas, sizeField, show, mark };
}

const within = (value, most) => Math.min(Math.max(value, 0), most - 1);
