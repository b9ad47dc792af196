// What the painter owns: which owned paints stand in for those of the kit that are not.

/** @import { Substitute } from "../state/answers.js" */
/** @import { Ask, Shelf, Store } from "../state/types.js" */

import { question } from "../core/adviser.js";
import { twin } from "../page/dab.js";
import { button, byId, element, say } from "../page/dom.js";
import { detailsAround } from "../page/fold.js";
import { afterRest } from "../page/rest.js";
import { shortName } from "../state/end.js";
import { replace } from "../state/pans.js";
import * as words from "../words/substitutes.js";

const REST = 200;
/** Load at which a paint and what stands in for it are shown side by side. */
const COMPARED = 0.5;
/** CIEDE2000 from which a paint is another colour, not the same one from elsewhere. */
const FAR = 10;

/**
 * The owned paints with one more, or without it.
 *
 * @param {number[]} owned
 * @param {number} paint
 */
export const toggleOwned = (owned, paint) =>
  owned.includes(paint) ? owned.filter((known) => known !== paint) : [...owned, paint];

/**
 * Shows, for each paint of the kit that is not owned, what of the owned ones comes nearest.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Ask} ask
 */
export function attachSubstitutes(store, shelf, ask) {
  const frame = byId("owned");
  const details = detailsAround(frame);
  let turn = 0;

  async function look() {
    if (!details.open) return;
    const state = store.get();
    turn += 1;
    const own = turn;
    if (state.owned.length === 0) return frame.replaceChildren(element("p", { class: "quiet" }, words.noneMarked));
    frame.replaceChildren(element("p", { class: "quiet" }, words.comparing));
    try {
      const found = await ask("substitutes", question(state, { owned: Uint16Array.from(state.owned) }));
      if (own === turn) show(found);
    } catch (error) {
      frame.replaceChildren(element("p", { class: "quiet" }, words.failed(error.message)));
    }
  }

  /** @param {[paint: number, found: Substitute[]][]} found */
  function show(found) {
    if (found.length === 0) return frame.replaceChildren(element("p", { class: "quiet" }, words.allOwned));
    // What comes nowhere near stays: a blue for a yellow is not the same kit.
    const singles = found.flatMap(([paint, subs]) =>
      subs
        .filter(({ parts, alone }) => parts.length === 1 && alone <= FAR)
        .slice(0, 1)
        .map((sub) => [paint, sub.parts[0][0]]),
    );
    frame.replaceChildren(
      element("ul", { class: "rows" }, ...found.map(row)),
      button(
        words.turn,
        () => {
          store.set({ kit: singles.reduce((kit, [paint, by]) => replace(kit, paint, by), store.get().kit) });
          say(words.turned(found.length - singles.length));
        },
        { disabled: singles.length === 0 },
      ),
    );
  }

  /** @param {[paint: number, found: Substitute[]]} what */
  function row([paint, subs]) {
    const { name, code } = shelf.paint(paint);
    const { studio } = store.get();
    // Of what is far off, one is enough: the nearest.
    const near = subs.filter(({ alone }) => alone <= FAR);
    const told = near.length > 0 ? near : subs.slice(0, 1);
    const lines = told.map(({ parts, alone, mixed }) =>
      element(
        "span",
        { class: "pairing" },
        twin(studio.swatch([[paint, 1]], COMPARED).css, studio.swatch(parts, COMPARED).css),
        element("span", {}, (near.length > 0 ? words.off : words.farOff)(shortName(parts, shelf), alone, mixed)),
      ),
    );
    const single = subs.find(({ parts }) => parts.length === 1);
    return element(
      "li",
      {},
      element("span", { class: "name" }, `${name} `, element("small", {}, code), ...lines),
      single
        ? button(
            words.swap,
            () => {
              store.set({ kit: replace(store.get().kit, paint, single.parts[0][0]) });
              say(words.swapped);
            },
            { class: "pack", "aria-label": words.swapIt(name, shelf.paint(single.parts[0][0]).name) },
          )
        : null,
    );
  }

  const soon = afterRest(look, REST);
  details.addEventListener("toggle", look);
  store.subscribe((_, changed) => (changed.has("kit") || changed.has("owned")) && soon());
  soon();
}
