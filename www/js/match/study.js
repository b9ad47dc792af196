// A value study: the photo repainted with the nearest mixes of the kit, beside the original, and in greys.

import { question } from "../core/adviser.js";
import { penOf } from "../page/canvas.js";
import { button, byId, element } from "../page/dom.js";
import { paintsOf } from "../state/kit.js";

/** Shows the studies; answers a verb that takes a new photo's pixels, or nothing. */
export function attachStudy(store, ask) {
  const frame = byId("study");
  /** @type {ImageData | null} */
  let photo = null;
  let turn = 0;
  const steps = element(
    "select",
    { "aria-label": "Steps of value", onchange: () => pictures.childElementCount > 0 && repaint() },
    ...[
      ["0", "all values"],
      ["3", "3 values"],
      ["5", "5 values"],
      ["7", "7 values"],
    ].map(([value, name]) => element("option", { value }, name)),
  );
  const paint = button("Repaint with this kit", repaint);
  const pictures = element("div", { class: "studies" });
  const said = element("p", { class: "quiet", role: "status" });
  frame.replaceChildren(
    element("h3", {}, "Value study"),
    element("div", { class: "verbs" }, steps, paint),
    said,
    pictures,
  );

  /** Asked again while it runs, the later answer counts. */
  async function repaint() {
    if (!photo) return;
    const state = store.get();
    if (paintsOf(state.kit).length === 0) {
      said.textContent = "The tin is empty: pack paints first.";
      return;
    }
    turn += 1;
    const own = turn;
    const { data, width, height } = photo;
    said.textContent = "Repainting …";
    try {
      const asked = question(state, { data, width, height, steps: Number(steps.value) });
      const { colours, greys } = await ask("study", asked);
      if (own !== turn) return;
      const title = { "The photo": data, "With this kit": colours, "In greys": greys };
      pictures.replaceChildren(...Object.entries(title).map(([name, bytes]) => picture(name, bytes, width, height)));
      said.textContent = "";
    } catch (error) {
      if (own === turn) said.textContent = `It could not be repainted: ${error.message}.`;
    }
  }

  return (pixels) => {
    turn += 1;
    photo = pixels;
    frame.hidden = !pixels;
    pictures.replaceChildren();
    said.textContent = "";
  };
}

/** A named picture of RGBA bytes. */
function picture(name, bytes, width, height) {
  const canvas = element("canvas", { width, height, class: "picture", role: "img", "aria-label": name });
  penOf(canvas).putImageData(new ImageData(new Uint8ClampedArray(bytes), width, height), 0, 0);
  return element("figure", {}, canvas, element("figcaption", {}, name));
}
