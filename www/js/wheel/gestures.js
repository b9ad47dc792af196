// The wheel by mouse, pen and finger: a drag follows the path, a press that stays put means what is under it.

/** @import { Scene } from "./scene.js" */
/** @import { Choose, Shelf, State, Store, Studio } from "../state/types.js" */

import { paintEnd } from "../state/end.js";
import * as words from "../words/wheel.js";
import { pickTarget, takePoint } from "./points.js";

/** @typedef {{ [kind: string]: number }} Reach pixels, by the kind of pointer */

/**
 * Pixels from a dab, and from the path, at which a press still means it.
 *
 * @type {Reach}
 */
const REACH = { mouse: 20, pen: 22, touch: 30 };
/** @type {Reach} */
const PATH_REACH = { mouse: 16, pen: 20, touch: 26 };
/** Pixels a press may wander and still not be a drag. */
const STILL = 4;

/** @type {(event: MouseEvent) => [x: number, y: number]} */
const at = (event) => [event.offsetX, event.offsetY];

/**
 * @param {PointerEvent} event
 * @param {Reach} kind
 */
const near = (event, kind) => kind[event.pointerType] ?? kind.mouse;

/**
 * Lets the canvas be pressed and dragged on; `scene()` is what it shows.
 *
 * @param {HTMLElement} canvas
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Choose} choose
 * @param {() => Scene} scene
 */
export function attachGestures(canvas, store, shelf, choose, scene) {
  /** @type {{ meant: (() => void) | null, follows: boolean, moved: boolean, x: number, y: number } | null} */
  let press = null;

  canvas.addEventListener("pointerdown", (event) => {
    const begun = pressOf(event, store, choose, scene());
    press = begun;
    canvas.setPointerCapture(event.pointerId);
    if (begun.follows && !begun.meant) follow(event);
  });
  // A finger on the path drags the mix; elsewhere it may scroll the page.
  canvas.addEventListener("touchstart", (event) => press?.follows && event.cancelable && event.preventDefault(), {
    passive: false,
  });
  canvas.addEventListener("pointermove", (event) => {
    if (!press) return event.pointerType === "mouse" && hint(canvas, event, store.get(), shelf, scene());
    press.moved ||= Math.hypot(event.clientX - press.x, event.clientY - press.y) > STILL;
    if (press.follows && (press.moved || !press.meant)) follow(event);
  });
  canvas.addEventListener("pointerup", (event) => {
    const ended = press;
    press = null;
    if (!ended || ended.moved) return;
    if (ended.meant) return ended.meant();
    if (ended.follows) return;
    const point = store.get().studio.wheel_point_at(scene().size, ...at(event));
    if (point) takePoint(store, choose, [...point]);
  });
  canvas.addEventListener("pointercancel", () => (press = null));

  /**
   * The share under the pointer; Alt lets it pass whole parts by.
   *
   * @param {PointerEvent} event
   */
  function follow(event) {
    const found = store.get().studio.share_at(scene(), ...at(event), !event.altKey);
    if (found) store.set({ share: found[0] });
  }
}

/**
 * A press as it begins: what it means if it stays put, and whether the mix follows it if it does not.
 *
 * @param {PointerEvent} event
 * @param {Store} store
 * @param {Choose} choose
 * @param {Scene} scene
 */
function pressOf(event, store, choose, scene) {
  const { studio, picking } = store.get();
  // While a colour is picked, every spot of the wheel is a place.
  const meant = picking
    ? () => pickTarget(store, [...(studio.wheel_point_at(scene.size, ...at(event)) ?? [0, 0])])
    : meaning(event, store.get(), choose, scene);
  const [, offPath, offMark] = studio.share_at(scene, ...at(event), false) ?? [0, Infinity, Infinity];
  const reach = near(event, PATH_REACH);
  // The mark may stand on a dab: a press that then stays put means the paint.
  const follows = offMark <= reach || (offPath <= reach && !meant);
  return { meant, follows, moved: false, x: event.clientX, y: event.clientY };
}

/**
 * What lies under a pointer: a puddle by its index, a paint by its number, or neither.
 *
 * @param {PointerEvent} event
 * @param {Studio} studio
 * @param {Scene} scene
 * @param {number} reach
 */
function under(event, studio, scene, reach) {
  const puddle = studio.puddle_at(scene, ...at(event), reach);
  return puddle === undefined ? { paint: studio.paint_at(scene, ...at(event), reach) } : { puddle };
}

/**
 * What a press means by the puddle or paint under it, or nothing.
 *
 * @param {PointerEvent} event
 * @param {State} state
 * @param {Choose} choose
 * @param {Scene} scene
 */
function meaning(event, { studio, kit }, choose, scene) {
  const { puddle, paint } = under(event, studio, scene, near(event, REACH));
  if (puddle !== undefined) return () => choose({ parts: kit.puddles[puddle].parts });
  return paint ? () => choose(paintEnd(paint)) : null;
}

/**
 * Names what is under a mouse that rests.
 *
 * @param {HTMLElement} canvas
 * @param {PointerEvent} event
 * @param {State} state
 * @param {Shelf} shelf
 * @param {Scene} scene
 */
function hint(canvas, event, { studio }, shelf, scene) {
  const { puddle, paint } = under(event, studio, scene, REACH.mouse);
  canvas.style.cursor = paint || puddle !== undefined ? "pointer" : "default";
  if (puddle !== undefined) canvas.title = words.puddle(puddle + 1);
  else canvas.title = paint ? words.hint(shelf.paint(paint)) : "";
}
