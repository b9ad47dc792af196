// Names in every script: none turns round the words beside it, and nothing in them is unseen.

import assert from "node:assert/strict";
import { test } from "node:test";
import { isolated } from "../../target/sources/js/words/form.js";
import { recipe } from "../../target/sources/js/words/terms.js";
import { linkText } from "./support/link.js";
import { visits } from "./support/visit.js";

const visit = visits();

/** The title of an old link: turned round by U+202E, with a zero-width space. */
const hash = `#kit=${linkText({ title: "\u202eruobraH\u200b yauQ", pans: [[1], [72]] })}`;

test("a name from right to left stands by itself among others", () => {
  assert.equal(isolated("Quay red"), "Quay red");
  for (const name of ["אדום", "أحمر", "Quay אדום"]) assert.equal(isolated(name), `\u2068${name}\u2069`);
  const shelf = { get: (paint) => ({ name: ["אדום", "Burnt sienna"][paint] }) };
  assert.equal(
    recipe(
      [
        [0, 2],
        [1, 1],
      ],
      shelf,
    ),
    "2 parts \u2068אדום\u2069, 1 part Burnt sienna",
  );
});

visit("an old link's title is shown without what nobody sees, and is packed so", { hash }, async ({ page }) => {
  const guest = page.getByRole("region", { name: "A kit came with this link" });
  assert.equal(await guest.locator("h3 small").first().textContent(), "ruobraH yauQ");
  await guest.getByRole("button", { name: "Pack the shared kit" }).click();
  assert.equal(await page.getByLabel("Title of the kit").inputValue(), "ruobraH yauQ");
});

visit("wherever a name stands it is by itself", {}, async ({ page }) => {
  await page.evaluate((text) => (location.hash = `kit=${text}`), linkText({ title: "נמל 7", pans: [[1]] }));
  await page.getByRole("region", { name: "A kit came with this link" }).getByText("נמל 7").waitFor();
  const styles = await page.evaluate(() =>
    ["#guest h3 small", "#shelf-list .name", "#ends .name", "#tin input"].map(
      (part) => getComputedStyle(document.querySelector(part)).unicodeBidi,
    ),
  );
  assert.deepEqual(styles, ["isolate", "isolate", "isolate", "plaintext"]);
});
