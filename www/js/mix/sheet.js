// The sheet: ratio across, load down; each cell a mix to choose.

/** @import { Swatch } from "../state/answers.js" */
/** @import { Core, Shelf, State, Store } from "../state/types.js" */

/** @typedef {[a: number, b: number]} Ratio */
/** @typedef {{ node: HTMLElement, share: number, load: number }} Cell */

import { LOADS, RATIOS } from "../../pkg/facts.js";
import { byId, element, focusedAmong } from "../page/dom.js";
import { isPair, pairOf, shortName } from "../state/end.js";
import { recordsOn, shareOf } from "../state/path-records.js";
import * as words from "../words/sheet.js";

/** @param {Ratio} ratio */
export const share = ([a, b]) => b / (a + b);

/**
 * Shows the sheet of the two ends and marks the cell of the mix at hand.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Core} core
 */
export function attachSheet(store, shelf, core) {
  const frame = byId("sheet");
  /**
   * All cells, row by row.
   *
   * @type {Cell[]}
   */
  let cells = [];

  /**
   * @param {State} state
   * @param {Set<string>} [changed]
   */
  function show(state, changed) {
    if (!changed || ["ends", "studio", "laid", "records"].some((key) => changed.has(key))) draw(state);
    if (!changed || ["ends", "studio", "laid", "records", "share", "load"].some((key) => changed.has(key)))
      mark(cells, state);
  }

  /** @param {State} state */
  function draw(state) {
    cells = [];
    if (!isPair(state)) return frame.replaceChildren(element("p", { class: "quiet" }, words.empty));
    cells = cellsOf(state, (share, load) => store.set({ share, load }));
    frame.replaceChildren(table(cells, caption(state, shelf)));
    pinRecords(cells, state, core);
  }

  frame.addEventListener("keydown", (event) => moveOn(event, cells));
  store.subscribe(show);
  show(store.get());
}

/**
 * The cells of a state, row by row.
 *
 * @param {State} state
 * @param {(share: number, load: number) => void} choose
 * @returns {Cell[]}
 */
function cellsOf(state, choose) {
  const swatches = state.studio.sheet(
    pairOf(state),
    Float32Array.from(RATIOS, share),
    Float32Array.from(LOADS, ([load]) => load),
  );
  return LOADS.flatMap(([load, name], row) =>
    RATIOS.map((ratio, column) => {
      const swatch = swatches[row * RATIOS.length + column];
      return { node: cell(swatch, ratio, load, name, choose), share: share(ratio), load };
    }),
  );
}

/**
 * @param {Cell[]} cells
 * @param {string} caption
 */
function table(cells, caption) {
  const head = RATIOS.map((ratio) => element("th", { scope: "col" }, columnName(ratio)));
  const rows = LOADS.map(([, name, sign], row) =>
    element(
      "tr",
      {},
      element("th", { scope: "row", title: name }, sign),
      ...RATIOS.map((_, column) => element("td", {}, cells[row * RATIOS.length + column].node)),
    ),
  );
  return element(
    "table",
    {},
    element("caption", { class: "unseen" }, caption),
    element("thead", {}, element("tr", {}, element("td", {}), ...head)),
    element("tbody", {}, ...rows),
  );
}

/**
 * @param {State} state
 * @param {Shelf} shelf
 */
const caption = (state, shelf) =>
  words.caption(
    state.laid,
    pairOf(state).ends.map((parts) => shortName(parts, shelf)),
  );

/**
 * @param {Swatch} swatch
 * @param {Ratio} ratio
 * @param {number} load
 * @param {string} name
 * @param {(share: number, load: number) => void} choose
 */
const cell = (swatch, ratio, load, name, choose) =>
  element("button", {
    type: "button",
    class: "cell",
    tabindex: -1,
    onclick: () => choose(share(ratio), load),
    style: { "--wash": swatch.css },
    "data-beyond": swatch.exact ? null : "",
    "aria-label": words.cell(columnName(ratio), name, swatch.words),
  });

/**
 * Chips of what was recorded, in the cell nearest to it.
 *
 * @param {Cell[]} cells
 * @param {State} state
 * @param {Core} core
 */
function pinRecords(cells, state, core) {
  const { studio, ends } = state;
  for (const record of recordsOn(state)) {
    const at = shareOf(record, ends);
    if (at === null || cells.length === 0) continue;
    /** @param {Cell} cell */
    const far = ({ share, load }) =>
      Math.abs(studio.position_of(share) - studio.position_of(at)) + 0.1 * Math.abs(Math.log2(load / record.load));
    const nearest = cells.reduce((best, other) => (far(other) < far(best) ? other : best));
    const { css } = studio.colour(Float32Array.from(core.lab_of_seen(Float32Array.from(record.seen))));
    nearest.node.append(element("span", { class: "recorded", title: words.recorded, style: { "--wash": css } }));
  }
}

/**
 * One cell takes part in tabbing: the one at hand, or the first.
 *
 * @param {Cell[]} cells
 * @param {State} state
 */
function mark(cells, { share: at, load: amount }) {
  const current = cells.find(({ share, load }) => Math.abs(share - at) < 1e-4 && Math.abs(load - amount) < 1e-4);
  const stop = current ?? cells.find(({ node }) => node === document.activeElement) ?? cells[0];
  for (const cell of cells) {
    const [tabIndex, pressed] = [cell === stop ? 0 : -1, String(cell === current)];
    if (cell.node.tabIndex !== tabIndex) cell.node.tabIndex = tabIndex;
    if (cell.node.getAttribute("aria-pressed") !== pressed) cell.node.setAttribute("aria-pressed", pressed);
  }
}

/** @type {{ [key: string]: number[] }} */
const STEPS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

/**
 * An arrow goes on to the next cell and chooses it.
 *
 * @param {KeyboardEvent} event
 * @param {Cell[]} cells
 */
function moveOn(event, cells) {
  const step = STEPS[event.key];
  const from = focusedAmong(cells.map(({ node }) => node));
  if (!step || from < 0) return;
  event.preventDefault();
  const column = (from % RATIOS.length) + step[0];
  const row = Math.floor(from / RATIOS.length) + step[1];
  if (column < 0 || column >= RATIOS.length || row < 0 || row >= LOADS.length) return;
  const next = cells[row * RATIOS.length + column].node;
  next.focus();
  next.click();
}

/**
 * A column's name: "2:1", or the end alone.
 *
 * @param {Ratio} ratio
 */
export function columnName([a, b]) {
  if (b === 0) return "A";
  if (a === 0) return "B";
  return `${a}:${b}`;
}
