// Pictures and tables of the kit, each a file named after it.

import { byId, notice } from "../page/dom.js";
import { fileName, save } from "../page/save.js";
import { isPair } from "../state/end.js";
import { paperOf } from "../state/kit.js";
import { notMade } from "../words/files.js";
import { pathPicture, pngOf, sheetPicture, wheelPicture } from "./pictures.js";
import { csvOf, mixTable, paletteOf, paletteStyle, paletteTable, shelfTable } from "./tables.js";

const DAYLIGHT = 0;
const rest = () => new Promise((resolve) => setTimeout(resolve, 0));

/** Makes each when its button is pressed. `drawWheel` is the page's own. */
export function attachExports(store, shelf, core, drawWheel) {
  /** sRGB, as files have it; pictures in the light at hand, tables in daylight. */
  const studioIn = ({ kit }, light, wet = false) => new core.Studio(paperOf(kit), light, false, wet);
  const picture = (draw) => (state) => pngOf(draw(state, shelf, studioIn(state, state.light, state.wet), drawWheel));
  const palette = (state) => paletteOf(state.kit, shelf, studioIn(state, DAYLIGHT), core);
  const makers = {
    wheel: ["png", picture(wheelPicture)],
    path: ["png", picture(pathPicture)],
    sheet: ["png", picture(sheetPicture)],
    mixes: ["csv", async (state) => csvOf(await mixTable(state.kit, shelf, studioIn(state, DAYLIGHT), core, rest))],
    palette: ["csv", (state) => csvOf(paletteTable(palette(state)))],
    colours: ["css", (state) => paletteStyle(state.kit.title, palette(state))],
    shelf: ["csv", (state) => csvOf(shelfTable(shelf, studioIn(state, DAYLIGHT)))],
  };
  const types = { png: "image/png", csv: "text/csv", css: "text/css" };
  const verbs = [...byId("share-exports").querySelectorAll("button")];
  for (const verb of verbs) {
    const what = verb.dataset.make;
    const [ending, make] = makers[what];
    verb.addEventListener("click", async () => {
      verb.disabled = true;
      try {
        const state = store.get();
        save(await make(state), `${fileName(state.kit.title, what)}.${ending}`, types[ending]);
      } catch (error) {
        notice(notMade(error.message), { seconds: 8 });
      }
      enable(store.get());
    });
  }
  function enable(state) {
    for (const verb of verbs)
      verb.disabled =
        verb.dataset.needs === "pair" ? !isPair(state) : verb.dataset.needs === "pans" && state.kit.pans.length === 0;
  }
  store.subscribe((state, changed) => (changed.has("ends") || changed.has("kit")) && enable(state));
  enable(store.get());
}
