// One field to find a paint by name or code, with the paints that fit below it.

/** @import { Paint, Shelf } from "../state/types.js" */

import { element } from "../page/dom.js";
import { fitting as paintsThatFit } from "../words/tin.js";
import { fits, namesOf, plain } from "./find.js";

/** Most paints offered at once: as many as stand below the field without scrolling. */
const MOST = 6;

/**
 * Paints that an arrow key goes on by.
 *
 * @type {{ [key: string]: number }}
 */
const STEPS = { ArrowDown: 1, ArrowUp: -1 };

let made = 0;

/**
 * Answers the field as a node. `row` makes what stands for a paint; `onpick` hears its number, `onleave` of Escape, which without it empties the field.
 * Arrows go through the paints, Enter takes one, as in any combobox.
 *
 * @param {string} label
 * @param {Shelf} shelf
 * @param {(paint: Paint) => (Node | string)[]} row
 * @param {{ onpick: (paint: number) => void, onleave?: () => void }} what
 */
export function createPaintField(label, shelf, row, { onpick, onleave }) {
  made += 1;
  const id = `paints-${made}`;
  /** @type {Paint[]} */
  let offered = [];
  let at = 0;
  const list = element("ul", { id, role: "listbox", class: "offers", "aria-label": paintsThatFit });
  const input = element("input", {
    type: "search",
    role: "combobox",
    "aria-label": label,
    "aria-controls": id,
    "aria-autocomplete": "list",
    "aria-expanded": "false",
    placeholder: label,
    autocomplete: "off",
    spellcheck: "false",
    oninput: offer,
    onkeydown: byKey,
  });

  function offer() {
    offered = input.value.trim() ? fitting(shelf.all, input.value).slice(0, MOST) : [];
    at = 0;
    /**
     * @param {Paint} paint
     * @param {number} i
     */
    const option = (paint, i) =>
      element("li", { id: `${id}-${i}`, role: "option", onclick: () => onpick(paint.number) }, ...row(paint));
    list.replaceChildren(...offered.map(option));
    point();
  }

  function point() {
    [...list.children].forEach((option, i) => option.setAttribute("aria-selected", String(i === at)));
    input.setAttribute("aria-expanded", String(offered.length > 0));
    if (offered.length) input.setAttribute("aria-activedescendant", `${id}-${at}`);
    else input.removeAttribute("aria-activedescendant");
  }

  function empty() {
    input.value = "";
    offer();
  }

  /** @param {KeyboardEvent} event */
  function byKey(event) {
    const step = STEPS[event.key];
    if (event.key === "Escape" && (onleave || input.value)) (onleave ?? empty)();
    else if (event.key === "Enter" && offered.length) onpick(offered[at].number);
    else if (step && offered.length) at = (at + step + offered.length) % offered.length;
    else return;
    event.preventDefault();
    if (step) point();
  }

  return { node: element("div", { class: "paint-field" }, input, list), focus: () => input.focus() };
}

/**
 * Paints that fit what is typed; first those whose code or name begins with it.
 *
 * @param {Paint[]} paints
 * @param {string} typed
 */
function fitting(paints, typed) {
  const found = paints.filter((paint) => fits(namesOf(paint), typed));
  const begin = plain(typed).replaceAll(" ", "");
  /** @param {Paint} paint */
  const rank = ({ code, name }) => {
    const [short, long] = [code, name].map((text) => plain(text).replaceAll(" ", ""));
    return short === begin ? 0 : short.startsWith(begin) || long.startsWith(begin) ? 1 : 2;
  };
  return found.toSorted((a, b) => rank(a) - rank(b));
}
