// Recording a swatch: the mix at hand, as it was painted, and what it looked like.

import { MOST_RECORDS } from "../../pkg/facts.js";
import { button, byId, element, labelled, notice, say } from "../page/dom.js";
import { capital, loadName, recipe } from "../page/words.js";
import { isPair, pairOf } from "../state/end.js";
import { newId } from "../state/ids.js";
import { paperOf } from "../state/kit.js";
import { today } from "../state/records.js";
import { labOf, seenField } from "./seen-field.js";

/** Shows the form. */
export function attachRecord(store, shelf, core, ask) {
  /**
   * What was seen belongs to a mix: another has nothing yet, and the same gets it back.
   *
   * @type {{ mix: string, seen: number[] } | null}
   */
  let noted = null;
  const parts = element("p", { class: "parts" });
  const compared = createComparison(core);
  const field = seenField("What it looks like, dry", { store, core, ask }, (found) => {
    noted = found && { mix: keyOf(store.get()), seen: found };
    compare(found);
  });
  const date = element("input", { type: "date", value: today(), max: "2999-12-31" });
  const note = element("input", { type: "text", maxlength: 200, placeholder: "brush, wetness" });
  const add = button("Record it", record, { class: "main", disabled: true });
  byId("record").replaceChildren(
    element("h3", {}, "Record a swatch"),
    element(
      "p",
      { class: "quiet" },
      "Set the mix you painted in Mix; type, pick or measure what it looks like, or sample a photo of it in Match. From then on your paints are learned from it.",
    ),
    parts,
    compared.node,
    field.node,
    element("div", { class: "pair" }, labelled("Date", date), labelled("Note", note)),
    add,
  );

  function keepTo(mix) {
    if (noted === null) return;
    if (noted.mix === mix) {
      if (!field.get()) field.put(noted.seen);
      return;
    }
    if (!field.get()) return;
    const before = noted;
    field.put(null, "This is another mix. What you saw comes back when you return to the mix you saw it of.");
    noted = before;
  }

  function show(state) {
    keepTo(keyOf(state));
    const mix = isPair(state) ? mixOf(state) : null;
    parts.textContent = mix
      ? `${recipe(mix.recipe, shelf)}, ${loadName(state.load)}`
      : "Choose two paints first, or the same paint twice.";
    compared.predict(mix);
    if (mix) field.start(core.hex_of(labAtHand(state)));
    compare(field.get());
  }

  function compare(found) {
    add.disabled = !found || !isPair(store.get());
    compared.show(found, store.get());
  }

  function record() {
    const state = store.get();
    if (state.records.length >= MOST_RECORDS)
      return notice(`There is room for ${MOST_RECORDS} records. Export the log and delete some.`, { seconds: 8 });
    try {
      const made = recordOf(state, field.get(), date.value, note.value, core);
      store.change({ records: [...state.records, made] });
      field.put(null);
      note.value = "";
      say("Recorded");
    } catch (error) {
      notice(`It could not be recorded: ${error.message}.`, { seconds: 8 });
    }
  }

  store.subscribe(
    (state, changed) => ["ends", "studio", "share", "load", "laid"].some((key) => changed.has(key)) && show(state),
  );
  show(store.get());
}

const mixOf = (state) => state.studio.mix(pairOf(state), state.share, state.load);

const labAtHand = (state) => state.studio.lab_of(pairOf(state), state.share, state.load);

/** What tells a mix from another, or nothing where there is none. */
const keyOf = (state) => (isPair(state) ? JSON.stringify([mixOf(state).recipe, state.load, state.laid]) : "");

/** The mix at hand as a record of what was seen. Throws where it cannot be one. */
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

/** What is predicted beside what was seen, and how far they lie apart. */
function createComparison(core) {
  const predicted = element("span", { class: "chip" });
  const seen = element("span", { class: "chip blank" });
  const apart = element("p", { role: "status" });
  return {
    node: element(
      "div",
      { class: "compared" },
      element("div", {}, predicted, element("small", {}, "predicted")),
      element("div", {}, seen, element("small", {}, "seen")),
      apart,
    ),
    predict(mix) {
      predicted.classList.toggle("blank", !mix);
      if (mix) predicted.style.setProperty("--wash", mix.swatch.css);
    },
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

const apartness = ({ error, words }) =>
  error < 1 ? "As predicted." : `${capital(words)} than predicted, by ${error.toFixed(0)} (CIEDE2000).`;
