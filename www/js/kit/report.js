// The report on the kit: what it can do, what each paint adds, what would come next.

import { question } from "../core/adviser.js";
import { dabOf, paintLine } from "../page/dab.js";
import { button, byId, detailsAround, element } from "../page/dom.js";
import { afterRest, onceSeen } from "../page/rest.js";
import { percent } from "../page/words.js";
import { paintsOf } from "../state/kit.js";
import { packPaint } from "./packing.js";
import { addedBy, rolesOf, sentences } from "./report-sentences.js";

const REST = 200;
const FEW = 6;
const LEGEND =
  "The bar shows how much of real surface colours the kit reaches, within CIEDE2000 5; its stronger part is matched closely, within 2.";
const ADDED =
  "How much of real surface colours each paint adds that the rest of the kit does not reach, and its darks.";
const WISHES = [
  ["reach", "more colours"],
  ["darks", "deeper darks"],
  ["neutrals", "more greys"],
];

/** What a paint would add by each wish, and the least that shows in the figure. */
const GAINS = {
  reach: { least: 0.0005, say: (gain) => `reaches ${percent(gain, 1)} more of real surface colours` },
  darks: { least: 0.5, say: (gain) => `makes the darks L* ${gain.toFixed(0)} deeper, all hues together` },
  neutrals: { least: 0.5, say: (gain) => `greys ${gain.toFixed(0)} more of the kit’s paints` },
};

/** Shows the report and keeps it up with the kit. */
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
      said.replaceChildren(
        element(
          "p",
          { class: "quiet" },
          "Pack some paints to read here what they reach, their darks and greys, and what is missing.",
        ),
      );
      worths.replaceChildren();
      return;
    }
    try {
      const report = await ask("report", question(state));
      if (own !== turn) return;
      said.replaceChildren(
        meter(report.reached),
        element("p", { class: "quiet" }, LEGEND),
        element(
          "ul",
          { class: "sentences" },
          ...sentences(report, paints, shelf).map((text) => element("li", {}, text)),
        ),
      );
      worths.replaceChildren(
        element("p", { class: "quiet" }, ADDED),
        element("ul", { class: "rows" }, ...report.worths.map(worthRow)),
      );
    } catch (error) {
      said.replaceChildren(element("p", { class: "quiet" }, `The report could not be made: ${error.message}.`));
    }
  }

  function worthRow(worth) {
    const paint = shelf.get(worth.paint);
    const take = button("", () => choose(worth.paint), { class: "take" });
    take.append(
      dabOf(store.get().studio, worth.paint, 30),
      element(
        "span",
        { class: "name" },
        `${paint.name} `,
        element("small", {}, paint.code),
        worth.idle ? element("b", { class: "tag" }, "could go") : null,
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

/** Two bars, one within the other: colours reached nearly, and closely. */
function meter([close, near]) {
  const bars = [near, close].map((part) => element("span", { style: { width: `${100 * part}%` } }));
  return element("div", { class: "meter", "aria-hidden": "true" }, ...bars);
}

/** Shows which paint would add most to the kit, by what it is wanted for. */
export function attachNext(store, shelf, ask) {
  const frame = byId("next");
  const wish = element(
    "select",
    { "aria-label": "What the next paint is for", onchange: look },
    ...WISHES.map(([value, name]) => element("option", { value }, name)),
  );
  const from = element(
    "select",
    { "aria-label": "Where it may come from", onchange: look },
    element("option", { value: "shelf" }, "from the shelf"),
    element("option", { value: "owned" }, "from my paints"),
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
    if (candidates.length === 0)
      return list.replaceChildren(
        element("p", { class: "quiet" }, "Mark the paints you own on the shelf to see them ranked here."),
      );
    list.replaceChildren(element("p", { class: "quiet" }, "Comparing …"));
    try {
      const found = await ask("next", question(state, { candidates: Uint16Array.from(candidates), wish: wish.value }));
      const worth = found.filter(({ gain }) => gain >= GAINS[wish.value].least).slice(0, FEW);
      if (own === turn)
        list.replaceChildren(
          worth.length
            ? element("ul", { class: "rows" }, ...worth.map(row))
            : element("p", { class: "quiet" }, "None of these paints would add anything."),
        );
    } catch (error) {
      list.replaceChildren(element("p", { class: "quiet" }, `Paints could not be compared: ${error.message}.`));
    }
  }

  function row({ paint: number, gain }) {
    const paint = shelf.get(number);
    return element(
      "li",
      {},
      dabOf(store.get().studio, number, 30),
      paintLine(paint, GAINS[wish.value].say(gain)),
      button("Pack", () => packPaint(store, paint), { class: "pack", "aria-label": `Pack ${paint.name}` }),
    );
  }

  const soon = afterRest(look, REST);
  details.addEventListener("toggle", look);
  store.subscribe((_, changed) => (changed.has("kit") || changed.has("owned")) && soon());
  soon();
}
