// What the core is told to draw: the state as the wheel shows it, and the inks.

/** @import { State, Studio } from "../state/types.js" */

/** @typedef {ReturnType<typeof sceneOf>} Scene */

import { pairOf } from "../state/end.js";
import { paintsOf } from "../state/kit.js";
import { recordsOn } from "../state/path-records.js";

/**
 * The scene of a state on a wheel of `size` CSS pixels.
 *
 * @param {State} state
 * @param {number} size
 */
export const sceneOf = (state, size) => ({
  size,
  kit: paintsOf(state.kit),
  puddles: state.kit.puddles,
  seen: recordsOn(state).map(({ parts, load, seen }) => ({ parts, load, seen })),
  showShelf: state.showShelf,
  pair: pairOf(state),
  asked: state.ends.map((end) => end?.asked?.place ?? null),
  ribbon: state.ribbon,
  pins: state.pins,
  cross: state.cross,
  target: state.target?.lab ?? null,
  share: state.share,
  load: state.load,
  cursor: state.cursor,
  ink: inks(state),
});

/**
 * The same without what only a hand at work needs, on paper-white.
 *
 * @param {State} state
 * @param {Studio} studio
 * @param {number} size
 */
export const stillSceneOf = (state, studio, size) => ({
  ...sceneOf(state, size),
  cursor: 0,
  cross: null,
  ink: inks({ studio, dim: false }),
});

/**
 * Inks that read on the paper, grey or tan as it may be; the names outside it read on the surround.
 *
 * @param {Pick<State, "studio" | "dim">} what
 */
function inks({ studio, dim }) {
  const printing = matchMedia("print").matches;
  // Where the person chose the colours, what is drawn on the surround keeps to them.
  if (matchMedia("(forced-colors: active)").matches)
    return { ...plain(studio), rim: getComputedStyle(document.body).color };
  return { ...plain(studio), rim: dim && !printing ? "#cfcfcf" : "#4a4a4a" };
}

/** @param {Studio} studio */
function plain(studio) {
  return {
    paper: studio.paper(),
    line: "rgba(0,0,0,.13)",
    quiet: "#4a4a4a",
    strong: "#1c1c1c",
    doubt: "rgba(0,0,0,.055)",
  };
}
