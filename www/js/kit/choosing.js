// "Choose for me": the best kit for real surface colours or a place, under rules.

import { question } from "../core/adviser.js";
import { dabOf } from "../page/dab.js";
import { button, byId, element, notice, say, UNDO } from "../page/dom.js";
import { capital } from "../page/words.js";
import { emptyKit, nameOf, paintsOf } from "../state/kit.js";
import { addNamed } from "../state/kits.js";

/** Pans of so many paints: one each, and two side by side where the tin has no more room. */
function pansOf(paints, capacity) {
  const halves = Math.max(0, paints.length - capacity);
  const whole = paints.slice(0, paints.length - 2 * halves).map((paint) => [paint]);
  const rest = paints.slice(paints.length - 2 * halves);
  const split = Array.from({ length: halves }, (_, i) => [rest[2 * i], rest[2 * i + 1]]);
  return [...whole, ...split];
}

/** Opens the dialog, runs the choice and packs it when asked to. */
export function attachChoosing(store, shelf, ask) {
  const dialog = byId("choose-dialog");
  const form = byId("choose-form");
  const outcome = byId("choose-outcome");
  const field = (name) => form.elements.namedItem(name);
  const must = new Set();
  const mustNot = new Set();
  let running = null;
  let place = null;

  byId("choose-open").addEventListener("click", () => openFor(null));

  /** Opens the dialog for a place, or for real surface colours. */
  function openFor(wanted) {
    place = wanted;
    byId("choose-what").textContent =
      `The kit whose mixes come nearest to ${place ? `the colours of “${place.name || "this place"}”` : "real surface colours"}, all in all. A near miss hardly counts; one of 10 CIEDE2000 or more counts in full.`;
    const { kit, owned } = store.get();
    field("size").value = String(Math.max(kit.capacity, 1));
    field("from").querySelector('[value="owned"]').disabled = owned.length === 0;
    must.clear();
    mustNot.clear();
    fillLists();
    outcome.replaceChildren();
    dialog.showModal();
  }

  function fillLists() {
    for (const [id, set, word] of [
      ["choose-must", must, "Must have"],
      ["choose-not", mustNot, "Must not have"],
    ]) {
      const select = element(
        "select",
        {
          "aria-label": word,
          onchange: () => {
            if (select.value) set.add(Number(select.value));
            fillLists();
            byId(id).querySelector("select").focus();
          },
        },
        element("option", { value: "" }, `${word} …`),
        ...shelf.all
          .filter(({ number }) => !set.has(number))
          .map(({ number, name, code }) => element("option", { value: number }, `${name} ${code}`)),
      );
      byId(id).replaceChildren(
        select,
        ...[...set].map((paint) =>
          button(
            `${shelf.get(paint).code} ×`,
            () => {
              set.delete(paint);
              fillLists();
            },
            {
              "aria-label": `${shelf.get(paint).name}: take off the list`,
            },
          ),
        ),
      );
    }
  }

  /** The rules as the core asks for them. */
  function rules() {
    const number = (name) => Math.max(0, Math.round(Number(field(name).value) || 0));
    return {
      mustHave: [...must, ...(field("keep").checked ? paintsOf(store.get().kit) : [])],
      mustNot: [...mustNot],
      noCadmium: field("cadmium").checked,
      noCobalt: field("cobalt").checked,
      noCaution: field("caution").checked,
      lightfast: Number(field("lightfast").value),
      granulating: number("granulating"),
      transparent: number("transparent"),
      triad: field("triad").checked,
    };
  }

  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    if (running) return;
    const state = store.get();
    const candidates = field("from").value === "owned" ? state.owned : shelf.all.map(({ number }) => number);
    const bar = element("progress", { max: 1, "aria-label": "How far the choice is" });
    const word = element("p", { class: "quiet" }, "Mixing all pairs …");
    outcome.replaceChildren(
      bar,
      word,
      button("Stop", () => running?.cancel()),
    );
    try {
      running = ask.long(
        "choose",
        question(state, {
          size: Number(field("size").value),
          candidates: Uint16Array.from(candidates),
          rules: rules(),
          place: place?.colours.map(({ lab, weight }) => [lab, weight]),
        }),
        ({ done, best }) => {
          bar.value = done;
          if (best !== undefined) word.textContent = `Best so far misses ${percent(best)}`;
        },
      );
      const choice = await running.answer;
      if (choice) show(choice);
      else outcome.replaceChildren(element("p", { class: "quiet" }, "Stopped. Your kit is as it was."));
    } catch (error) {
      outcome.replaceChildren(element("p", { class: "fault", role: "alert" }, `${capital(error.message)}.`));
    } finally {
      running = null;
    }
  });

  byId("choose-close").addEventListener("click", () => dialog.close());
  dialog.addEventListener("close", () => running?.cancel());

  function show({ reasons, cost, bound, exact }) {
    const sure = exact
      ? "No other kit under these rules does better: all were tried."
      : `No kit under these rules can do better than ${percent(bound)}: proven. So this one is within ${percent(cost - bound)} of the best.`;
    const { kit } = store.get();
    const chosen = reasons.map(({ paint }) => paint);
    const take = button(
      "Pack this kit",
      () => {
        const { capacity, stock, paper } = kit;
        const packed = {
          ...emptyKit(),
          stock,
          paper,
          capacity: Math.max(capacity, Math.ceil(chosen.length / 2)),
          pans: pansOf(byHue(chosen), capacity),
          places: place ? [place] : [],
        };
        const title = `${chosen.length} paints for ${place ? place.name || "a place" : "real surface colours"}`;
        if (!store.set((state) => addNamed(state, packed, title, shelf))) return;
        dialog.close();
        notice(
          `“${nameOf(store.get().kit)}” is in hand. “${nameOf(kit)}” waits beside it, in the list above the tin.`,
          { actions: [UNDO], seconds: 12 },
        );
      },
      { class: "main" },
    );
    outcome.replaceChildren(
      element("p", {}, element("b", {}, `Misses ${percent(cost)}. `), sure),
      element("ul", { class: "rows" }, ...reasons.map(row)),
      element("div", { class: "verbs" }, take),
    );
    take.scrollIntoView({ block: "nearest" });
    say(`A kit of ${chosen.length} paints is chosen`);
  }

  function row({ paint: number, lost, required }) {
    const paint = shelf.get(number);
    const why = required
      ? "asked for"
      : lost < 0.0005
        ? "fills a rule or the last place; little is lost without it"
        : `without it ${percent(lost)} more is missed`;
    return element(
      "li",
      {},
      dabOf(store.get().studio, number, 30),
      element(
        "span",
        { class: "name" },
        `${paint.name} `,
        element("small", {}, paint.code),
        element("span", { class: "traits" }, `${paint.hue} · ${why}`),
      ),
    );
  }

  return openFor;

  /** Round the wheel from yellow, so that the tin reads as a palette does. */
  function byHue(paints) {
    const { studio } = store.get();
    const angle = (paint) => {
      const { hue, chroma, lightness } = studio.swatch([[paint, 1]], 0.5);
      return chroma < 8 ? 400 + lightness : (460 - hue) % 360;
    };
    return [...paints].sort((a, b) => angle(a) - angle(b));
  }
}

const percent = (part) => `${(100 * part).toFixed(1)} %`;
