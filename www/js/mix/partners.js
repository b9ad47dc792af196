// Partners of a paint: what neutralises it, and what shades it.

/** @import { Partner } from "../state/answers.js" */
/** @import { Shelf, State, Store, Studio } from "../state/types.js" */

/** @typedef {"neutral" | "shading"} Kind */
/** @typedef {{ kind: Kind, side: number, more: boolean }} Asked */

import { chip, dabOf, paintLine } from "../page/dab.js";
import { button, byId, element } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { afterRest, onceSeen } from "../page/rest.js";
import { paintEnd, shortName } from "../state/end.js";
import { paintsOf } from "../state/kit.js";
import * as words from "../words/partners.js";

/** @type {Kind[]} */
const KINDS = ["neutral", "shading"];
const FEW = 5;
/** Milliseconds of rest before the lists are made anew. */
const REST = 180;

/**
 * Shows the partners of A or of B; a click makes one the other end, at the ratio told.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 */
export function attachPartners(store, shelf) {
  const frame = byId("partners");
  /** @type {Asked} */
  let asked = { kind: "neutral", side: 0, more: false };
  /** @param {Partial<Asked>} patch */
  const ask = (patch) => {
    asked = { ...asked, ...patch };
    show();
  };

  function show() {
    const { ends, studio, kit, load } = store.get();
    const { kind, more } = asked;
    const side = sideOf(ends);
    const end = ends[side];
    if (!end) return remake(frame, ...nothing());
    const packed = paintsOf(kit);
    const { neutral, shading } = studio.partners(end.parts, load);
    const found =
      kind === "neutral"
        ? neutral.map((partner) => ({ partner, said: words.neutralises(partner.parts.join(":"), partner) }))
        : shading.map((partner) => ({ partner, said: words.shades(partner.parts.join(":"), partner) }));
    const own = found.filter(({ partner }) => packed.includes(partner.paint));
    const others = found.filter(({ partner }) => !packed.includes(partner.paint));
    /** @param {{ partner: Partner, said: string }[]} some */
    const rows = (some) => some.map(({ partner, said }) => row(partner, said, shelf, studio, choosePartner));
    remake(
      frame,
      element(
        "div",
        { class: "title-row" },
        element("h3", {}, words.titleOf),
        sideChoice(ends, side, shelf, (side) => ask({ side })),
      ),
      kindChoice(kind, (kind) => ask({ kind })),
      element("p", { class: "quiet" }, words.explained[kind]),
      list(words.inKit, rows(own), words.noneInKit),
      list(words.onShelf, rows(more ? others : others.slice(0, FEW)), words.noneOnShelf),
      others.length > FEW ? moreVerb(more, others.length, () => ask({ more: !more })) : "",
    );
  }

  /**
   * The end that is asked about, or the other where it is not chosen yet.
   *
   * @param {State["ends"]} ends
   */
  const sideOf = (ends) => (ends[asked.side] ? asked.side : 1 - asked.side);

  /** @param {Partner} partner */
  function choosePartner({ paint, share }) {
    const { ends } = store.get();
    const own = sideOf(ends);
    const both = own === 0 ? [ends[own], paintEnd(paint)] : [paintEnd(paint), ends[own]];
    store.set({ ends: both, next: 1 - own, laid: 0, share: own === 0 ? share : 1 - share });
  }

  const soon = afterRest(onceSeen(frame, show), REST);
  store.subscribe((_, changed) => ["ends", "studio", "load", "kit"].some((key) => changed.has(key)) && soon());
  soon();
}

/** What stands there while no end is chosen. */
const nothing = () => [element("h3", {}, words.title), element("p", { class: "quiet" }, words.empty)];

/**
 * A list of the ends that are chosen: whose partners are shown.
 *
 * @param {State["ends"]} ends
 * @param {number} side
 * @param {Shelf} shelf
 * @param {(side: number) => void} onpick
 */
function sideChoice(ends, side, shelf, onpick) {
  const names = ends.map((end, i) => end && words.side(i, shortName(end.parts, shelf)));
  const options = names.map((name, i) => name && element("option", { value: i, selected: i === side }, name));
  const select = element(
    "select",
    { "aria-label": words.whose, "data-focus": "side", onchange: () => onpick(Number(select.value)) },
    ...options,
  );
  return select;
}

/**
 * @param {Kind} kind
 * @param {(kind: Kind) => void} onpick
 */
const kindChoice = (kind, onpick) =>
  element(
    "div",
    { class: "choices", role: "group", "aria-label": words.kind },
    ...KINDS.map((key) =>
      button(words.kinds[key], () => onpick(key), { "aria-pressed": String(kind === key), "data-focus": key }),
    ),
  );

/**
 * @param {boolean} more
 * @param {number} count
 * @param {() => void} onclick
 */
const moreVerb = (more, count, onclick) =>
  button(more ? words.fewer : words.all(count), onclick, { "data-focus": "more" });

/**
 * @param {string} title
 * @param {Node[]} rows
 * @param {string} none
 */
const list = (title, rows, none) =>
  element(
    "div",
    {},
    element("h4", {}, title),
    rows.length ? element("ul", { class: "rows" }, ...rows) : element("p", { class: "quiet" }, none),
  );

/**
 * @param {Partner} partner
 * @param {string} said
 * @param {Shelf} shelf
 * @param {Studio} studio
 * @param {(partner: Partner) => void} choose
 */
function row(partner, said, shelf, studio, choose) {
  const paint = shelf.paint(partner.paint);
  const take = button("", () => choose(partner), { class: "take" });
  take.append(dabOf(studio, partner.paint, 30), paintLine(paint, said), chip(partner.swatch.css));
  return element("li", {}, take);
}
