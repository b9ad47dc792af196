// The report on the kit: what it can do, what each paint adds, what would come next.

/** @import { Candidate, Worth } from "../state/answers.js" */
/** @import { Ask, Shelf, Store } from "../state/types.js" */

import { question } from "../core/adviser.js";
import { dabOf, paintLine } from "../page/dab.js";
import { button, byId, element } from "../page/dom.js";
import { detailsAround } from "../page/fold.js";
import { afterRest, onceSeen } from "../page/rest.js";
import { paintsOf } from "../state/kit.js";
import * as words from "../words/report.js";
import { pack, packIt } from "../words/tin.js";
import { packPaint } from "./packing.js";
import { addedBy, rolesOf, sentences } from "./report-sentences.js";

const REST = 200;
const FEW = 6;
/**
 * The least that a paint must add by each wish to show in the figure.
 *
 * @type {{ [wish: string]: number }}
 */
const LEAST = { reach: 0.0005, darks: 0.5, neutrals: 0.5 };

/**
 * Shows the report and keeps it up with the kit.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Ask} ask
 * @param {(paint: number) => void} choose
 */
export function attachReport(store, shelf, ask, choose) {
  const said = byId("report-said");
  const worths = byId("worths");
  let turn = 0;

  async function look() {
    const state = store.get();
    const paints = paintsOf(state.kit);
    turn += 1;
    const own = turn;
    if (paints.length === 0) {
      said.replaceChildren(element("p", { class: "quiet" }, words.empty));
      worths.replaceChildren();
      return;
    }
    try {
      const report = await ask("report", question(state));
      if (own !== turn) return;
      said.replaceChildren(
        meter(report.reached),
        element("p", { class: "quiet" }, words.legend),
        element(
          "ul",
          { class: "sentences" },
          ...sentences(report, paints, shelf).map((text) => element("li", {}, text)),
        ),
      );
      worths.replaceChildren(
        element("p", { class: "quiet" }, words.added),
        element("ul", { class: "rows" }, ...report.worths.map(worthRow)),
      );
    } catch (error) {
      said.replaceChildren(element("p", { class: "quiet" }, words.failed(error.message)));
    }
  }

  /** @param {Worth} worth */
  function worthRow(worth) {
    const paint = shelf.paint(worth.paint);
    const take = button("", () => choose(worth.paint), { class: "take" });
    take.append(
      dabOf(store.get().studio, worth.paint, 30),
      element(
        "span",
        { class: "name" },
        `${paint.name} `,
        element("small", {}, paint.code),
        worth.idle ? element("b", { class: "tag" }, words.couldGo) : null,
        element("span", { class: "traits" }, [rolesOf(worth), addedBy(worth)].filter(Boolean).join(" · ")),
      ),
    );
    return element("li", {}, take);
  }

  const soon = afterRest(onceSeen(byId("report"), look), REST);
  store.subscribe((state, changed, before) => {
    if (
      changed.has("kit") &&
      (state.kit.pans !== before.kit.pans ||
        state.kit.stock !== before.kit.stock ||
        state.kit.paper !== before.kit.paper)
    )
      soon();
  });
  soon();
}

/**
 * Two bars, one within the other: colours reached nearly, and closely.
 *
 * @param {[close: number, near: number]} what
 */
function meter([close, near]) {
  const bars = [near, close].map((part) => element("span", { style: { width: `${100 * part}%` } }));
  return element("div", { class: "meter", "aria-hidden": "true" }, ...bars);
}

/**
 * Shows which paint would add most to the kit, by what it is wanted for.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Ask} ask
 */
export function attachNext(store, shelf, ask) {
  const frame = byId("next");
  const wish = element(
    "select",
    { "aria-label": words.nextFor, onchange: look },
    ...Object.entries(words.wishes).map(([value, name]) => element("option", { value }, name)),
  );
  const from = element(
    "select",
    { "aria-label": words.nextFrom, onchange: look },
    ...Object.entries(words.sources).map(([value, name]) => element("option", { value }, name)),
  );
  const list = element("div", { role: "status" });
  frame.replaceChildren(element("div", { class: "title-row" }, wish, from), list);
  const details = detailsAround(frame);
  let turn = 0;

  async function look() {
    if (!details.open) return;
    const state = store.get();
    const candidates = from.value === "owned" ? state.owned : shelf.all.map(({ number }) => number);
    turn += 1;
    const own = turn;
    if (candidates.length === 0) return list.replaceChildren(element("p", { class: "quiet" }, words.noneMarked));
    list.replaceChildren(element("p", { class: "quiet" }, words.comparing));
    try {
      const found = await ask("next", question(state, { candidates: Uint16Array.from(candidates), wish: wish.value }));
      const worth = found.filter(({ gain }) => gain >= LEAST[wish.value]).slice(0, FEW);
      if (own === turn)
        list.replaceChildren(
          worth.length
            ? element("ul", { class: "rows" }, ...worth.map(row))
            : element("p", { class: "quiet" }, words.noneAdds),
        );
    } catch (error) {
      list.replaceChildren(element("p", { class: "quiet" }, words.notCompared(error.message)));
    }
  }

  /** @param {Candidate} candidate */
  function row({ paint: number, gain }) {
    const paint = shelf.paint(number);
    return element(
      "li",
      {},
      dabOf(store.get().studio, number, 30),
      paintLine(paint, words.gains[wish.value](gain)),
      button(pack, () => packPaint(store, paint), { class: "pack", "aria-label": packIt(paint.name) }),
    );
  }

  const soon = afterRest(look, REST);
  details.addEventListener("toggle", look);
  store.subscribe((_, changed) => (changed.has("kit") || changed.has("owned")) && soon());
  soon();
}
