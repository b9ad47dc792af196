// Editing the pans of the kit: what fills each, in which order they lie, and emptying them all.

import { button, element } from "../page/dom.js";
import { emptyKit, move, refill, remove } from "../state/kit.js";
import { editKit } from "./edit.js";

/** Answers the editor of a kit as a node. It is large: it is made anew only where the kit or the shelf is another. */
export function createPanEditor(store, shelf, packDemo) {
  let made = {};
  return (kit) => {
    if (made.kit !== kit || made.all !== shelf.all) made = { kit, all: shelf.all, node: editorOf(kit) };
    return made.node;
  };

  function editorOf(kit) {
    return element(
      "div",
      { class: "editor" },
      element("ol", { class: "rows" }, ...kit.pans.map((pan, i) => rowOf(pan, i, kit.pans.length - 1))),
      element(
        "div",
        { class: "verbs" },
        button("Empty the tin", () => editKit(store, emptied, "Tin emptied"), { disabled: kit.pans.length === 0 }),
        button("Demo kit", packDemo),
      ),
    );
  }

  function rowOf(pan, i, last) {
    const name = pan.map((paint) => shelf.get(paint).name).join(" and ");
    const verb = (word, change, done, disabled = false) =>
      button(word, () => editKit(store, change, `${name} ${done}`), {
        disabled,
        "aria-label": `${word}: ${name}`,
        "data-focus": `${word}-${pan.join("-")}`,
      });
    return element(
      "li",
      {},
      fillsOf(pan, i),
      element(
        "div",
        { class: "verbs" },
        verb("Earlier", (kit) => move(kit, i, -1), "moved earlier", i === 0),
        verb("Later", (kit) => move(kit, i, 1), "moved later", i === last),
        verb("Remove", (kit) => remove(kit, i), "removed"),
      ),
    );
  }

  /** What is in a pan: one paint, and perhaps a second beside it. */
  function fillsOf([first, second = 0], i) {
    const fill = (...paints) => editKit(store, (kit) => refill(kit, i, paints));
    return element(
      "div",
      { class: "fills" },
      element("span", { class: "quiet", "aria-hidden": "true" }, `Pan ${i + 1}`),
      picker(`Pan ${i + 1}`, first, [], (paint) => (second ? fill(paint, second) : fill(paint))),
      picker(
        `Pan ${i + 1}, beside it`,
        second,
        [element("option", { value: 0, selected: second === 0 }, "nothing beside it")],
        (paint) => (paint ? fill(first, paint) : fill(first)),
      ),
    );
  }

  /** A list of every paint, behind what else there is to choose. */
  function picker(label, chosen, others, onpick) {
    const select = element(
      "select",
      { "aria-label": label, "data-focus": label, onchange: () => onpick(Number(select.value)) },
      ...others,
      ...shelf.all.map(({ number, name, code }) =>
        element("option", { value: number, selected: number === chosen }, `${name} ${code}`),
      ),
    );
    return select;
  }
}

/** Of the kit only its title, tin and paper stay. */
const emptied = ({ id, title, capacity, stock, paper }) => ({ ...emptyKit(title), id, capacity, stock, paper });
