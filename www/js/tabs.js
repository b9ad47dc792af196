// On a phone one part of the page shows at a time.

/** Shows the part a tab names. */
export function attachTabs(nav) {
  const tabs = [...nav.querySelectorAll("button")];
  const show = (name) => {
    document.body.dataset.tab = name;
    for (const tab of tabs) tab.setAttribute("aria-pressed", String(tab.dataset.show === name));
  };
  for (const tab of tabs) {
    tab.addEventListener("click", () => {
      show(tab.dataset.show);
      scrollTo(0, 0);
    });
  }
  show("mix");
  return show;
}
