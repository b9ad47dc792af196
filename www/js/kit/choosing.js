// "Choose for me": the best kit for real surface colours or a place, under rules.

/** @import { Choice, Progress } from "../state/answers.js" */
/** @import { Ask, Kit, KitContent, Place, Shelf, Store } from "../state/types.js" */

import { question } from "../core/adviser.js";
import { button, byId, element, notice, say, UNDO } from "../page/dom.js";
import { fieldsOf } from "../page/form.js";
import { addNamed } from "../state/collection.js";
import { nameOf, paintsOf } from "../state/kit.js";
import * as words from "../words/choosing.js";
import { sentence } from "../words/form.js";
import { nowYours } from "../words/terms.js";
import { kitOfChosen, reachedOf, reasonRow, scoreOf, verdict } from "./choice.js";
import { createPaintList } from "./paint-list.js";

/**
 * Opens the dialog, runs the choice and packs it when asked to. Answers a verb that opens the dialog for a place.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Ask} ask
 */
export function attachChoosing(store, shelf, ask) {
  const dialog = byId("choose-dialog", HTMLDialogElement);
  const form = byId("choose-form", HTMLFormElement);
  const outcome = byId("choose-outcome");
  const must = createPaintList(byId("choose-must"), words.must, shelf);
  const mustNot = createPaintList(byId("choose-not"), words.mustNot, shelf);
  const field = fieldsOf(form);
  /** @type {{ answer: Promise<any>, cancel: () => void } | null} */
  let running = null;
  /** @type {Place | null} */
  let place = null;

  /**
   * Opens the dialog for a place, or for real surface colours.
   *
   * @param {Place | null} wanted
   */
  function openFor(wanted) {
    place = wanted;
    byId("choose-what").textContent = words.aim(place);
    const { kit, owned } = store.get();
    field("size").value = String(Math.max(kit.capacity, 1));
    field("from").querySelector('[value="owned"]').disabled = owned.length === 0;
    must.clear();
    mustNot.clear();
    outcome.replaceChildren();
    dialog.showModal();
  }

  async function choose() {
    if (running) return;
    const progress = createProgress(() => running?.cancel());
    outcome.replaceChildren(...progress.nodes);
    try {
      const asking = ask.long("choose", asked(), progress.tell);
      running = asking;
      const choice = await asking.answer;
      if (choice) await show(choice);
      else outcome.replaceChildren(element("p", { class: "quiet" }, words.stopped));
    } catch (error) {
      outcome.replaceChildren(element("p", { class: "fault", role: "alert" }, sentence(error.message)));
    } finally {
      running = null;
    }
  }

  /** What the core is asked for. */
  function asked() {
    const state = store.get();
    const candidates = field("from").value === "owned" ? state.owned : shelf.all.map(({ number }) => number);
    const kept = field("keep").checked ? paintsOf(state.kit) : [];
    return question(state, {
      size: Number(field("size").value),
      candidates: Uint16Array.from(candidates),
      rules: { mustHave: [...must.paints(), ...kept], mustNot: mustNot.paints(), ...rulesIn(field) },
      place: place?.colours.map(({ lab, weight }) => [lab, weight]),
    });
  }

  /** @param {Choice} choice */
  async function show(choice) {
    const { kit, studio } = store.get();
    const chosen = choice.reasons.map(({ paint }) => paint);
    const reached = await reachedBy(kitOfChosen(chosen, kit, place, studio), place, ask);
    const take = button(words.packIt, () => pack(chosen, kit), { class: "main" });
    outcome.replaceChildren(
      verdict(choice, reached, place),
      element("ul", { class: "rows" }, ...choice.reasons.map((why) => reasonRow(why, shelf.paint(why.paint), studio))),
      element("div", { class: "verbs" }, take),
    );
    take.scrollIntoView({ block: "nearest" });
    say(words.chosen(chosen.length));
  }

  /**
   * Takes the chosen paints in hand; `before` is the kit that waits beside them.
   *
   * @param {number[]} chosen
   * @param {Kit} before
   */
  function pack(chosen, before) {
    const packed = kitOfChosen(chosen, before, place, store.get().studio);
    const title = words.title(chosen.length, place);
    if (!store.set((state) => addNamed(state, packed, title, shelf))) return;
    dialog.close();
    notice(nowYours(nameOf(store.get().kit), nameOf(before)), { actions: [UNDO], seconds: 12 });
  }

  byId("choose-open").addEventListener("click", () => openFor(null));
  byId("choose-close").addEventListener("click", () => dialog.close());
  dialog.addEventListener("close", () => running?.cancel());
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    choose();
  });
  return openFor;
}

/**
 * How much of a place, or of real surface colours, a kit reaches, as a part of 1.
 *
 * @param {KitContent} kit
 * @param {Place | null} place
 * @param {Ask} ask
 */
async function reachedBy(kit, place, ask) {
  if (!place) return (await ask("report", question({ kit }))).reached[1];
  const colours = place.colours.map(({ lab, weight }) => [lab, weight]);
  return reachedOf(place.colours, await ask("nearest", question({ kit }, { place: colours })));
}

/**
 * The rules of the form, besides paints by name, as the core asks for them.
 *
 * @param {(name: string) => any} field
 */
function rulesIn(field) {
  /** @param {string} name */
  const number = (name) => Math.max(0, Math.round(Number(field(name).value) || 0));
  return {
    noCadmium: field("cadmium").checked,
    noCobalt: field("cobalt").checked,
    noCaution: field("caution").checked,
    lightfast: Number(field("lightfast").value),
    granulating: number("granulating"),
    transparent: number("transparent"),
    triad: field("triad").checked,
  };
}

/**
 * How far a choice is: nodes to show, and `tell`, which brings them up to date.
 *
 * @param {() => void} stop
 */
function createProgress(stop) {
  const bar = element("progress", { max: 1, "aria-label": words.howFar });
  const word = element("p", { class: "quiet" }, words.begun);
  return {
    nodes: [bar, word, button(words.stop, stop)],
    /** @param {Progress} progress */
    tell({ done, best }) {
      bar.value = done;
      if (best !== undefined) word.textContent = words.best(scoreOf(best));
    },
  };
}
