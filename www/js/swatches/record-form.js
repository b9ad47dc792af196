// Recording a swatch: the mix at hand, as it was painted, and what it looked like.

/** @import { Mix } from "../state/answers.js" */
/** @import { Ask, Core, Shelf, State, Store } from "../state/types.js" */

import { MOST_RECORDS } from "../../pkg/facts.js";
import { button, byId, element, notice, say } from "../page/dom.js";
import { labelled } from "../page/form.js";
import { onceSeen } from "../page/rest.js";
import { isPair, pairOf } from "../state/end.js";
import { newId } from "../state/ids.js";
import { paperOf } from "../state/kit.js";
import { today } from "../state/records.js";
import * as words from "../words/record.js";
import { recipe } from "../words/terms.js";
import { labOf, seenField } from "./seen-field.js";

/**
 * Shows the form.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Core} core
 * @param {Ask} ask
 */
export function attachRecord(store, shelf, core, ask) {
  /**
   * What was seen belongs to a mix: another has nothing yet, and the same gets it back.
   *
   * @type {{ mix: string, seen: number[] } | null}
   */
  let noted = null;
  const parts = element("p", { class: "parts" });
  const compared = createComparison(core);
  const field = seenField({ id: "seen", name: words.seen }, { store, core, ask }, (found) => {
    noted = found && { mix: keyOf(store.get()), seen: found };
    compare(found);
  });
  const date = element("input", { type: "date", value: today(), max: "2999-12-31" });
  const note = element("input", { type: "text", maxlength: 200, placeholder: words.noteExample });
  const add = button(words.record, record, { class: "main", disabled: true });
  const frame = byId("record");
  frame.replaceChildren(
    element("h3", {}, words.title),
    element("p", { class: "quiet" }, words.explained),
    parts,
    compared.node,
    field.node,
    element("div", { class: "pair" }, labelled(words.date, date), labelled(words.note, note)),
    add,
  );

  /** @param {string} mix */
  function keepTo(mix) {
    if (noted === null) return;
    if (noted.mix === mix) {
      if (!field.get()) field.put(noted.seen);
      return;
    }
    if (!field.get()) return;
    const before = noted;
    field.put(null, words.otherMix);
    noted = before;
  }

  /** @param {State} state */
  function show(state) {
    keepTo(keyOf(state));
    const mix = isPair(state) ? mixOf(state) : null;
    parts.textContent = mix ? words.mix(recipe(mix.recipe, shelf), state.load) : words.noMix;
    compared.predict(mix);
    if (mix) field.start(core.hex_of(labAtHand(state)));
    compare(field.get());
  }

  /** @param {number[] | null} found */
  function compare(found) {
    add.disabled = !found || !isPair(store.get());
    compared.show(found, store.get());
  }

  function record() {
    const state = store.get();
    show(state);
    if (state.records.length >= MOST_RECORDS) return notice(words.full, { seconds: 8 });
    try {
      const made = recordOf(state, field.get(), date.value, note.value, core);
      store.change({ records: [...state.records, made] });
      field.put(null);
      note.value = "";
      say(words.recorded);
    } catch (error) {
      notice(words.failed(error.message), { seconds: 8 });
    }
  }

  const soon = onceSeen(frame, () => show(store.get()));
  store.subscribe(
    (_, changed) => ["ends", "studio", "share", "load", "laid"].some((key) => changed.has(key)) && soon(),
  );
  show(store.get());
}

/** @param {State} state */
const mixOf = (state) => state.studio.mix(pairOf(state), state.share, state.load);

/** @param {State} state */
const labAtHand = (state) => state.studio.lab_of(pairOf(state), state.share, state.load);

/**
 * What tells a mix from another, or nothing where there is none.
 *
 * @param {State} state
 */
const keyOf = (state) => (isPair(state) ? JSON.stringify([mixOf(state).recipe, state.load, state.laid]) : "");

/**
 * The mix at hand as a record of what was seen. Throws where it cannot be one.
 *
 * @param {State} state
 * @param {number[] | null} seen
 * @param {string} date
 * @param {string} note
 * @param {Core} core
 */
const recordOf = (state, seen, date, note, core) => ({
  ...core.read_record({
    parts: mixOf(state).recipe,
    load: state.load,
    seen,
    paper: paperOf(state.kit),
    date,
    note,
  }),
  id: newId(),
});

/**
 * What is predicted beside what was seen, and how far they lie apart.
 *
 * @param {Core} core
 */
function createComparison(core) {
  const predicted = element("span", { class: "chip" });
  const seen = element("span", { class: "chip blank" });
  const apart = element("p", { role: "status" });
  return {
    node: element(
      "div",
      { class: "compared" },
      element("div", {}, predicted, element("small", {}, words.predictedChip)),
      element("div", {}, seen, element("small", {}, words.seenChip)),
      apart,
    ),
    /** @param {Mix | null} mix */
    predict(mix) {
      predicted.classList.toggle("blank", !mix);
      if (mix) predicted.style.setProperty("--wash", mix.swatch.css);
    },
    /**
     * @param {number[] | null} found
     * @param {State} state
     */
    show(found, state) {
      seen.classList.toggle("blank", !found);
      if (!found) {
        apart.textContent = "";
        return;
      }
      const lab = Float32Array.from(labOf(found, core));
      seen.style.setProperty("--wash", state.studio.colour(lab).css);
      if (isPair(state)) apart.textContent = apartness(core.compare(lab, labAtHand(state)));
    },
  };
}

/** @param {{ error: number, words: string }} what */
const apartness = ({ error, words: difference }) => (error < 1 ? words.asPredicted : words.apart(difference, error));
