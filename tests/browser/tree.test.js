// What a screen reader is given, whole: compared with the text that was last looked at.

import assert from "node:assert/strict";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { show } from "./support/show.js";
import { visits } from "./support/visit.js";

const visit = visits();

const file = (name) => fileURLToPath(new URL(`../golden/${name}.aria.txt`, import.meta.url));

/** `WASHPATH_REMAKE_ARIA=1` writes the texts anew; their difference must then be looked at. */
const remake = Boolean(process.env.WASHPATH_REMAKE_ARIA);

/** Without today's date. */
const stable = (tree) => `${tree.replace(/\b\d{4}-\d{2}-\d{2}\b/g, "DATE").trim()}\n`;

const views = {
  first: async () => {},
  kit: async (page) => {
    await page.getByRole("button", { name: "Edit pans", exact: true }).click();
  },
  match: async (page) => {
    await show(page, "Match");
    await page.locator("#target-text").fill("lab(45 -12 10)");
    await page.locator("#recipes li").first().waitFor();
  },
  swatches: async (page) => {
    await show(page, "Swatches");
    await page.locator("#plan .take").first().waitFor();
  },
  report: async (page) => {
    await show(page, "Report");
    await page.locator("#report-said li").first().waitFor();
  },
};
/** The part of the page that a view is about; the first has all of it. */
const parts = { first: "body", kit: "#kit", match: "#match", swatches: "#swatches", report: "#report" };

for (const [name, act] of Object.entries(views)) {
  visit(`the accessibility tree is as it was, ${name}`, {}, async ({ page }) => {
    await act(page);
    // The partners come once the hand rests.
    if (name === "first") await page.locator("#partners .take").first().waitFor();
    const tree = stable(await page.locator(parts[name]).ariaSnapshot());
    if (remake) return writeFileSync(file(name), tree);
    assert.ok(existsSync(file(name)), `tests/golden/${name}.aria.txt is missing`);
    assert.equal(
      tree,
      readFileSync(file(name), "utf8"),
      `if this is meant: WASHPATH_REMAKE_ARIA=1, and look at the difference`,
    );
  });
}
