// What lies where: sizes to hit, and nothing in the way.

/** How many px the page is wider than its window, whatever zoom the browser chose to hide it. */
export const overflow = (page, width) => page.evaluate((width) => document.documentElement.scrollWidth - width, width);

/** Every control that shows: `{name, width, height, covered}`, scrolled to where it lies; `covered` names what hides its middle. */
export const controls = (page) =>
  page.evaluate(() => {
    const dialog = document.querySelector("dialog[open]");
    const all = [...(dialog ?? document).querySelectorAll("button, select, input, textarea, canvas[tabindex]")];
    // What is unseen is hit by its label.
    const shown = all.filter((node) => node.checkVisibility({ visibilityProperty: true }) && !node.matches(".unseen"));
    const name = (node) =>
      `${node.tagName.toLowerCase()} ${node.getAttribute("aria-label") ?? (node.textContent.trim() || node.id)}`;
    const found = shown.map((node) => {
      node.scrollIntoView({ block: "center", inline: "center", behavior: "instant" });
      // A label is part of what one hits.
      const box = (node.type === "checkbox" ? node.closest("label") : node).getBoundingClientRect();
      const hit = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
      const own = hit && (node.contains(hit) || (hit.contains(node) && hit.matches("label")));
      return {
        name: name(node),
        width: box.width,
        height: box.height,
        covered: own
          ? null
          : hit
            ? `${hit.tagName.toLowerCase()} ${hit.id || hit.className}`
            : "nothing: it is outside the window",
        kind: node.type ?? node.tagName,
      };
    });
    scrollTo(0, 0);
    return found;
  });
