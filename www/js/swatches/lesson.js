// What the records teach: how much nearer predictions come, which paints changed, what to paint next.

import { dabOf } from "../page/dab.js";
import { button, byId, element, say } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { afterRest } from "../page/rest.js";
import { capital, loadName, recipe } from "../page/words.js";
import { pathOf, shortName } from "../state/end.js";
import { paintsOf, paperOf } from "../state/kit.js";

const REST = 300;
/** Digits of a learned curve that are kept: more than its paint is known to. */
const DIGITS = 4;

/** Keeps what was learned up with the records, and shows it. `toMix` shows the mix. */
export function attachLesson(store, shelf, ask, toMix) {
  const frame = byId("lesson");
  const planned = byId("plan");
  let turn = 0;

  async function learn() {
    const { records, held, kit, learned } = store.get();
    turn += 1;
    const own = turn;
    try {
      const lesson = await ask("learn", {
        records,
        held: Uint16Array.from(held),
        paints: Uint16Array.from(paintsOf(kit)),
        paper: paperOf(kit),
      });
      if (own !== turn) return;
      const taught = lesson.learned.map(({ k, s, was, ...paint }) => ({ ...paint, k: k.map(short), s: s.map(short) }));
      const patch = JSON.stringify(taught) === JSON.stringify(learned) ? {} : { learned: taught };
      store.set({ ...patch, lesson });
    } catch (error) {
      frame.replaceChildren(
        element("h3", {}, "What they teach"),
        element("p", { class: "quiet" }, `Nothing could be learned: ${error.message}.`),
      );
    }
  }

  function show(state) {
    remake(frame, element("h3", {}, "What they teach"), ...taught(state));
    remake(planned, element("h3", {}, "Worth painting next"), ...plan(state));
  }

  function taught({ records, lesson, learning }) {
    if (records.length === 0)
      return [
        element(
          "p",
          { class: "quiet" },
          "Two washes of each paint already bring predictions nearer to yours. Nothing is recorded yet.",
        ),
      ];
    if (!lesson || lesson.records.length !== records.length) return [element("p", { class: "quiet" }, "Learning …")];
    const [before, after, without] = ["before", "after", "without"].map((key) =>
      median(lesson.records.map((record) => record[key])),
    );
    const doubted = lesson.records.filter(({ believed }) => believed < 0.3).length;
    const tick = element("input", {
      type: "checkbox",
      checked: learning,
      "data-focus": "learning",
      onchange: () => store.set({ learning: tick.checked }),
    });
    return [
      element(
        "table",
        { class: "figures" },
        element("thead", {}, element("tr", {}, element("td", {}), element("th", { scope: "col" }, "off by"))),
        element(
          "tbody",
          {},
          figure("Shelf as it is", before),
          figure(
            "Learned from all others",
            without,
            "Each record predicted by paints that learned from every other record, never from itself: what to expect of a mix that was not recorded.",
          ),
          figure("Fitted", after, "Each record predicted by paints that learned from it too: this flatters."),
        ),
      ),
      element("p", { class: "quiet" }, verdict(records.length, before, without)),
      doubted
        ? element(
            "p",
            { class: "quiet" },
            `${doubted === 1 ? "One record does" : `${doubted} records do`} not fit the others and ${doubted === 1 ? "counts" : "count"} little; the log marks ${doubted === 1 ? "it" : "them"}.`,
          )
        : "",
      element("label", { class: "tick" }, tick, "Predict with what was learned"),
      element("ul", { class: "rows" }, ...lesson.learned.map(paintRow), ...heldRows()),
    ];
  }

  function paintRow({ number, strength, was, left }) {
    const paint = shelf.get(number);
    if (!paint) return "";
    const times = strength / was;
    const gone = Math.round(100 * (1 - left[0]));
    const words = [
      Math.abs(Math.log(times)) < 0.05
        ? "as strong as on the shelf"
        : `${times.toFixed(2)} times as strong as on the shelf`,
      gone > 0 ? `${gone} % of the doubt gone` : "still as doubtful",
    ];
    return element(
      "li",
      {},
      dabOf(store.get().studio, number, 30),
      element(
        "span",
        { class: "name" },
        `${paint.name} `,
        element("small", {}, paint.code),
        element("span", { class: "traits" }, words.join(" · ")),
      ),
      button("Reset", () => hold(number, true), {
        class: "pack",
        "aria-label": `Reset ${paint.name} to the shelf`,
        "data-focus": `held-${number}`,
      }),
    );
  }

  /** Paints that were reset. */
  const heldRows = () =>
    store
      .get()
      .held.filter((number) => shelf.get(number))
      .map((number) =>
        element(
          "li",
          {},
          dabOf(store.get().studio, number, 30),
          element(
            "span",
            { class: "name" },
            `${shelf.get(number).name} `,
            element("small", {}, shelf.get(number).code),
            element("span", { class: "traits" }, "reset: as on the shelf"),
          ),
          button("Learn", () => hold(number, false), {
            class: "pack",
            "aria-label": `Let records teach of ${shelf.get(number).name} again`,
            "data-focus": `held-${number}`,
          }),
        ),
      );

  function hold(number, held) {
    store.set({ held: held ? [...store.get().held, number] : store.get().held.filter((other) => other !== number) });
    say(held ? "As on the shelf" : "Learning again");
  }

  function plan({ kit, lesson }) {
    if (kit.pans.length === 0)
      return [element("p", { class: "quiet" }, "Pack a kit; then the swatches that teach most about it stand here.")];
    if (!lesson) return [element("p", { class: "quiet" }, "Working it out …")];
    const steps = lesson.plan.filter(({ parts }) => parts.every(([paint]) => shelf.get(paint)));
    return [
      element(
        "p",
        { class: "quiet" },
        `Mixes of this kit are expected to be off by ${lesson.now.toFixed(1)} (CIEDE2000, half of them by less). Painting and recording these lowers that most; begin at the top.`,
      ),
      element(
        "ol",
        { class: "rows plan" },
        ...steps.map((step, i) => {
          const before = i === 0 ? lesson.now : steps[i - 1].after;
          const take = button("", () => setUp(step), { class: "take", "data-focus": `plan-${i}` });
          take.append(
            element("span", {
              class: "chip",
              style: { "--wash": store.get().studio.swatch(step.parts, step.load).css },
            }),
            element(
              "span",
              { class: "name" },
              capital(shortName(step.parts, shelf)),
              element(
                "span",
                { class: "traits" },
                `${loadName(step.load)} · ${before.toFixed(2)} becomes ${step.after.toFixed(2)}`,
              ),
            ),
          );
          return element("li", {}, take);
        }),
      ),
    ];
  }

  /** The mix of a step at hand, so that it can be painted and recorded. */
  function setUp({ parts, load }) {
    store.set({ ...pathOf(parts), load, laid: 0 });
    say(`${recipe(parts, shelf)}, ${loadName(load)}: paint it, let it dry, record it`);
    toMix();
  }

  const soon = afterRest(learn, REST);
  store.subscribe((state, changed) => {
    if (["records", "held", "kit", "own"].some((key) => changed.has(key))) soon();
    if (["records", "lesson", "studio", "learning", "held"].some((key) => changed.has(key))) show(state);
  });
  // The plan waits until its part of the page is looked at, unless there is something to learn from.
  if (store.get().records.length) soon();
  show(store.get());
  return soon;
}

const short = (value) => Number(value.toPrecision(DIGITS));

const figure = (name, value, title) =>
  element("tr", {}, element("th", { scope: "row", title }, name), element("td", {}, value.toFixed(1)));

function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.length % 2
    ? sorted[(sorted.length - 1) / 2]
    : (sorted[sorted.length / 2 - 1] + sorted[sorted.length / 2]) / 2;
}

function verdict(count, before, without) {
  if (count < 4) return "Medians of CIEDE2000. Too few records to tell whether predictions became better.";
  if (without < before - 0.2)
    return "Medians of CIEDE2000; 1 is just visible. Mixes you have not recorded are predicted better than before.";
  return "Medians of CIEDE2000; 1 is just visible. Mixes you have not recorded are not yet predicted better than before.";
}
