// Pictures to send: the wheel, the path with its mix, the sheet; each with a title and a caption, at two pixels for one.

/** @import { DrawOn } from "../wheel/wheel.js" */
/** @import { Shelf, State, Studio } from "../state/types.js" */

import { LIGHTS, LOADS, PAPERS, RATIOS } from "../../pkg/facts.js";
import { columnName, share } from "../mix/sheet.js";
import { penOf } from "../page/canvas.js";
import { element } from "../page/dom.js";
import { isPair, pairOf, shortName } from "../state/end.js";
import { capital } from "../words/form.js";
import * as words from "../words/print.js";
import { crossingSentence, recipe } from "../words/terms.js";

const SCALE = 2;
const WIDTH = 760;
const EDGE = 32;
const INNER = WIDTH - 2 * EDGE;
const HEAD = 92;
const FOOT = 52;
const INK = "#1c1c1c";
const QUIET = "#505050";
const FACE = '"Source Sans 3", system-ui, sans-serif';

/**
 * A sheet of paper-white with title, line below it and caption; `draw(context)` fills what is between, its origin at the inner corner.
 *
 * @param {State} state
 * @param {string} title
 * @param {string} line
 * @param {number} height
 * @param {(context: CanvasRenderingContext2D) => void} draw
 */
function leaf(state, title, line, height, draw) {
  const { kit, light, wet } = state;
  const canvas = element("canvas", { width: WIDTH * SCALE, height: (HEAD + height + FOOT) * SCALE });
  const context = penOf(canvas);
  context.scale(SCALE, SCALE);
  context.fillStyle = "#fdfdfd";
  context.fillRect(0, 0, WIDTH, HEAD + height + FOOT);
  write(context, title, EDGE, 42, { size: 24, bold: true });
  write(context, line, EDGE, 66);
  const caption = words.caption(LIGHTS[light], wet, kit.paper ? null : PAPERS[kit.stock]);
  write(context, caption, EDGE, HEAD + height + 32, { size: 14, ink: QUIET });
  context.save();
  context.translate(EDGE, HEAD);
  draw(context);
  context.restore();
  return canvas;
}

/**
 * @param {CanvasRenderingContext2D} context
 * @param {string} text
 * @param {number} x
 * @param {number} y
 * @param {{ size?: number, bold?: boolean, ink?: string, align?: CanvasTextAlign, most?: number }} [what]
 */
function write(context, text, x, y, { size = 16, bold = false, ink = INK, align = "left", most = INNER } = {}) {
  context.font = `${bold ? 600 : 400} ${size}px ${FACE}`;
  context.fillStyle = ink;
  context.textAlign = align;
  context.fillText(text, x, y, most);
}

/** @param {State} state */
const titleOf = ({ kit }) => kit.title || words.someKit;

/**
 * @param {State} state
 * @param {Shelf} shelf
 */
const endsOf = ({ ends, laid }, shelf) => {
  const [a, b] = pairOf({ ends, laid }).ends.map((parts) => capital(shortName(parts, shelf)));
  return words.ends(laid, a, b);
};

/**
 * The wheel; `drawWheel(studio, next, size)` is the page's own, and asks for the next layer's pen.
 *
 * @param {State} state
 * @param {Shelf} shelf
 * @param {Studio} studio
 * @param {DrawOn} drawWheel
 */
export function wheelPicture(state, shelf, studio, drawWheel) {
  const line = isPair(state) ? endsOf(state, shelf) : words.onWheel;
  return leaf(state, titleOf(state), line, INNER, (context) => {
    /** @type {HTMLCanvasElement[]} */
    const layers = [];
    const next = () => {
      const canvas = element("canvas", { width: INNER * SCALE, height: INNER * SCALE });
      layers.push(canvas);
      const own = penOf(canvas);
      own.scale(SCALE, SCALE);
      return own;
    };
    drawWheel(studio, next, INNER);
    for (const canvas of layers) context.drawImage(canvas, 0, 0, INNER, INNER);
  });
}

/**
 * The path at the load at hand, with the mix in words and numbers.
 *
 * @param {State} state
 * @param {Shelf} shelf
 * @param {Studio} studio
 */
export function pathPicture(state, shelf, studio) {
  const pair = pairOf(state);
  const mix = studio.mix(pair, state.share, state.load);
  const crossing = studio.crossing(pair, state.load);
  const { swatch } = mix;
  return leaf(state, endsOf(state, shelf), titleOf(state), 320, (context) => {
    const ramp = studio.ramp(pair, state.load, 256);
    ramp.forEach((css, i) => {
      context.fillStyle = css;
      context.fillRect((INNER * i) / ramp.length, 0, INNER / ramp.length + 0.5, 72);
    });
    /** @param {number} share */
    const at = (share) =>
      ((studio.position_of(share) - studio.position_of(0)) / (studio.position_of(1) - studio.position_of(0))) * INNER;
    context.strokeStyle = INK;
    context.lineWidth = 2;
    context.strokeRect(Math.min(Math.max(at(state.share) - 6, 1), INNER - 13), -5, 12, 82);
    const names = pair.ends.map((parts) => capital(shortName(parts, shelf)));
    write(context, words.endA(names[0]), 0, 100, { size: 14, most: INNER / 2 - 8 });
    write(context, words.endB(names[1]), INNER, 100, { size: 14, align: "right", most: INNER / 2 - 8 });
    context.fillStyle = swatch.css;
    context.beginPath();
    context.roundRect(0, 124, 220, 150, [42, 9, 36, 11]);
    context.fill();
    /** @type {[string, object?][]} */
    const lines = [
      [capital(swatch.words), { size: 22, bold: true }],
      [recipe(mix.recipe, shelf)],
      [words.laid(state.load, mix.parts.join(":"))],
      [words.figures(swatch, mix.expected), { bold: true }],
      [mix.texture ? capital(mix.texture) : ""],
    ];
    lines.forEach(([text, style], i) => write(context, text, 244, 146 + i * 29, { ...style, most: INNER - 244 }));
    write(context, crossingSentence(crossing, names), 0, 308);
  });
}

/**
 * The sheet of the two ends: ratio across, load down.
 *
 * @param {State} state
 * @param {Shelf} shelf
 * @param {Studio} studio
 */
export function sheetPicture(state, shelf, studio) {
  const left = 124;
  const [wide, high, gap] = [(INNER - left) / RATIOS.length, 58, 4];
  const cells = studio.sheet(
    pairOf(state),
    Float32Array.from(RATIOS, share),
    Float32Array.from(LOADS, ([load]) => load),
  );
  return leaf(state, endsOf(state, shelf), titleOf(state), 30 + LOADS.length * high, (context) => {
    RATIOS.forEach((ratio, i) =>
      write(context, columnName(ratio), left + (i + 0.5) * wide, 18, { size: 14, align: "center" }),
    );
    LOADS.forEach(([, name, sign], row) => {
      write(context, words.row(name, sign), 0, 30 + row * high + high / 2, { size: 14, most: left - 8 });
      RATIOS.forEach((_, column) => {
        context.fillStyle = cells[row * RATIOS.length + column].css;
        context.beginPath();
        context.roundRect(left + column * wide, 30 + row * high, wide - gap, high - gap, [8, 3, 7, 4]);
        context.fill();
      });
    });
  });
}

/**
 * The canvas as a PNG.
 *
 * @param {HTMLCanvasElement} canvas
 */
export const pngOf = (canvas) =>
  new Promise((resolve, reject) =>
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error(words.noPicture))), "image/png"),
  );
