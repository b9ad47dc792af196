// The editor of an own paint: its name, its ratings, and its swatches or the mixture it is.

import { LOADS } from "../../pkg/facts.js";
import { byId, element, fieldsOf, labelled, say } from "../page/dom.js";
import { capital, recipe } from "../page/words.js";
import { learnFilms } from "../state/films.js";
import { addOwn, editOwn } from "../state/own.js";
import { seenField } from "./seen-field.js";

const RATINGS = [
  ["Transparency", ["not rated", "0 opaque", "1", "2", "3", "4 transparent"]],
  ["Staining", ["not rated", "0 lifts", "1", "2", "3", "4 stains"]],
  ["Granulation", ["not rated", "0 smooth", "1", "2", "3", "4 granulates"]],
];
/** Loads that a second swatch may have. */
const WASHES = LOADS.slice(1);

/** Answers a verb that opens the editor: with a new paint, or with one that is kept and its number. */
export function createOwnForm(store, context, ask) {
  const dialog = byId("own-dialog", HTMLDialogElement);
  const form = byId("own-form", HTMLFormElement);
  const said = byId("own-said");
  const fields = createFields(form, { store, core: context.core, ask }, () => (said.textContent = ""));
  /** @type {{ paint: any, number: number | null } | null} */
  let edited = null;

  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const asked = edited;
    if (!asked) return;
    try {
      const paint = context.core.read_own(fields.filled(asked.paint));
      said.textContent = "Working it out …";
      const films = await learnFilms([paint], store.get().films, ask);
      // Meanwhile the dialog may have been closed, or opened for another paint.
      if (asked !== edited) return;
      const { number } = asked;
      store.change((state) => ({
        films,
        ...(number ? editOwn(state, number, paint) : addOwn(state, paint, context.numberOf)),
      }));
      say(`${paint.name} is on your shelf`);
      dialog.close();
    } catch (error) {
      said.textContent = `${capital(error.message)}.`;
    }
  });
  byId("own-cancel").addEventListener("click", () => dialog.close());
  dialog.addEventListener("close", () => (edited = null));

  return (paint, number = null) => {
    edited = { paint, number };
    describe(paint, number, context.shelf);
    fields.fill(paint);
    said.textContent = "";
    dialog.showModal();
    fieldsOf(form)("name").focus();
  };
}

/** Says what is edited and how. */
function describe({ name, parts }, number, shelf) {
  const mixture = parts.length > 0;
  const made = mixture ? "A mixture as a paint" : "A paint from swatches";
  byId("own-title").textContent = number ? `Edit ${name}` : made;
  byId("own-swatches").hidden = mixture;
  byId("own-what").textContent = mixture
    ? `${recipe(parts, shelf)}, filled as one.`
    : "Paint it as heavily as you ever would, and as a thin wash, on the paper of this kit, and let both dry. The masstone alone is enough, but with the wash the prediction is much better.";
}

/** The form's fields: `fill(paint)` shows a paint in them, `filled(paint)` answers it as they have it. */
function createFields(form, needs, onchange) {
  const masstone = seenField("Masstone, dry", needs, onchange);
  const wash = seenField("A wash of it, dry", needs, onchange);
  const ratings = RATINGS.map(([name, words]) => ratingField(name, words));
  const load = selectOf(WASHES.map(([, name]) => name));
  byId("own-ratings").replaceChildren(...ratings.map(({ node }) => node));
  byId("own-swatches").replaceChildren(masstone.node, wash.node, labelled("How thin that wash is", load));
  const [name, code, caution, lightfast] = ["name", "code", "caution", "lightfast"].map(fieldsOf(form));
  return {
    fill(paint) {
      for (const field of [name, code, caution]) field.value = paint[field.name];
      ratings.forEach((rating, i) => rating.set(paint.ratings[i]));
      lightfast.value = paint.ratings[3] ?? "";
      masstone.put(paint.masstone.length ? paint.masstone : null);
      wash.put(paint.wash.length ? paint.wash : null);
      load.selectedIndex = Math.max(
        WASHES.findIndex(([stop]) => Math.abs(stop - paint.washLoad) < 1e-3),
        0,
      );
    },
    filled: (paint) => ({
      ...paint,
      name: name.value,
      code: code.value,
      caution: caution.value,
      ratings: [...ratings.map((rating) => rating.get()), Number(lightfast.value) || null],
      masstone: masstone.get() ?? [],
      wash: wash.get() ?? [],
      washLoad: WASHES[load.selectedIndex][0],
    }),
  };
}

const selectOf = (words) => element("select", {}, ...words.map((word) => element("option", {}, word)));

/** A rating of 0 to 4, or none. */
function ratingField(name, words) {
  const select = selectOf(words);
  return {
    node: labelled(name, select),
    get: () => (select.selectedIndex ? select.selectedIndex - 1 : null),
    set: (rating) => (select.selectedIndex = rating == null ? 0 : rating + 1),
  };
}
