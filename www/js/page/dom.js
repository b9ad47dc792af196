// Building and finding elements.

import * as words from "../words/page.js";

/**
 * The element of an id, of the kind it is used as. Throws where the page has none.
 *
 * @template {HTMLElement} [T=HTMLElement]
 * @param {string} id
 * @param {new () => T} [kind]
 * @returns {T}
 */
export function byId(id, kind) {
  const found = document.getElementById(id);
  if (!(found instanceof (kind ?? HTMLElement))) throw new Error(words.noElement(id));
  return /** @type {T} */ (found);
}

/**
 * The first element that a selector finds. Throws where there is none.
 *
 * @param {ParentNode} frame
 * @param {string} selector
 */
export function first(frame, selector) {
  const found = frame.querySelector(selector);
  if (!(found instanceof HTMLElement)) throw new Error(words.noneFound(selector));
  return found;
}

/**
 * All elements that a selector finds.
 *
 * @param {ParentNode} frame
 * @param {string} selector
 * @returns {HTMLElement[]}
 */
export const all = (frame, selector) =>
  [...frame.querySelectorAll(selector)].filter((node) => node instanceof HTMLElement);

/**
 * Where among some elements the focus is; -1 where it is elsewhere.
 *
 * @param {(Element | null)[]} elements
 */
export const focusedAmong = (elements) => elements.indexOf(document.activeElement);

/**
 * An element with attributes and children; `on…` are listeners, text is never read as HTML.
 *
 * @template {keyof HTMLElementTagNameMap} K
 * @param {K} name
 * @param {{ [name: string]: any }} [attributes]
 * @param {...(Node | string | false | null | undefined)} children
 * @returns {HTMLElementTagNameMap[K]}
 */
export function element(name, attributes = {}, ...children) {
  const node = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith("on")) node.addEventListener(key.slice(2), value);
    else if (key === "style") Object.entries(value).forEach(([name, text]) => node.style.setProperty(name, text));
    else if (value === true) node.setAttribute(key, "");
    else if (value !== false && value != null) node.setAttribute(key, value);
  }
  for (const child of children) if (child != null && child !== false) node.append(child);
  return node;
}

/**
 * @param {string} text
 * @param {(event: MouseEvent) => unknown} onclick
 * @param {{ [name: string]: any }} [attributes]
 */
export const button = (text, onclick, attributes = {}) =>
  element("button", { type: "button", onclick, ...attributes }, text);

/**
 * Makes an element say something. What it says already is left alone, as the browser lays out anew whatever is said again.
 *
 * @param {Element} node
 * @param {string} text
 */
export function put(node, text) {
  if (node.textContent !== text) node.textContent = text;
}

/**
 * Says something to a screen reader.
 *
 * @param {string} text
 */
export function say(text) {
  byId("said").textContent = text;
}

/**
 * The verb of a notice that takes the last step back.
 *
 * @type {[string, () => void]}
 */
export const UNDO = [words.undo, () => byId("undo").click()];

/**
 * When the notice at hand goes.
 *
 * @type {ReturnType<typeof setTimeout> | undefined}
 */
let goes;

/**
 * Shows a line above the page, with buttons; `seconds` until it goes, or it stays. `actions` close it, `verbs` are buttons that do not.
 *
 * @param {string} text
 * @param {{ actions?: [string, () => unknown][], verbs?: Node[], seconds?: number }} [how]
 */
export function notice(text, { actions = [], verbs: lasting = [], seconds = 0 } = {}) {
  const bar = byId("notice");
  const close = () => (bar.hidden = true);
  const closing = actions.map(([word, act]) =>
    button(word, () => {
      close();
      act();
    }),
  );
  bar.replaceChildren(element("span", {}, text), ...lasting, ...closing, button(words.close, close));
  bar.hidden = false;
  clearTimeout(goes);
  goes = seconds ? setTimeout(close, seconds * 1000) : undefined;
}

/** Takes away a line that would go by itself, once what it speaks of is past. */
export function endNotice() {
  if (goes !== undefined) byId("notice").hidden = true;
}
