// Recording a swatch: the mix at hand, as it was painted, and what it looked like.

import { button, byId, element, notice, say } from "../page/dom.js";
import { capital, loadName, recipe } from "../page/words.js";
import { isPair, pairOf } from "../state/end.js";
import { newId } from "../state/ids.js";
import { paperOf } from "../state/kit.js";
import { MOST_RECORDS, today } from "../state/records.js";
import { labOf, seenField } from "./seen-field.js";

/** Shows the form. */
export function attachRecord(store, shelf, core, ask) {
  /** What was seen belongs to a mix: another has nothing yet, and the same gets it back. */
  let noted = null;
  const what = element("p", { class: "parts" });
  const predicted = element("span", { class: "chip" });
  const seen = element("span", { class: "chip blank" });
  const apart = element("p", { role: "status" });
  const field = seenField("What it looks like, dry", { store, core, ask }, (found) => {
    noted = found && { mix: keyOf(store.get()), seen: found };
    compare(found);
  });
  const date = element("input", { type: "date", value: today(), max: "2999-12-31" });
  const note = element("input", { type: "text", maxlength: 200, placeholder: "brush, wetness, anything" });
  const add = button("Record it", record, { class: "main", disabled: true });
  byId("record").replaceChildren(
    element("h3", {}, "Record a swatch"),
    element(
      "p",
      { class: "quiet" },
      "Set the mix you painted in Mix; type, pick or measure what it looks like, or sample a photo of it in Match. From then on it teaches.",
    ),
    what,
    element(
      "div",
      { class: "compared" },
      element("div", {}, predicted, element("small", {}, "predicted")),
      element("div", {}, seen, element("small", {}, "seen")),
      apart,
    ),
    field.node,
    element(
      "div",
      { class: "pair" },
      element("label", { class: "field" }, element("span", {}, "Date"), date),
      element("label", { class: "field" }, element("span", {}, "Note"), note),
    ),
    add,
  );

  const mixOf = (state) => state.studio.mix(pairOf(state), state.share, state.load);

  /** The mix as a record would have it, or nothing. */
  const keyOf = (state) => (isPair(state) ? JSON.stringify([mixOf(state).recipe, state.load, state.laid]) : "");

  function keepTo(mix) {
    if (noted?.mix === mix && !field.get()) return field.put(noted.seen);
    if (noted === null || noted.mix === mix || !field.get()) return;
    const before = noted;
    field.put(null, "Another mix now. What you saw comes back with the mix it was of.");
    noted = before;
  }

  function show(state) {
    keepTo(keyOf(state));
    const ready = isPair(state);
    if (!ready) {
      what.textContent = "Choose two paints first, or one twice.";
      predicted.classList.add("blank");
    } else {
      const mix = mixOf(state);
      what.textContent = `${recipe(mix.recipe, shelf)}, ${loadName(state.load)}`;
      predicted.classList.remove("blank");
      predicted.style.setProperty("--wash", mix.swatch.css);
      field.start(core.hex_of(state.studio.lab_of(pairOf(state), state.share, state.load)));
    }
    compare(field.get());
  }

  function compare(found) {
    const state = store.get();
    seen.classList.toggle("blank", !found);
    add.disabled = !found || !isPair(state);
    if (!found) {
      apart.textContent = "";
      return;
    }
    const lab = Float32Array.from(labOf(found, core));
    seen.style.setProperty("--wash", state.studio.colour(lab).css);
    if (!isPair(state)) return;
    const { error, words } = core.compare(lab, state.studio.lab_of(pairOf(state), state.share, state.load));
    apart.textContent =
      error < 1 ? "As predicted." : `${capital(words)} than predicted, by ${error.toFixed(0)} (CIEDE2000).`;
  }

  function record() {
    const state = store.get();
    if (state.records.length >= MOST_RECORDS)
      return notice(`${MOST_RECORDS} records are kept, and no more. Export the log and delete some.`, { seconds: 8 });
    try {
      const made = core.read_record({
        parts: mixOf(state).recipe,
        load: state.load,
        seen: field.get(),
        paper: paperOf(state.kit),
        date: date.value,
        note: note.value,
      });
      store.change({ records: [...state.records, { ...made, id: newId() }] });
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
