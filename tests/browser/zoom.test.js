// The page at 200 % and on the narrowest window: WCAG 2.2, 1.4.4 and 1.4.10.

import assert from "node:assert/strict";
import { controls, overflow } from "./support/layout.js";
import { show } from "./support/show.js";
import { visits } from "./support/visit.js";

const visit = visits();

/** Words whose own box cuts them off. */
const cut = (page) =>
  page.evaluate(() =>
    [...document.querySelectorAll("h1, h2, h3, p, button, label, legend, td, th, output, summary, li > span, dt, dd")]
      .filter((node) => {
        if (!node.checkVisibility({ visibilityProperty: true }) || node.closest(".unseen")) return false;
        const style = getComputedStyle(node);
        const hides = ["hidden", "clip"].includes(style.overflowX) || ["hidden", "clip"].includes(style.overflowY);
        const outside = node.getBoundingClientRect().right > innerWidth + 1 && !node.closest(".scroll");
        return (
          outside || (hides && (node.scrollWidth > node.clientWidth + 1 || node.scrollHeight > node.clientHeight + 1))
        );
      })
      .map((node) => `${node.tagName.toLowerCase()}.${node.className} "${node.textContent.trim().slice(0, 40)}"`),
  );

const dialogs = { Share: "#share-dialog", Print: "#print-dialog", Help: "#help" };

// 1440 x 900 at 200 %; and 1280 at 400 %.
for (const [name, viewport] of Object.entries({
  "720 x 450": { width: 720, height: 450 },
  "320 x 568": { width: 320, height: 568 },
})) {
  visit(`nothing is cut or scrolls sideways at ${name}`, { context: { viewport } }, async ({ page }) => {
    const assertWhole = async (view) => {
      assert.ok(
        (await overflow(page, viewport.width)) <= 0,
        `${view} is ${await overflow(page, viewport.width)} px too wide`,
      );
      assert.deepEqual(await cut(page), [], view);
      const hidden = (await controls(page))
        .filter(({ covered }) => covered)
        .map(({ name, covered }) => `${name} lies under ${covered}`);
      assert.deepEqual(hidden.slice(0, 4), [], `${view}: ${hidden.length} in all`);
    };
    for (const view of ["Mix", "Match", "Swatches", "Kit", "Shelf", "Report"]) {
      await show(page, view);
      await assertWhole(view);
    }
    for (const [opener, dialog] of Object.entries(dialogs)) {
      await page.getByRole("button", { name: opener, exact: true }).click();
      await assertWhole(opener);
      const box = await page.locator(dialog).boundingBox();
      assert.ok(
        box.x >= 0 && box.x + box.width <= viewport.width && box.y >= 0 && box.y + box.height <= viewport.height,
        `${opener} fits its window`,
      );
      await page.keyboard.press("Escape");
    }
  });
}
