// What a teacher asks of a class: the fields for a note and tasks, which go along with the kit.

/** @import { Store } from "../state/types.js" */

import { briefOf } from "../mix/brief.js";
import { byId } from "../page/dom.js";
import { classUnchanged } from "../words/send.js";

/**
 * Keeps what is typed with the kit in hand; `changed` hears when it is another. Answers a verb that fills the fields from the kit.
 *
 * @param {Store} store
 * @param {() => void} changed
 */
export function attachClassFields(store, changed) {
  const note = byId("class-note", HTMLTextAreaElement);
  const tasks = byId("class-tasks", HTMLTextAreaElement);
  const said = byId("class-said");

  function keep() {
    try {
      const { kit } = store.get();
      store.set({ kit: { ...kit, brief: briefOf(note.value, tasks.value) } });
      said.textContent = "";
      changed();
    } catch (error) {
      said.textContent = classUnchanged(error.message);
    }
  }

  for (const typed of [note, tasks]) typed.addEventListener("change", keep);
  return () => {
    const { brief } = store.get().kit;
    note.value = brief?.note ?? "";
    tasks.value = brief?.tasks.join("\n") ?? "";
    byId("class", HTMLDetailsElement).open = Boolean(brief);
    said.textContent = "";
  };
}
