// The report on the kit: what it can do, what each paint adds, what would come next.

import { question } from "../core/adviser.js";
import { dabOf } from "../page/dab.js";
import { button, byId, detailsAround, element } from "../page/dom.js";
import { afterRest, onceSeen } from "../page/rest.js";
import { paintsOf } from "../state/kit.js";
import { packPaint } from "./packing.js";
import { lostWithout, rolesOf, sentences } from "./report-sentences.js";

const REST = 200;
const FEW = 6;
const LEGEND = "Of real surface colours. Long bar: reached, within 5 CIEDE2000; short bar: closely, within 2.";
const WISHES = [
  ["reach", "more colours"],
  ["darks", "deeper darks"],
  ["neutrals", "more greys"],
];

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
          "A packed kit is reported on here: what it reaches, its darks and greys, what it lacks.",
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
      worths.replaceChildren(element("ul", { class: "rows" }, ...report.worths.map(worthRow)));
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
        worth.idle ? element("b", { class: "tag" }, "idle") : null,
        element("span", { class: "traits" }, rolesOf(worth, shelf)),
        element("span", { class: "traits" }, lostWithout(worth)),
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
    element("option", { value: "shelf" }, "of the shelf"),
    element("option", { value: "owned" }, "that I own"),
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
        element("p", { class: "quiet" }, "Mark the paints you own on the shelf, and they are ranked here."),
      );
    list.replaceChildren(element("p", { class: "quiet" }, "Comparing …"));
    try {
      const found = await ask("next", question(state, { candidates: Uint16Array.from(candidates), wish: wish.value }));
      if (own === turn)
        list.replaceChildren(
          found.length
            ? element("ul", { class: "rows" }, ...found.slice(0, FEW).map(row))
            : element("p", { class: "quiet" }, "None of these paints would add any."),
        );
    } catch (error) {
      list.replaceChildren(element("p", { class: "quiet" }, `Paints could not be compared: ${error.message}.`));
    }
  }

  const GAINS = {
    reach: (gain) => `${(100 * gain).toFixed(1)} % more of real surface colours`,
    darks: (gain) => `darks ${gain.toFixed(0)} L* deeper, all hues together`,
    neutrals: (gain) => `greys ${gain.toFixed(0)} more of the kit’s paints`,
  };

  function row({ paint: number, gain }) {
    const paint = shelf.get(number);
    return element(
      "li",
      {},
      dabOf(store.get().studio, number, 30),
      element(
        "span",
        { class: "name" },
        `${paint.name} `,
        element("small", {}, paint.code),
        element("span", { class: "traits" }, GAINS[wish.value](gain)),
      ),
      button("Pack", () => packPaint(store, paint), { class: "pack", "aria-label": `Pack ${paint.name}` }),
    );
  }

  const soon = afterRest(look, REST);
  details.addEventListener("toggle", look);
  store.subscribe((_, changed) => (changed.has("kit") || changed.has("owned")) && soon());
  soon();
}
