// The painter's own paints: made from swatches, a measurement or a mixture; edited, copied, thrown away.

import { packPaint } from "../kit/packing.js";
import { dabOf } from "../page/dab.js";
import { button, byId, element, notice, say, UNDO } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { capital, LOADS, recipe } from "../page/words.js";
import { isPair, paintEnd, pairOf } from "../state/end.js";
import { learnFilms } from "../state/films.js";
import { holds, paperOf } from "../state/kit.js";
import { addOwn, doubleOwn, dropOwn, editOwn } from "../state/own.js";
import { seenField } from "./seen-field.js";

const RATINGS = [
  ["Transparency", ["not rated", "0 opaque", "1", "2", "3", "4 transparent"]],
  ["Staining", ["not rated", "0 lifts", "1", "2", "3", "4 stains"]],
  ["Granulation", ["not rated", "0 smooth", "1", "2", "3", "4 granulates"]],
];
const BLANK = {
  name: "",
  code: "",
  caution: "",
  ratings: [null, null, null, null],
  parts: [],
  paper: null,
  masstone: [],
  wash: [],
  washLoad: 0.25,
};

/** Shows the list and its editor. `choose` takes a paint as an end. */
export function attachMine(store, context, ask, choose) {
  const { core, shelf, isBuiltIn, numberOf } = context;
  const frame = byId("mine");
  const dialog = byId("own-dialog");
  const form = byId("own-form");
  const fields = { store, core, ask };
  const masstone = seenField("Masstone, dry", fields, check);
  const wash = seenField("A wash of it, dry", fields, check);
  const said = byId("own-said");
  const ratings = RATINGS.map(([name, words]) => {
    const select = element("select", {}, ...words.map((word) => element("option", {}, word)));
    return {
      node: element("label", { class: "field" }, element("span", {}, name), select),
      get: () => (select.selectedIndex ? select.selectedIndex - 1 : null),
      set: (rating) => (select.selectedIndex = rating == null ? 0 : rating + 1),
    };
  });
  const load = element("select", {}, ...LOADS.slice(1).map(([, name]) => element("option", {}, name)));
  byId("own-ratings").replaceChildren(...ratings.map(({ node }) => node));
  byId("own-swatches").replaceChildren(
    masstone.node,
    wash.node,
    element("label", { class: "field" }, element("span", {}, "How thin that wash is"), load),
  );
  let edited = null;

  function show({ own, kit, studio }) {
    remake(
      frame,
      element("h3", {}, "My paints"),
      element(
        "p",
        { class: "quiet" },
        "A paint the shelf lacks, from two swatches of it, a measurement, or as the mixture it is. It goes along with links of kits that hold it.",
      ),
      element(
        "div",
        { class: "verbs" },
        button("New from swatches", () => open({ ...BLANK, paper: paperOf(store.get().kit) }), {
          "data-focus": "new",
        }),
        button("New from the mix at hand", fromMix, { "data-focus": "from-mix" }),
      ),
      element("ul", { class: "rows" }, ...own.map(([number, paint]) => row(number, paint, kit, studio))),
    );
  }

  function row(number, paint, kit, studio) {
    const take = button("", () => choose(paintEnd(number)), { class: "take", "data-focus": `take-${number}` });
    take.append(
      dabOf(studio, number, 30),
      element(
        "span",
        { class: "name" },
        `${paint.name} `,
        element("small", {}, paint.code),
        element("span", { class: "traits" }, shelf.get(number).source),
      ),
    );
    const packed = holds(kit, number);
    const act = (word, onclick, attributes = {}) =>
      button(word, onclick, {
        "aria-label": `${word}: ${paint.name}`,
        "data-focus": `${word}-${number}`,
        ...attributes,
      });
    return element(
      "li",
      { class: "own" },
      take,
      element(
        "div",
        { class: "verbs" },
        act(packed ? "Packed" : "Pack", () => packPaint(store, shelf.get(number)), { disabled: packed }),
        act("Edit", () => open(paint, number)),
        act("Duplicate", () => duplicate(paint)),
        act("Delete", () => remove(number, paint)),
      ),
    );
  }

  function fromMix() {
    const state = store.get();
    if (!isPair(state)) return notice("Choose two paints first: their mix becomes the paint.", { seconds: 6 });
    const parts = state.studio.mix(pairOf(state), state.share, state.load).recipe;
    if (!parts.every(([paint]) => isBuiltIn(paint)))
      return notice("A mixture is made of paints of the built-in shelf.", { seconds: 6 });
    open({ ...BLANK, paper: paperOf(state.kit), parts });
  }

  function open(paint, number = null) {
    edited = { paint, number };
    const mixture = paint.parts.length > 0;
    byId("own-title").textContent = number
      ? `Edit ${paint.name}`
      : mixture
        ? "A mixture as a paint"
        : "A paint from swatches";
    byId("own-swatches").hidden = mixture;
    byId("own-what").textContent = mixture
      ? `${recipe(paint.parts, shelf)}, filled as one.`
      : "Paint it as heavy as you would ever, and as a thin wash, on the paper of this kit; let both dry. The masstone alone does, but the wash tells much more.";
    for (const key of ["name", "code", "caution"]) form.elements[key].value = paint[key];
    ratings.forEach((rating, i) => rating.set(paint.ratings[i]));
    form.elements.lightfast.value = paint.ratings[3] ?? "";
    masstone.put(paint.masstone.length ? paint.masstone : null);
    wash.put(paint.wash.length ? paint.wash : null);
    load.selectedIndex = Math.max(LOADS.findIndex(([stop]) => Math.abs(stop - paint.washLoad) < 1e-3) - 1, 0);
    said.textContent = "";
    dialog.showModal();
    form.elements.name.focus();
  }

  const filled = () => {
    const lightfast = Number(form.elements.lightfast.value);
    return {
      ...edited.paint,
      name: form.elements.name.value,
      code: form.elements.code.value,
      caution: form.elements.caution.value,
      ratings: [...ratings.map((rating) => rating.get()), lightfast || null],
      masstone: masstone.get() ?? [],
      wash: wash.get() ?? [],
      washLoad: LOADS[load.selectedIndex + 1][0],
    };
  };

  function check() {
    said.textContent = "";
  }

  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const asked = edited;
    try {
      const paint = core.read_own(filled());
      said.textContent = "Working it out …";
      const films = await learnFilms([paint], store.get().films, ask);
      // Meanwhile the dialog may have been closed, or opened for another paint.
      if (asked !== edited) return;
      const { number } = edited;
      store.change((state) => ({
        films,
        ...(number ? editOwn(state, number, paint) : addOwn(state, paint, numberOf)),
      }));
      say(`${paint.name} is on your shelf`);
      dialog.close();
    } catch (error) {
      said.textContent = `${capital(error.message)}.`;
    }
  });
  byId("own-cancel").addEventListener("click", () => dialog.close());
  dialog.addEventListener("close", () => (edited = null));

  const duplicate = (paint) =>
    store.set((state) => doubleOwn(state, paint, numberOf)) && say(`A copy of ${paint.name} is on your shelf`);

  function remove(number, paint) {
    if (store.set((state) => dropOwn(state, number)))
      notice(`“${paint.name}” is deleted, and taken out of kits and records.`, { actions: [UNDO], seconds: 10 });
  }

  store.subscribe((state, changed) => ["own", "studio", "kit"].some((key) => changed.has(key)) && show(state));
  show(store.get());
}
