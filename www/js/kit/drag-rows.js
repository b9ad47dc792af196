// Rows of a list dragged by a handle, by mouse, pen or finger: between two others, or onto one.

import { all } from "../page/dom.js";

/** Part of a row's height, from either end, where a drop means the gap beside it. */
const GAP = 0.3;
/** Pixels from the end of what scrolls where it begins to, and by how much at a time. */
const EDGE = 40;
const STEP = 10;

/** @typedef {{ from: number, to?: number, onto?: number }} Verb a move or a join, as places in the list */
/** @typedef {{ at: number, side: string, verb: Verb }} Drop where a row would go: beside or onto another, and the verb that says so */
/** @typedef {{ row: HTMLElement, rows: HTMLElement[], from: number, y: number, scrolled: number, drop: Drop | null }} Drag */

/**
 * Lets `handle` drag its row of `list`. `mayJoin(from, onto)` says whether a row may be dropped onto another;
 * `ondrop` hears `{from, to}` of a move and `{from, onto}` of a join, as places in the list.
 *
 * @param {HTMLElement} handle
 * @param {HTMLElement} list
 * @param {(from: number, onto: number) => boolean} mayJoin
 * @param {(verb: Verb) => void} ondrop
 */
export function attachDrag(handle, list, mayJoin, ondrop) {
  /** @type {Drag | null} */
  let drag = null;

  handle.addEventListener("pointerdown", (event) => {
    if (event.button !== 0) return;
    const rows = all(list, ":scope > li");
    const row = handle.closest("li");
    if (!row) return;
    drag = { row, rows, from: rows.indexOf(row), y: event.clientY, scrolled: list.scrollTop, drop: null };
    handle.setPointerCapture(event.pointerId);
  });
  handle.addEventListener("pointermove", (event) => {
    if (!drag) return;
    scrollAtEdge(list, event.clientY);
    const moved = event.clientY - drag.y + list.scrollTop - drag.scrolled;
    drag.row.style.setProperty("translate", `0 ${moved}px`);
    drag.row.dataset.dragged = "";
    mark(dropAt(drag, event.clientY, mayJoin));
  });
  handle.addEventListener("pointerup", () => {
    const drop = drag?.drop;
    end();
    if (drop) ondrop(drop.verb);
  });
  handle.addEventListener("pointercancel", end);
  handle.addEventListener("lostpointercapture", end);
  handle.addEventListener("keydown", (event) => event.key === "Escape" && end());

  /** @type {(drop: Drop | null) => void} */
  function mark(drop) {
    if (!drag) return;
    for (const row of drag.rows) delete row.dataset.drop;
    drag.drop = drop;
    if (drop) drag.rows[drop.at].dataset.drop = drop.side;
  }

  function end() {
    if (!drag) return;
    mark(null);
    drag.row.style.removeProperty("translate");
    delete drag.row.dataset.dragged;
    drag = null;
  }
}

/**
 * What a drop at a height of the window means: `{at, side, verb}`, or nothing.
 *
 * @param {Drag} drag
 * @param {number} y
 * @param {(from: number, onto: number) => boolean} mayJoin
 */
function dropAt({ rows, row, from }, y, mayJoin) {
  const at = rows.findIndex((other) => {
    const { top, bottom } = other.getBoundingClientRect();
    return other !== row && y >= top && y < bottom;
  });
  if (at < 0) return null;
  const { top, height } = rows[at].getBoundingClientRect();
  const part = (y - top) / height;
  if (part > GAP && part < 1 - GAP && mayJoin(from, at)) return { at, side: "onto", verb: { from, onto: at } };
  const before = part < 0.5;
  const to = before ? (at > from ? at - 1 : at) : at > from ? at : at + 1;
  return to === from ? null : { at, side: before ? "before" : "after", verb: { from, to } };
}

/**
 * Scrolls the list, or the page where the list is as long as it is, while the pointer is near an end.
 *
 * @param {HTMLElement} list
 * @param {number} y
 */
function scrollAtEdge(list, y) {
  const scrolls = list.scrollHeight > list.clientHeight;
  const { top, bottom } = scrolls ? list.getBoundingClientRect() : { top: 0, bottom: innerHeight - EDGE };
  const by = y < top + EDGE ? -STEP : y > bottom - EDGE ? STEP : 0;
  if (by) (scrolls ? list : document.scrollingElement)?.scrollBy(0, by);
}
