// Pictures and tables of the kit, each a file named after it.

/** @import { DrawOn } from "../wheel/wheel.js" */
/** @import { Core, Shelf, State, Store, Studio } from "../state/types.js" */

/** @typedef {(state: State, shelf: Shelf, studio: Studio, drawOn: DrawOn) => HTMLCanvasElement} Draw */

import { byId, notice } from "../page/dom.js";
import { fileName, save } from "../page/save.js";
import { isPair } from "../state/end.js";
import { paperOf } from "../state/kit.js";
import { notMade } from "../words/files.js";
import { pathPicture, pngOf, sheetPicture, wheelPicture } from "./pictures.js";
import { csvOf, mixTable, paletteOf, paletteStyle, paletteTable, shelfTable } from "./tables.js";

const TYPES = { png: "image/png", csv: "text/csv", css: "text/css" };
const DAYLIGHT = 0;
const rest = () => new Promise((resolve) => setTimeout(resolve, 0));

/**
 * Makes each when its button is pressed. `drawWheel` is the page's own.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Core} core
 * @param {DrawOn} drawWheel
 */
export function attachExports(store, shelf, core, drawWheel) {
  /**
   * sRGB, as files have it; pictures in the light at hand, tables in daylight.
   *
   * @param {State} state
   * @param {number} light
   * @param {boolean} [wet]
   */
  const studioIn = ({ kit }, light, wet = false) => new core.Studio(paperOf(kit), light, false, wet);
  /** @param {Draw} draw */
  const picture = (draw) => (/** @type {State} */ state) =>
    pngOf(draw(state, shelf, studioIn(state, state.light, state.wet), drawWheel));
  /** @param {State} state */
  const palette = (state) => paletteOf(state.kit, shelf, studioIn(state, DAYLIGHT), core);
  /** @type {{ [what: string]: [ending: keyof typeof TYPES, make: (state: State) => string | Promise<BlobPart>] }} */
  const makers = {
    wheel: ["png", picture(wheelPicture)],
    path: ["png", picture(pathPicture)],
    sheet: ["png", picture(sheetPicture)],
    mixes: ["csv", async (state) => csvOf(await mixTable(state.kit, shelf, studioIn(state, DAYLIGHT), core, rest))],
    palette: ["csv", (state) => csvOf(paletteTable(palette(state)))],
    colours: ["css", (state) => paletteStyle(state.kit.title, palette(state))],
    shelf: ["csv", (state) => csvOf(shelfTable(shelf, studioIn(state, DAYLIGHT)))],
  };
  const verbs = [...byId("share-exports").querySelectorAll("button")];
  for (const verb of verbs) {
    const { make: what = "" } = verb.dataset;
    const [ending, make] = makers[what];
    verb.addEventListener("click", async () => {
      verb.disabled = true;
      try {
        const state = store.get();
        save(await make(state), `${fileName(state.kit.title, what)}.${ending}`, TYPES[ending]);
      } catch (error) {
        notice(notMade(error.message), { seconds: 8 });
      }
      enable(store.get());
    });
  }
  /** @param {State} state */
  function enable(state) {
    for (const verb of verbs)
      verb.disabled =
        verb.dataset.needs === "pair" ? !isPair(state) : verb.dataset.needs === "pans" && state.kit.pans.length === 0;
  }
  store.subscribe((state, changed) => (changed.has("ends") || changed.has("kit")) && enable(state));
  enable(store.get());
}
