// "Choose for me": the best kit for real surface colours or a place, under rules.

/** @import { Place } from "../state/types.js" */

import { question } from "../core/adviser.js";
import { button, byId, element, fieldsOf, notice, say, UNDO } from "../page/dom.js";
import { capital } from "../page/words.js";
import { nameOf, paintsOf } from "../state/kit.js";
import { addNamed } from "../state/kits.js";
import { kitOfChosen, reachedOf, reasonRow, scoreOf, verdict } from "./choice.js";
import { createPaintList } from "./paint-list.js";

/** Opens the dialog, runs the choice and packs it when asked to. Answers a verb that opens the dialog for a place. */
export function attachChoosing(store, shelf, ask) {
  const dialog = byId("choose-dialog", HTMLDialogElement);
  const form = byId("choose-form", HTMLFormElement);
  const outcome = byId("choose-outcome");
  const must = createPaintList(byId("choose-must"), "Must have", shelf);
  const mustNot = createPaintList(byId("choose-not"), "Must not have", shelf);
  const field = fieldsOf(form);
  /** @type {{ answer: Promise<any>, cancel: () => void } | null} */
  let running = null;
  /** @type {Place | null} */
  let place = null;

  /** Opens the dialog for a place, or for real surface colours. */
  function openFor(wanted) {
    place = wanted;
    byId("choose-what").textContent = aimOf(place);
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
      else outcome.replaceChildren(element("p", { class: "quiet" }, "Stopped. Your kit is as it was."));
    } catch (error) {
      outcome.replaceChildren(element("p", { class: "fault", role: "alert" }, `${capital(error.message)}.`));
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

  async function show(choice) {
    const { kit, studio } = store.get();
    const chosen = choice.reasons.map(({ paint }) => paint);
    const reached = await reachedBy(kitOfChosen(chosen, kit, place, studio), place, ask);
    const take = button("Pack this kit", () => pack(chosen, kit), { class: "main" });
    outcome.replaceChildren(
      verdict(choice, reached, place ? "the place" : "real surface colours"),
      element("ul", { class: "rows" }, ...choice.reasons.map((why) => reasonRow(why, shelf.get(why.paint), studio))),
      element("div", { class: "verbs" }, take),
    );
    take.scrollIntoView({ block: "nearest" });
    say(`A kit of ${chosen.length} paints is chosen`);
  }

  /** Takes the chosen paints in hand; `before` is the kit that waits beside them. */
  function pack(chosen, before) {
    const packed = kitOfChosen(chosen, before, place, store.get().studio);
    const title = `${chosen.length} paints for ${place ? place.name || "a place" : "real surface colours"}`;
    if (!store.set((state) => addNamed(state, packed, title, shelf))) return;
    dialog.close();
    notice(`“${nameOf(store.get().kit)}” is in hand. “${nameOf(before)}” waits beside it, in the list above the tin.`, {
      actions: [UNDO],
      seconds: 12,
    });
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

/** How much of a place, or of real surface colours, a kit reaches, as a part of 1. */
async function reachedBy(kit, place, ask) {
  if (!place) return (await ask("report", question({ kit }))).reached[1];
  const colours = place.colours.map(({ lab, weight }) => [lab, weight]);
  return reachedOf(place.colours, await ask("nearest", question({ kit }, { place: colours })));
}

/** What a choice is for, in words. */
function aimOf(place) {
  const aim = place ? `the colours of “${place.name || "this place"}”` : "real surface colours";
  return `The kit whose mixes come nearest to ${aim}, all in all. Each colour scores by how near the best mix comes: in full for a match, not at all from CIEDE2000 10 on.`;
}

/** The rules of the form, besides paints by name, as the core asks for them. */
function rulesIn(field) {
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

/** How far a choice is: nodes to show, and `tell`, which brings them up to date. */
function createProgress(stop) {
  const bar = element("progress", { max: 1, "aria-label": "How far the choice is" });
  const word = element("p", { class: "quiet" }, "Mixing all pairs …");
  return {
    nodes: [bar, word, button("Stop", stop)],
    tell({ done, best }) {
      bar.value = done;
      if (best !== undefined) word.textContent = `The best so far scores ${scoreOf(best)} of 100`;
    },
  };
}
