// Links that were once given out open in the page itself.

import assert from "node:assert/strict";
import { goldenLinks } from "./support/tables.js";
import { visits } from "./support/visit.js";

const visit = visits();

const guest = (page) => page.getByRole("region", { name: "A kit came with this link" });

visit("every link that was given out shows its kit", {}, async ({ page }) => {
  const links = goldenLinks();
  assert.ok(links.length > 40, `${links.length} links`);
  // Else the link of the demo kit would be the one at hand.
  await page.getByLabel("Title of the kit").fill("Mine");
  await page.getByLabel("Title of the kit").press("Enter");
  for (const { text, title, pans } of links) {
    await page.evaluate((text) => (location.hash = `kit=${text}`), text);
    const came = guest(page).or(page.locator("#notice").getByText(/link/));
    await came.first().waitFor();
    assert.ok(await guest(page).isVisible(), `${title}: ${await page.locator("#notice").textContent()}`);
    const shared = guest(page).locator(".side-by-side > div").first();
    assert.equal(await shared.locator("small").textContent(), title || "untitled");
    const count = pans.split(" ").filter(Boolean).length;
    assert.match(await shared.locator("p.quiet").textContent(), new RegExp(`^${count} of `), title);
    assert.equal(await shared.locator(".chips > li").count(), count, title);
    await guest(page).getByRole("button", { name: "Keep mine" }).click();
    await guest(page).waitFor({ state: "hidden" });
  }
});
