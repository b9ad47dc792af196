// What the records teach: how much nearer predictions come, which paints changed, what to paint next.

/** @import { Step } from "../state/answers.js" */
/** @import { Ask, Shelf, State, Store } from "../state/types.js" */

import { byId, element, say } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { afterRest } from "../page/rest.js";
import { paintsOf, paperOf } from "../state/kit.js";
import { pathOf } from "../state/path.js";
import * as words from "../words/lesson.js";
import { recipe } from "../words/terms.js";
import { planNodes } from "./plan.js";
import { taughtNodes } from "./taught.js";

const REST = 300;
/** Digits of a learned curve that are kept: more than its paint is known to. */
const DIGITS = 4;

/**
 * Keeps what was learned up with the records, and shows it. `toMix` shows the mix.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Ask} ask
 * @param {() => void} toMix
 */
export function attachLesson(store, shelf, ask, toMix) {
  const frame = byId("lesson");
  const planned = byId("plan");
  const learn = createLearning(store, ask, (error) =>
    frame.replaceChildren(
      element("h3", {}, words.title),
      element("p", { class: "quiet" }, words.failed(error.message)),
    ),
  );

  /** @param {State} state */
  function show(state) {
    const verbs = { hold, learnOn: (/** @type {boolean} */ learning) => store.set({ learning }) };
    remake(frame, element("h3", {}, words.title), ...taughtNodes(state, shelf, verbs));
    remake(planned, element("h3", {}, words.planTitle), ...planNodes(state, shelf, setUp));
  }

  /**
   * Holds a paint to the shelf, or lets records teach of it again.
   *
   * @param {number} number
   * @param {boolean} held
   */
  function hold(number, held) {
    store.set({ held: held ? [...store.get().held, number] : store.get().held.filter((other) => other !== number) });
    say(held ? words.heldSaid : words.learningSaid);
  }

  /**
   * The mix of a step at hand, so that it can be painted and recorded.
   *
   * @param {Step} step
   */
  function setUp({ parts, load }) {
    store.set({ ...pathOf(parts), load, laid: 0 });
    say(words.paintIt(recipe(parts, shelf), load));
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

/**
 * A verb that learns from the records as they are; of several at work only the last one is heard.
 *
 * @param {Store} store
 * @param {Ask} ask
 * @param {(error: Error) => void} failed
 */
function createLearning(store, ask, failed) {
  let last = 0;
  return async () => {
    const { records, held, kit, learned } = store.get();
    last += 1;
    const turn = last;
    try {
      const lesson = await ask("learn", {
        records,
        held: Uint16Array.from(held),
        paints: Uint16Array.from(paintsOf(kit)),
        paper: paperOf(kit),
      });
      if (turn !== last) return;
      const taught = lesson.learned.map(({ k, s, was, ...paint }) => ({ ...paint, k: k.map(short), s: s.map(short) }));
      const patch = JSON.stringify(taught) === JSON.stringify(learned) ? {} : { learned: taught };
      store.set({ ...patch, lesson });
    } catch (error) {
      failed(error);
    }
  };
}

/** @param {number} value */
const short = (value) => Number(value.toPrecision(DIGITS));
