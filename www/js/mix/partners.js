// Partners of a paint: what neutralises it, and what shades it.

import { dabOf } from "../page/dab.js";
import { button, byId, element } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { afterRest, onceSeen } from "../page/rest.js";
import { paintEnd, shortName } from "../state/end.js";
import { paintsOf } from "../state/kit.js";

const KINDS = [
  ["neutral", "Neutral"],
  ["shading", "Shading"],
];
const EXPLAINED = {
  neutral:
    "These grey it, the greyest first. They need not stand opposite on the wheel: two paints neutralise when one takes in the light that the other sends back, band by band, and one colour can be made of many spectra.",
  shading: "These lower its value most while it keeps its hue: another thing than greying it.",
};
const FEW = 5;
/** Milliseconds of rest before the lists are made anew. */
const REST = 180;

/** Shows the partners of A or of B; a click makes one the other end, at the ratio told. */
export function attachPartners(store, shelf) {
  const frame = byId("partners");
  let kind = "neutral";
  let side = 0;
  let more = false;

  function show() {
    const { ends, studio, kit, load } = store.get();
    const end = ends[side] ?? ends[1 - side];
    if (!end)
      return remake(
        frame,
        element("h3", {}, "Partners"),
        element("p", { class: "quiet" }, "Choose a paint to see what neutralises it and what shades it."),
      );
    const packed = paintsOf(kit);
    const found = studio.partners(end.parts, load)[kind];
    const own = found.filter(({ paint }) => packed.includes(paint));
    const others = found.filter(({ paint }) => !packed.includes(paint));
    const shown = more ? others : others.slice(0, FEW);
    remake(
      frame,
      element(
        "div",
        { class: "title-row" },
        element("h3", {}, "Partners of"),
        choice(
          "Whose partners",
          ends
            .map((each, i) => [i, each ? `${"AB"[i]}: ${shortName(each.parts, shelf)}` : null])
            .filter(([, name]) => name),
          ends[side] ? side : 1 - side,
          (value) => (side = Number(value)),
        ),
      ),
      element(
        "div",
        { class: "choices", role: "group", "aria-label": "Kind of partner" },
        ...KINDS.map(([key, word]) =>
          button(
            word,
            () => {
              kind = key;
              show();
            },
            { "aria-pressed": String(kind === key), "data-focus": key },
          ),
        ),
      ),
      element("p", { class: "quiet" }, EXPLAINED[kind]),
      list("In the kit", own, "None in the kit."),
      list("On the shelf", shown, "None on the shelf."),
      others.length > FEW
        ? button(
            more ? "Fewer" : `All ${others.length}`,
            () => {
              more = !more;
              show();
            },
            { "data-focus": "more" },
          )
        : "",
    );
  }

  function choice(label, options, current, onpick) {
    const select = element(
      "select",
      {
        "aria-label": label,
        "data-focus": "side",
        onchange: () => {
          onpick(select.value);
          show();
        },
      },
      ...options.map(([value, name]) => element("option", { value, selected: value === current }, name)),
    );
    return select;
  }

  function list(title, found, none) {
    if (found.length === 0) return element("div", {}, element("h4", {}, title), element("p", { class: "quiet" }, none));
    return element("div", {}, element("h4", {}, title), element("ul", { class: "rows" }, ...found.map(row)));
  }

  function row(partner) {
    const paint = shelf.get(partner.paint);
    const [own, its] = partner.parts;
    const take = button("", () => choosePartner(partner), { class: "take" });
    take.append(
      dabOf(store.get().studio, partner.paint, 30),
      element(
        "span",
        { class: "name" },
        `${paint.name} `,
        element("small", {}, paint.code),
        element("span", { class: "traits" }, `${own}:${its} · ${words(partner)}`),
      ),
      element("span", { class: "chip", style: { "--wash": partner.swatch.css } }),
    );
    return element("li", {}, take);
  }

  function words({ swatch, lean, warmth, drop, drift, dark }) {
    if (kind === "neutral")
      return `L* ${swatch.lightness.toFixed(0)}, C* ${swatch.chroma.toFixed(0)}, ${warmth}, leaning ${lean}; down to L* ${dark.toFixed(0)}`;
    return `L* ${swatch.lightness.toFixed(0)}, ${drop.toFixed(0)} darker, hue ${drift < 0.5 ? "kept" : `turns ${drift.toFixed(0)}°`}`;
  }

  function choosePartner({ paint, share }) {
    const { ends } = store.get();
    const own = ends[side] ? side : 1 - side;
    const both = own === 0 ? [ends[own], paintEnd(paint)] : [paintEnd(paint), ends[own]];
    store.set({ ends: both, next: 1 - own, laid: 0, share: own === 0 ? share : 1 - share });
  }

  const soon = afterRest(onceSeen(frame, show), REST);
  store.subscribe((_, changed) => ["ends", "studio", "load", "kit"].some((key) => changed.has(key)) && soon());
  soon();
}
