// Parts of the page that take turns: on a phone all of them, elsewhere what stands below the tin.

/**
 * Shows the part a tab names.
 *
 * @param {Element} nav
 */
export function attachTabs(nav) {
  const tabs = [...nav.querySelectorAll("button")];
  /** @param {string} name */
  const show = (name) => {
    document.body.dataset.tab = name;
    for (const tab of tabs) tab.setAttribute("aria-pressed", String(tab.dataset.show === name));
  };
  for (const tab of tabs) {
    tab.addEventListener("click", () => {
      show(tab.dataset.show ?? "");
      scrollTo(0, 0);
    });
  }
  show("mix");
  return show;
}

/**
 * Where the page is wide, two parts take turns: which one shows is written on the body. Answers a verb that shows one.
 *
 * @param {HTMLElement} frame
 */
export function attachSwitch(frame) {
  const choices = [...frame.querySelectorAll("button")];
  const { key = "" } = frame.dataset;
  /** @param {string} name */
  const show = (name) => {
    document.body.dataset[key] = name;
    for (const choice of choices) choice.setAttribute("aria-pressed", String(choice.dataset.show === name));
  };
  for (const choice of choices) choice.addEventListener("click", () => show(choice.dataset.show ?? ""));
  show(choices[0].dataset.show ?? "");
  return show;
}
