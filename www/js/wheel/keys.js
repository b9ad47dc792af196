// The wheel by keys: along the path, round the paints, and a cross that points at any place.

/** @import { Scene } from "./scene.js" */
/** @import { Choose, Patch, Shelf, Store } from "../state/types.js" */

import { LEAST_LOAD } from "../../pkg/facts.js";
import { isPair, paintEnd, paintOf, pairOf } from "../state/end.js";
import { laid, recipe } from "../words/terms.js";
import * as words from "../words/wheel.js";
import { announce, takePoint } from "./points.js";

/**
 * Lets the focused canvas be used by keys; `scene()` is what it shows.
 *
 * @param {HTMLElement} canvas
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Choose} choose
 * @param {() => Scene} scene
 */
export function attachKeys(canvas, store, shelf, choose, scene) {
  const path = createPathKeys(store, shelf);
  const cross = createCrossKeys(store);
  /** @param {number} step */
  const roundWheel = (step) => toNextPaint(store, shelf, scene(), step);
  /**
   * @param {number} dx
   * @param {number} dy
   * @param {(isFar: boolean) => void} act
   */
  const arrow = (dx, dy, act) => (/** @type {boolean} */ far) =>
    store.get().cross ? cross.move(dx, dy, far) : act(far);
  const take = () => {
    const { cursor, cross } = store.get();
    if (cross) takePoint(store, choose, cross);
    else if (cursor) choose(paintEnd(cursor));
  };
  /**
   * What each key does; `far` where Shift is held.
   *
   * @type {{ [key: string]: (far: boolean) => unknown }}
   */
  const keys = {
    ArrowLeft: arrow(-1, 0, (far) => path.step(false, far)),
    ArrowRight: arrow(1, 0, (far) => path.step(true, far)),
    ArrowUp: arrow(0, 1, () => roundWheel(1)),
    ArrowDown: arrow(0, -1, () => roundWheel(-1)),
    Enter: take,
    " ": take,
    PageUp: () => path.toLoad(2),
    PageDown: () => path.toLoad(0.5),
    Home: () => path.toShare(0),
    End: () => path.toShare(1),
    p: cross.show,
    P: cross.show,
    Escape: () => store.set({ cross: null, cursor: 0 }),
  };

  canvas.addEventListener("keydown", (event) => {
    const act = keys[event.key];
    if (!act || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    act(event.shiftKey);
  });
  canvas.addEventListener("blur", () => store.set({ cursor: 0, cross: null }));
}

/**
 * Verbs that change the mix at hand and say what it is then.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 */
function createPathKeys(store, shelf) {
  /** @param {Patch} patch */
  function put(patch) {
    store.set(patch);
    const state = store.get();
    if (!isPair(state)) return;
    const mix = state.studio.mix(pairOf(state), state.share, state.load);
    announce(laid(recipe(mix.recipe, shelf), state.load, mix.swatch.words));
  }
  /** @param {number} share */
  const toShare = (share) => put({ share });
  return {
    toShare,
    /**
     * A step along the path; far is to the next whole parts.
     *
     * @param {boolean} towardsB
     * @param {boolean} far
     */
    step(towardsB, far) {
      const { studio, share } = store.get();
      toShare(far ? studio.next_parts(share, towardsB) : studio.step_share(share, towardsB ? 1 : -1));
    },
    /** @param {number} factor */
    toLoad: (factor) => put({ load: Math.min(Math.max(store.get().load * factor, LEAST_LOAD), 1) }),
  };
}

/**
 * Verbs of the cross.
 *
 * @param {Store} store
 */
const createCrossKeys = (store) => ({
  /** It starts at the mix at hand. */
  show() {
    const state = store.get();
    const start = isPair(state) ? [...state.studio.wheel_point_of(pairOf(state), state.share, state.load)] : [0, 0];
    store.set({ cross: start, cursor: 0 });
    announce(words.cross);
  },
  /**
   * @param {number} dx
   * @param {number} dy
   * @param {boolean} far
   */
  move(dx, dy, far) {
    const step = far ? 5 : 1;
    const [x, y] = store.get().cross ?? [0, 0];
    const moved = [x + dx * step, y + dy * step];
    if (Math.hypot(...moved) <= store.get().studio.rim()) store.set({ cross: moved });
  },
});

/**
 * The cursor on the next paint round the wheel.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Scene} scene
 * @param {number} step
 */
function toNextPaint(store, shelf, scene, step) {
  const { studio, cursor, ends } = store.get();
  const paints = [...studio.round_the_wheel(scene)];
  if (paints.length === 0) return;
  const from = paints.indexOf(cursor || (paintOf(ends[0]) ?? 0));
  const paint = paints[(from + step + paints.length) % paints.length];
  store.set({ cursor: paint });
  announce(words.paint(shelf.paint(paint)));
}
