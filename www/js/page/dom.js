// Building and finding elements.

export const byId = (id) => document.getElementById(id);

/** An element with attributes and children; `on…` are listeners, text is never read as HTML. */
export function element(name, attributes = {}, ...children) {
  const node = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith("on")) node.addEventListener(key.slice(2), value);
    else if (key === "style") Object.entries(value).forEach(([name, text]) => node.style.setProperty(name, text));
    else if (value === true) node.setAttribute(key, "");
    else if (value !== false && value != null) node.setAttribute(key, value);
  }
  node.append(...children.filter((child) => child != null && child !== false));
  return node;
}

export const button = (text, onclick, attributes = {}) =>
  element("button", { type: "button", onclick, ...attributes }, text);

/** A control with its name. */
export const labelled = (name, control) => element("label", { class: "field" }, element("span", {}, name), control);

/** Says something to a screen reader. */
export function say(text) {
  byId("said").textContent = text;
}

/** The verb of a notice that takes the last step back. */
export const UNDO = ["Undo", () => byId("undo").click()];

/** Shows a line above the page, with buttons; `seconds` until it goes, or it stays. `actions` close it, `verbs` are buttons that do not. */
export function notice(text, { actions = [], verbs: lasting = [], seconds = 0 } = {}) {
  const bar = byId("notice");
  const close = () => (bar.hidden = true);
  const closing = actions.map(([word, act]) =>
    button(word, () => {
      close();
      act();
    }),
  );
  bar.replaceChildren(element("span", {}, text), ...lasting, ...closing, button("Close", close));
  bar.hidden = false;
  clearTimeout(notice.timer);
  if (seconds) notice.timer = setTimeout(close, seconds * 1000);
}
