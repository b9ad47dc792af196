// A place: colours with weights that the painter wants to reach, found in a photo or gathered by hand.

import { question } from "../core/adviser.js";
import { packPaint } from "../kit/packing.js";
import { button, byId, element, notice, say } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { afterRest } from "../page/rest.js";
import { loadName } from "../page/words.js";
import { pathOf, shortName } from "../state/end.js";
import { paintsOf } from "../state/kit.js";
import { targetOf } from "../state/target.js";
import {
  addColour,
  dropColour,
  MOST_COLOURS,
  MOST_PLACES,
  putPlace,
  removePlace,
  renamePlace,
  weigh,
} from "../state/targets.js";

const REST = 200;
const NEAR = 5;
const FEW = 3;

/** Shows the places of the kit; answers a verb that takes a new photo's pixels, or nothing. */
export function attachPlace(store, shelf, ask, { showMix, chooseFor }) {
  const frame = byId("place");
  let photo = null;
  let current = 0;
  let count = 12;
  let turn = 0;
  const body = element("div", {});
  const head = element("div", {});
  frame.replaceChildren(head, body);

  const edit = (kit, word) => {
    store.set({ kit });
    if (word) say(word);
  };

  function showHead() {
    const { kit, target } = store.get();
    current = Math.min(current, Math.max(kit.places.length - 1, 0));
    const place = kit.places[current];
    const list = element(
      "select",
      {
        "aria-label": "Place",
        "data-focus": "place",
        onchange: () => {
          current = list.selectedIndex;
          refresh();
        },
      },
      ...kit.places.map(({ name }, i) => element("option", { selected: i === current }, name || "untitled")),
    );
    const number = element("input", {
      type: "number",
      min: 8,
      max: MOST_COLOURS,
      value: count,
      "aria-label": "How many colours",
      "data-focus": "count",
      onchange: () => (count = Math.min(Math.max(Math.round(number.value) || 12, 8), MOST_COLOURS)),
    });
    const name =
      place &&
      element("input", {
        class: "title",
        "aria-label": "Name of the place",
        maxlength: 40,
        value: place.name,
        "data-focus": "name",
        onchange: () => edit(renamePlace(store.get().kit, current, name.value)),
      });
    remake(
      head,
      element("div", { class: "title-row" }, element("h3", {}, "Place"), kit.places.length > 1 ? list : ""),
      name ?? "",
      element(
        "div",
        { class: "verbs" },
        element("label", { class: "tick" }, number, " colours"),
        button("Find them in the photo", find, { disabled: !photo, "data-focus": "find" }),
        button("Add the colour to match", () => add(target.lab), { disabled: !target, "data-focus": "add" }),
        place
          ? button("Remove this place", () => edit(removePlace(store.get().kit, current), "Place removed"), {
              "data-focus": "remove",
            })
          : "",
      ),
    );
    if (!place)
      remake(
        body,
        element(
          "p",
          { class: "quiet" },
          "Open a photo of where you go, and find its colours; or add colours one by one. Then this says how much of the place the kit reaches.",
        ),
      );
  }

  async function find() {
    const { data, width, height } = photo;
    try {
      const colours = await ask("cluster", { data, width, height, count });
      const { kit } = store.get();
      if (kit.places.length >= MOST_PLACES)
        return notice(`A kit keeps ${MOST_PLACES} places. Remove one first.`, { seconds: 8 });
      current = kit.places.length;
      edit(putPlace(kit, { name: `Place ${current + 1}`, colours }), `${colours.length} colours found`);
    } catch (error) {
      notice(`No colours could be found: ${error.message}.`);
    }
  }

  function add(lab) {
    const { kit } = store.get();
    if ((kit.places[current]?.colours.length ?? 0) >= MOST_COLOURS)
      return notice(`A place holds ${MOST_COLOURS} colours.`, { seconds: 6 });
    edit(addColour(kit, current, lab), "Colour added to the place");
  }

  async function refresh() {
    showHead();
    const state = store.get();
    const place = state.kit.places[current];
    turn += 1;
    const own = turn;
    if (!place) return;
    const paints = paintsOf(state.kit);
    if (paints.length === 0)
      return remake(
        body,
        element("p", { class: "quiet" }, "The tin is empty: pack paints to see what they reach here."),
      );
    try {
      const asked = { place: place.colours.map(({ lab, weight }) => [lab, weight]) };
      const nearest = await ask("nearest", question(state, asked));
      if (own !== turn) return;
      const said = answer(state, place, nearest);
      remake(body, ...said);
      const better = await ask(
        "nextForPlace",
        question(state, { ...asked, candidates: Uint16Array.from(shelf.all, ({ number }) => number) }),
      );
      if (own === turn) remake(body, ...said, next(better));
    } catch (error) {
      if (own === turn)
        remake(body, element("p", { class: "quiet" }, `The place could not be looked at: ${error.message}.`));
    }
  }

  /** How much of the place the kit reaches, colour by colour. */
  function answer({ studio }, place, nearest) {
    const whole = place.colours.reduce((sum, { weight }) => sum + weight, 0);
    const reached = nearest.map(({ error }) => error <= NEAR);
    const part = place.colours.reduce((sum, { weight }, i) => sum + (reached[i] ? weight : 0), 0) / whole;
    return [
      element(
        "p",
        {},
        element(
          "b",
          {},
          `Reaches ${reached.filter(Boolean).length} of ${reached.length} colours, ${(100 * part).toFixed(0)} % of the place`,
        ),
        ` within CIEDE2000 ${NEAR}.`,
      ),
      element("ul", { class: "rows" }, ...place.colours.map((colour, i) => row(studio, colour, nearest[i], i, whole))),
      button("Choose a kit for this place", () => chooseFor(place), { class: "wide", "data-focus": "choose" }),
    ];
  }

  function row(studio, { lab, weight }, { parts, load, swatch, error }, i, whole) {
    const seen = studio.colour(Float32Array.from(lab));
    const share = element("input", {
      type: "number",
      min: 1,
      max: 100,
      value: Math.max(1, Math.round((100 * weight) / whole)),
      "aria-label": `Weight of ${seen.words}, percent`,
      "data-focus": `weight-${i}`,
      onchange: () => edit(weigh(store.get().kit, current, i, Number(share.value))),
    });
    const take = button(
      "",
      () => {
        store.set({ ...pathOf(parts), load, laid: 0, next: 0, target: targetOf(lab, "place") });
        showMix();
      },
      { class: "take", "data-focus": `take-${i}` },
    );
    take.append(
      element(
        "span",
        { class: "twin" },
        element("span", { class: "chip", style: { "--wash": seen.css } }),
        element("span", { class: "chip", style: { "--wash": swatch.css } }),
      ),
      element(
        "span",
        { class: "name" },
        seen.words,
        element(
          "span",
          { class: "traits" },
          `${shortName(parts, shelf)}, ${loadName(load)}: off by ${error.toFixed(1)}${error > NEAR ? ", out of reach" : ""}`,
        ),
      ),
    );
    return element(
      "li",
      {},
      take,
      share,
      button("×", () => edit(dropColour(store.get().kit, current, i), "Colour removed"), {
        class: "drop",
        "aria-label": `Remove ${seen.words}`,
        "data-focus": `drop-${i}`,
      }),
    );
  }

  function next(found) {
    const best = found.filter(({ gain }) => gain > 0.002).slice(0, FEW);
    if (best.length === 0)
      return element("p", { class: "quiet" }, "No single paint of the shelf would bring much more of it.");
    return element(
      "div",
      {},
      element("h4", {}, "Would bring most"),
      element(
        "ul",
        { class: "rows" },
        ...best.map(({ paint: number, gain }) => {
          const paint = shelf.get(number);
          return element(
            "li",
            {},
            element(
              "span",
              { class: "name" },
              `${paint.name} `,
              element("small", {}, paint.code),
              element("span", { class: "traits" }, `${(100 * gain).toFixed(0)} % more of the place`),
            ),
            button("Pack", () => packPaint(store, paint), { class: "pack", "aria-label": `Pack ${paint.name}` }),
          );
        }),
      ),
    );
  }

  const soon = afterRest(refresh, REST);
  store.subscribe((_, changed) => {
    if (changed.has("target")) showHead();
    if (changed.has("kit") || changed.has("studio")) soon();
  });
  soon();
  return (pixels) => {
    photo = pixels;
    showHead();
  };
}
