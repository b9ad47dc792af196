// What a teacher asks of a class: a note and tasks that go along with a kit, and which of them are done.

/** @import { Brief, State, Store } from "../state/types.js" */

import { LONGEST_TASK, MOST_TASKS } from "../../pkg/facts.js";
import { byId, element } from "../page/dom.js";
import { remake } from "../page/remake.js";
import * as words from "../words/mix.js";

/** Most ticks that are kept; the oldest go first. */
const MOST_TICKS = 200;

/**
 * The brief of what was typed, tasks one a line; nothing where all is empty. What does not fit is said.
 *
 * @param {string} note
 * @param {string} lines
 */
export function briefOf(note, lines) {
  const tasks = lines
    .split("\n")
    .map((line) => line.replace(/\p{Cc}/gu, " ").trim())
    .filter(Boolean);
  const long = tasks.findIndex((task) => [...task].length > LONGEST_TASK);
  if (tasks.length > MOST_TASKS) throw new Error(words.tooManyTasks(tasks.length, MOST_TASKS));
  if (long >= 0) throw new Error(words.longTask(long + 1, LONGEST_TASK));
  const said = note.replace(/\s+/g, " ").trim();
  return said || tasks.length ? { note: said, tasks } : null;
}

/**
 * @param {Brief} brief
 * @param {number} i
 */
const tickOf = ({ note, tasks }, i) => `${i} ${JSON.stringify([note, ...tasks])}`;

/**
 * @param {Brief} brief
 * @param {string[]} ticked
 */
export const countDone = (brief, ticked) => brief.tasks.filter((_, i) => ticked.includes(tickOf(brief, i))).length;

/**
 * Note and tasks with boxes to tick; ticks stay on this device.
 *
 * @param {Brief} brief
 * @param {Store} store
 */
export function briefList(brief, store) {
  const { ticked } = store.get();
  /**
   * @param {string} text
   * @param {number} i
   */
  const task = (text, i) => {
    const tick = tickOf(brief, i);
    const box = element("input", {
      type: "checkbox",
      checked: ticked.includes(tick),
      "data-focus": `task-${i}`,
      onchange: () => {
        const rest = store.get().ticked.filter((known) => known !== tick);
        store.set({ ticked: box.checked ? [...rest, tick].slice(-MOST_TICKS) : rest });
      },
    });
    return element("li", {}, element("label", { class: "tick" }, box, element("span", {}, text)));
  };
  return [
    brief.note && element("p", { class: "note" }, brief.note),
    brief.tasks.length > 0 && element("ul", { class: "tasks", "aria-label": words.tasks }, ...brief.tasks.map(task)),
  ].filter(Boolean);
}

/**
 * Shows the tasks of the kit in hand above its mixes.
 *
 * @param {Store} store
 */
export function attachBrief(store) {
  const frame = byId("brief");
  /** @param {State} state */
  function show({ kit: { brief }, ticked }) {
    frame.hidden = !brief;
    if (!brief) return frame.replaceChildren();
    const open = frame.querySelector("details")?.open ?? true;
    const head = brief.tasks.length ? words.tasksDone(countDone(brief, ticked), brief.tasks.length) : words.noteOnly;
    remake(
      frame,
      element(
        "details",
        { open },
        element("summary", { "data-focus": "summary" }, element("h3", {}, head)),
        ...briefList(brief, store),
      ),
    );
  }
  store.subscribe(
    (state, changed, before) => (changed.has("ticked") || state.kit.brief !== before.kit.brief) && show(state),
  );
  show(store.get());
}
