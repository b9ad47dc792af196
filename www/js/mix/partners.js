// Partners of a paint: what neutralises it, and what shades it.

import { chip, dabOf, paintLine } from "../page/dab.js";
import { button, byId, element } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { afterRest, onceSeen } from "../page/rest.js";
import { paintEnd, shortName } from "../state/end.js";
import { paintsOf } from "../state/kit.js";
import * as words from "../words/partners.js";

const FEW = 5;
/** Milliseconds of rest before the lists are made anew. */
const REST = 180;

/** Shows the partners of A or of B; a click makes one the other end, at the ratio told. */
export function attachPartners(store, shelf) {
  const frame = byId("partners");
  let asked = { kind: "neutral", side: 0, more: false };
  const ask = (patch) => {
    asked = { ...asked, ...patch };
    show();
  };

  function show() {
    const { ends, studio, kit, load } = store.get();
    const { kind, more } = asked;
    const side = sideOf(ends);
    if (!ends[side]) return remake(frame, ...nothing());
    const packed = paintsOf(kit);
    const found = studio.partners(ends[side].parts, load)[kind];
    const own = found.filter(({ paint }) => packed.includes(paint));
    const others = found.filter(({ paint }) => !packed.includes(paint));
    const rows = (partners) => partners.map((partner) => row(partner, kind, shelf, studio, choosePartner));
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

  /** The end that is asked about, or the other where it is not chosen yet. */
  const sideOf = (ends) => (ends[asked.side] ? asked.side : 1 - asked.side);

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

/** A list of the ends that are chosen: whose partners are shown. */
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

const kindChoice = (kind, onpick) =>
  element(
    "div",
    { class: "choices", role: "group", "aria-label": words.kind },
    ...Object.entries(words.kinds).map(([key, word]) =>
      button(word, () => onpick(key), { "aria-pressed": String(kind === key), "data-focus": key }),
    ),
  );

const moreVerb = (more, count, onclick) =>
  button(more ? words.fewer : words.all(count), onclick, { "data-focus": "more" });

const list = (title, rows, none) =>
  element(
    "div",
    {},
    element("h4", {}, title),
    rows.length ? element("ul", { class: "rows" }, ...rows) : element("p", { class: "quiet" }, none),
  );

function row(partner, kind, shelf, studio, choose) {
  const paint = shelf.get(partner.paint);
  const [own, its] = partner.parts;
  const take = button("", () => choose(partner), { class: "take" });
  take.append(
    dabOf(studio, partner.paint, 30),
    paintLine(paint, words.does[kind](`${own}:${its}`, partner)),
    chip(partner.swatch.css),
  );
  return element("li", {}, take);
}
