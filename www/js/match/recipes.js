// Recipes for the target: what of the kit comes nearest, and what keeps it from being exact.

/** @import { Match, Matches } from "../state/answers.js" */
/** @import { Ask, Part, Shelf, State, Store } from "../state/types.js" */

import { question } from "../core/adviser.js";
import { button, byId, element } from "../page/dom.js";
import { afterRest } from "../page/rest.js";
import { shortName } from "../state/end.js";
import { paintsOf } from "../state/kit.js";
import { pathOf } from "../state/path.js";
import * as words from "../words/target.js";

const REST = 150;

/**
 * Paints of a source.
 *
 * @param {State} state
 * @param {string} source
 * @param {Shelf} shelf
 */
function paintsFrom({ kit, owned }, source, shelf) {
  if (source === "owned") return owned;
  return source === "shelf" ? shelf.all.map(({ number }) => number) : paintsOf(kit);
}

/**
 * Recipes with the fewest paints first, where one is no nearer than the other by more than is known of them; else the nearest.
 *
 * @param {Match[]} matches
 * @param {number} doubt
 */
function fewestFirst(matches, doubt) {
  const least = Math.min(...matches.map(({ error }) => error));
  /** @param {Match} match */
  const step = ({ error }) => Math.floor((error - least) / doubt);
  return matches.toSorted((a, b) => step(a) - step(b) || a.parts.length - b.parts.length || a.error - b.error);
}

/**
 * Shows up to ten recipes; a click puts one on the path. `tell` hears the row of the nearest one, or nothing.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Ask} ask
 * @param {() => void} show
 * @param {(row: Node | null) => void} tell
 */
export function attachRecipes(store, shelf, ask, show, tell) {
  const frame = byId("recipes");
  let source = "kit";
  let turn = 0;
  const from = element(
    "select",
    {
      "aria-label": words.recipes,
      onchange: () => {
        source = from.value;
        soon();
      },
    },
    ...Object.entries(words.sources).map(([value, name]) => element("option", { value }, name)),
  );
  const body = element("div", { role: "status" });
  frame.replaceChildren(element("div", { class: "title-row" }, element("h3", {}, words.recipes), from), body);

  async function look() {
    const state = store.get();
    turn += 1;
    const own = turn;
    const paints = paintsFrom(state, source, shelf);
    if (!state.target) return body.replaceChildren(element("p", { class: "quiet" }, words.noTarget));
    if (paints.length === 0)
      return body.replaceChildren(
        element("p", { class: "quiet" }, source === "owned" ? words.noneMarked : words.emptyTin),
      );
    try {
      const found = await ask(
        "match",
        question(state, { paints: Uint16Array.from(paints), target: Float32Array.from(state.target.lab) }),
      );
      if (own === turn) fill(found);
    } catch (error) {
      if (own === turn) body.replaceChildren(element("p", { class: "quiet" }, words.failed(error.message)));
    }
  }

  /** @param {Matches} found */
  function fill({ matches, shortfall, light }) {
    const notes = [shortfall && words.inexact(shortfall), light && words.differs(light)].filter(Boolean);
    const doubt = matches[0]?.doubt ?? 0;
    const [first] = fewestFirst(matches, doubt);
    tell(first ? row(first) : null);
    body.replaceChildren(
      ...notes.map((note) => element("p", { class: "shift" }, note)),
      element("p", { class: "quiet" }, words.rank(doubt)),
      element("ul", { class: "rows" }, ...fewestFirst(matches, doubt).map(row)),
    );
  }

  /** @param {Match} match */
  function row({ parts, load, swatch, error, doubt }) {
    const take = button("", () => onPath(parts, load), { class: "take" });
    take.append(
      element("span", { class: "chip", style: { "--wash": swatch.css } }),
      element(
        "span",
        { class: "name" },
        shortName(parts, shelf),
        element("span", { class: "traits" }, words.off(load, error, doubt)),
      ),
    );
    return element("li", {}, take);
  }

  /**
   * @param {Part[]} parts
   * @param {number} load
   */
  function onPath(parts, load) {
    store.set({ ...pathOf(parts), load, laid: 0, next: 0 });
    show();
  }

  const soon = afterRest(look, REST);
  store.subscribe((_, changed) => {
    if (["target", "kit", "owned"].some((key) => changed.has(key))) soon();
  });
  soon();
}
