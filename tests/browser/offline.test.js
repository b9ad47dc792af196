// A link opens without the host once the page was visited.

import assert from "node:assert/strict";
import { assertQuiet, open } from "./support/launch.js";
import { linkText } from "./support/link.js";
import { visits } from "./support/visit.js";
import { kit } from "./support/washpath.js";

const visit = visits({ hosted: true });

visit("a first visit says when it works offline", {}, async ({ page }) => {
  await page.locator("#offline").getByText("works offline").waitFor({ timeout: 10_000 });
});

// Last: it stops the host.
visit("a link shows its kit without the host", {}, async ({ page, visitor, address, stop }) => {
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => {}));
  await stop();
  const { page: later, log } = await open(
    visitor,
    `${address}#kit=${linkText({ title: "By post", pans: [[1], [72]] })}`,
  );
  const guest = later.getByRole("region", { name: "A kit came with this link" });
  assert.match(await guest.textContent(), /By post/);
  await guest.getByRole("button", { name: "Pack the shared kit" }).click();
  assert.equal((await kit(later)).title, "By post");
  assertQuiet(log, address);
});
