// Hands on the keyboard alone.

import assert from "node:assert/strict";

/** The focused element's name: its label's or its own words. */
const focused = (page) =>
  page.evaluate(() => {
    const node = document.activeElement;
    return (node.getAttribute("aria-label") ?? node.labels?.[0]?.textContent ?? node.textContent).trim();
  });

/** Presses Tab, or Shift and Tab, until the element of this name has focus, which shows; `most` is the patience. */
export async function tabTo(page, name, { back = false, most = 400 } = {}) {
  for (let i = 0; i < most; i += 1) {
    await page.keyboard.press(back ? "Shift+Tab" : "Tab");
    const now = await focused(page);
    if (!(name instanceof RegExp ? name.test(now) : name === now)) continue;
    const outline = await page.evaluate(() => getComputedStyle(document.activeElement).outlineStyle);
    assert.notEqual(outline, "none", `${name}: the focus does not show`);
    return;
  }
  assert.fail(`${most} Tabs do not reach ${name}`);
}

/** Tabs to a button and presses Enter on it. */
export async function enter(page, name, options) {
  await tabTo(page, name, options);
  await page.keyboard.press("Enter");
}
