// A value study: the photo repainted with the nearest mixes of the kit, beside the original, and in greys.

/** @import { Ask, Store } from "../state/types.js" */

import { question } from "../core/adviser.js";
import { penOf } from "../page/canvas.js";
import { button, byId, element } from "../page/dom.js";
import { paintsOf } from "../state/kit.js";
import * as words from "../words/photo.js";

/** Steps of value that a study may have; 0 is all of them. */
const STEPS = [0, 3, 5, 7];

/**
 * Shows the studies; answers a verb that takes a new photo's pixels, or nothing.
 *
 * @param {Store} store
 * @param {Ask} ask
 */
export function attachStudy(store, ask) {
  const frame = byId("study");
  /** @type {ImageData | null} */
  let photo = null;
  let turn = 0;
  const steps = element(
    "select",
    { "aria-label": words.steps, onchange: () => pictures.childElementCount > 0 && repaint() },
    ...STEPS.map((value) => element("option", { value }, value ? words.values(value) : words.allValues)),
  );
  const paint = button(words.repaint, repaint);
  const pictures = element("div", { class: "studies" });
  const said = element("p", { class: "quiet", role: "status" });
  frame.replaceChildren(
    element("h3", {}, words.study),
    element("div", { class: "verbs" }, steps, paint),
    said,
    pictures,
  );

  /** Asked again while it runs, the later answer counts. */
  async function repaint() {
    if (!photo) return;
    const state = store.get();
    if (paintsOf(state.kit).length === 0) {
      said.textContent = words.emptyTin;
      return;
    }
    turn += 1;
    const own = turn;
    const { data, width, height } = photo;
    said.textContent = words.repainting;
    try {
      const asked = question(state, { data, width, height, steps: Number(steps.value) });
      const { colours, greys } = await ask("study", asked);
      if (own !== turn) return;
      pictures.replaceChildren(
        picture(words.original, data, width, height),
        picture(words.withKit, colours, width, height),
        picture(words.inGreys, greys, width, height),
      );
      said.textContent = "";
    } catch (error) {
      if (own === turn) said.textContent = words.notRepainted(error.message);
    }
  }

  return (/** @type {ImageData | null} */ pixels) => {
    turn += 1;
    photo = pixels;
    frame.hidden = !pixels;
    pictures.replaceChildren();
    said.textContent = "";
  };
}

/**
 * A named picture of RGBA bytes.
 *
 * @param {string} name
 * @param {ArrayLike<number>} bytes
 * @param {number} width
 * @param {number} height
 */
function picture(name, bytes, width, height) {
  const canvas = element("canvas", { width, height, class: "picture", role: "img", "aria-label": name });
  penOf(canvas).putImageData(new ImageData(new Uint8ClampedArray(bytes), width, height), 0, 0);
  return element("figure", {}, canvas, element("figcaption", {}, name));
}
