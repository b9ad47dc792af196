// Two kits beside each other: what each reaches, its darks, and what it alone holds. No state.

/** @import { Report, Swatch } from "../state/answers.js" */
/** @import { KitContent, Shelf, Studio } from "../state/types.js" */

/** @typedef {[name: string, cells: (Node | string)[][]]} Row */

import { chip, dabOf } from "../page/dab.js";
import { element } from "../page/dom.js";
import { nameOf, paintsOf } from "../state/kit.js";
import { percent } from "../words/form.js";
import * as words from "../words/kits.js";

/**
 * Nodes that compare two kits by their reports; a kit without paints has none.
 *
 * @param {KitContent[]} kits
 * @param {(Report | null)[]} reports
 * @param {Shelf} shelf
 * @param {Studio} studio
 */
export function comparison(kits, reports, shelf, studio) {
  const [mine, its] = kits.map(paintsOf);
  return [
    tableOf(kits, rowsOf(reports)),
    element("p", { class: "quiet" }, words.legend),
    ...onlyIn(kits[0], mine, its, shelf, studio),
    ...onlyIn(kits[1], its, mine, shelf, studio),
  ];
}

/**
 * Each figure's name and what it is of either kit.
 *
 * @type {(reports: (Report | null)[]) => Row[]}
 */
function rowsOf(reports) {
  /** @type {(i: 0 | 1) => string[][]} */
  const part = (i) => reports.map((report) => [report ? percent(report.reached[i]) : words.none]);
  /** @type {(i: number) => (Node | string)[][]} */
  const darkest = (i) => reports.map((report) => lightnessOf(report?.darks[i].swatch));
  /** @type {Row[]} */
  const darks = ((reports[0] ?? reports[1])?.darks ?? []).map(({ hue }, i) => [words.darkest(hue), darkest(i)]);
  return [
    [words.reached, part(1)],
    [words.reachedClosely, part(0)],
    [words.greying, reports.map((report) => [String(report?.neutrals.length ?? 0)])],
    ...darks,
  ];
}

/** @param {Swatch | null | undefined} swatch */
const lightnessOf = (swatch) => (swatch ? [chip(swatch.css), words.value(swatch.lightness)] : [words.none]);

/**
 * @param {KitContent[]} kits
 * @param {Row[]} rows
 */
const tableOf = (kits, rows) =>
  element(
    "table",
    { class: "figures" },
    element(
      "thead",
      {},
      element("tr", {}, element("td", {}), ...kits.map((kit) => element("th", { scope: "col" }, nameOf(kit)))),
    ),
    element(
      "tbody",
      {},
      ...rows.map(([name, cells]) =>
        element("tr", {}, element("th", { scope: "row" }, name), ...cells.map((cell) => element("td", {}, ...cell))),
      ),
    ),
  );

/**
 * The paints that a kit holds and the other does not.
 *
 * @param {KitContent} kit
 * @param {number[]} own
 * @param {number[]} other
 * @param {Shelf} shelf
 * @param {Studio} studio
 */
function onlyIn(kit, own, other, shelf, studio) {
  const rows = own
    .filter((paint) => !other.includes(paint))
    .map((paint) => {
      const { name, code } = shelf.paint(paint);
      return element("li", {}, dabOf(studio, paint, 30), element("span", {}, `${name} `, element("small", {}, code)));
    });
  return [
    element("h3", {}, words.onlyIn(nameOf(kit))),
    rows.length ? element("ul", { class: "rows kept" }, ...rows) : element("p", {}, words.nothing),
  ];
}
