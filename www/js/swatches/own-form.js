// The editor of an own paint: its name, its ratings, and its swatches or the mixture it is.

/** @import { Ask, Context, Core, OwnPaint, Shelf, State, Store } from "../state/types.js" */

/** @typedef {Omit<OwnPaint, "id">} Draft a paint that is described */

import { LOADS } from "../../pkg/facts.js";
import { button, byId, element, notice, say } from "../page/dom.js";
import { fieldsOf, labelled } from "../page/form.js";
import { learnFilms } from "../state/films.js";
import { addOwn, editOwn } from "../state/own-list.js";
import { sentence } from "../words/form.js";
import * as words from "../words/own-paints.js";
import { recipe } from "../words/terms.js";
import { seenField } from "./seen-field.js";

/** Loads that a second swatch may have. */
const WASHES = LOADS.slice(1);

/** L*, a*, b* by which a masstone may differ from its film before that is explained. */
const BEYOND = 6;

/**
 * Answers a verb that opens the editor: with a new paint, or with one that is kept and its number.
 *
 * @param {Store} store
 * @param {Context} context
 * @param {Ask} ask
 */
export function createOwnForm(store, context, ask) {
  const dialog = byId("own-dialog", HTMLDialogElement);
  const form = byId("own-form", HTMLFormElement);
  const said = byId("own-said");
  const fields = createFields(form, { store, core: context.core, ask }, () => (said.textContent = ""));
  /** @type {{ paint: Draft, number: number | null } | null} */
  let edited = null;
  /** Whether the painter said that a masstone lighter than its wash is meant. */
  let isMeant = false;

  function askWhetherSwapped() {
    const swap = button(words.swap, () => {
      fields.swap();
      said.textContent = "";
    });
    const keep = button(words.areRight, () => {
      isMeant = true;
      form.requestSubmit();
    });
    said.replaceChildren(words.swapped, swap, " ", keep);
    swap.focus();
  }

  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const asked = edited;
    if (!asked) return;
    if (fields.areSwapped() && !isMeant) return askWhetherSwapped();
    try {
      const paint = context.core.read_own(fields.filled(asked.paint));
      said.textContent = words.working;
      const films = await learnFilms([paint], store.get().films, ask);
      // Meanwhile the dialog may have been closed, or opened for another paint.
      if (asked !== edited) return;
      const { number } = asked;
      store.change((state) => ({
        films,
        ...(number ? editOwn(state, number, paint) : addOwn(state, paint, context.numberOf)),
      }));
      dialog.close();
      tellAdded(store.get(), paint);
    } catch (error) {
      said.textContent = sentence(error.message);
    }
  });
  byId("own-cancel").addEventListener("click", () => dialog.close());
  dialog.addEventListener("close", () => (edited = null));

  return (/** @type {Draft} */ paint, /** @type {number | null} */ number = null) => {
    edited = { paint, number };
    isMeant = false;
    describe(paint, number, context.shelf);
    fields.fill(paint);
    said.textContent = "";
    dialog.showModal();
    fieldsOf(form)("name").focus();
  };
}

/**
 * Says that a paint is on the shelf, and what its film cannot show of the masstone that was given.
 *
 * @param {State} state
 * @param {OwnPaint} what
 */
function tellAdded({ own, studio }, { name, masstone }) {
  say(words.added(name));
  const [number] = own.find(([, paint]) => paint.name === name) ?? [];
  if (!number || masstone.length !== 3) return;
  const { lightness } = studio.swatch([[number, 1]], 1);
  if (Math.abs(lightness - masstone[0]) <= BEYOND) return;
  notice(words.noFilm(name, masstone[0], lightness));
}

/**
 * How light a colour or a spectrum is, for comparing two of a kind.
 *
 * @param {number[]} values
 */
const lightnessOf = (values) => (values.length === 3 ? values[0] : values.reduce((sum, value) => sum + value, 0));

/**
 * Says what is edited and how.
 *
 * @param {Draft} paint
 * @param {number | null} number
 * @param {Shelf} shelf
 */
function describe({ name, parts }, number, shelf) {
  const mixture = parts.length > 0;
  const made = mixture ? words.mixtureTitle : words.swatchesTitle;
  byId("own-title").textContent = number ? words.editTitle(name) : made;
  byId("own-swatches").hidden = mixture;
  byId("own-what").textContent = mixture ? words.mixture(recipe(parts, shelf)) : words.swatches;
}

/**
 * The form's fields: `fill(paint)` shows a paint in them, `filled(paint)` answers it as they have it.
 *
 * @param {HTMLFormElement} form
 * @param {{ store: Store, core: Core, ask: Ask }} needs
 * @param {() => void} onchange
 */
function createFields(form, needs, onchange) {
  const masstone = seenField({ id: "masstone", name: words.masstone }, needs, onchange);
  const wash = seenField({ id: "wash", name: words.wash }, needs, onchange);
  const ratings = words.ratings.map(([name, grades]) => ratingField(name, grades));
  const load = selectOf(WASHES.map(([, name]) => name));
  byId("own-ratings").replaceChildren(...ratings.map(({ node }) => node));
  byId("own-swatches").replaceChildren(masstone.node, wash.node, labelled(words.howThin, load));
  const [name, code, caution, lightfast] = ["name", "code", "caution", "lightfast"].map(fieldsOf(form));
  return {
    /** Whether a masstone is lighter than its wash. */
    areSwapped() {
      const [thick, thin] = [masstone.get(), wash.get()];
      return Boolean(thick && thin && thick.length === thin.length && lightnessOf(thick) > lightnessOf(thin));
    },
    swap() {
      const [thick, thin] = [masstone.get(), wash.get()];
      masstone.put(thin);
      wash.put(thick);
    },
    /** @param {Draft} paint */
    fill(paint) {
      name.value = paint.name;
      code.value = paint.code;
      caution.value = paint.caution;
      ratings.forEach((rating, i) => rating.set(paint.ratings[i]));
      lightfast.value = paint.ratings[3] ?? "";
      masstone.put(paint.masstone.length ? paint.masstone : null);
      wash.put(paint.wash.length ? paint.wash : null);
      load.selectedIndex = Math.max(
        WASHES.findIndex(([stop]) => Math.abs(stop - paint.washLoad) < 1e-3),
        0,
      );
    },
    /** @param {Draft} paint */
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

/** @param {string[]} names */
const selectOf = (names) => element("select", {}, ...names.map((word) => element("option", {}, word)));

/**
 * A rating of 0 to 4, or none.
 *
 * @param {string} name
 * @param {string[]} grades
 */
function ratingField(name, grades) {
  const select = selectOf(grades);
  return {
    node: labelled(name, select),
    get: () => (select.selectedIndex ? select.selectedIndex - 1 : null),
    /** @param {number | null} rating */
    set: (rating) => (select.selectedIndex = rating == null ? 0 : rating + 1),
  };
}
