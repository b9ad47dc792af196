// What greys a paint, what shades it, and how dark the kit goes.

import assert from "node:assert/strict";
import { visits } from "./support/visit.js";
import { ends, readout } from "./support/washpath.js";

const visit = visits();

const rows = (page, title) =>
  page
    .locator("#partners div")
    .filter({ has: page.locator("h4", { hasText: title }) })
    .locator(".name")
    .evaluateAll((names) => names.map((name) => name.textContent));

const ready = (page) => page.locator("#partners h4").first().waitFor();

visit("burnt sienna greys ultramarine: it leads the kit's neutral partners", {}, async ({ page }) => {
  // Measured: MacEvoy, handprint.com/HP/WCL/mix.html, lists the pair among those that make near greys.
  await ready(page);
  const kit = await rows(page, "In the kit");
  assert.match(kit[0], /^Burnt sienna PBr7greyest at \d+:\d+: .*L\*\s\d+, C\*\s[0-5]; darkest/);
  const chromas = kit.map((row) => Number(row.match(/C\*\s(\d+)/)[1]));
  assert.deepEqual(
    chromas,
    [...chromas].sort((a, b) => a - b),
    "greyest first",
  );
  const shelf = await rows(page, "On the shelf");
  assert.ok(shelf.length > 0 && shelf.length <= 5);
  await page
    .locator("#partners")
    .getByRole("button", { name: /^All \d+/ })
    .click();
  assert.ok((await rows(page, "On the shelf")).length > 5);
});

visit("shading partners are others than neutral ones", {}, async ({ page }) => {
  await ready(page);
  const name = (row) => row.match(/^.*? P\w+?\d/)?.[0];
  const neutral = [...(await rows(page, "In the kit")), ...(await rows(page, "On the shelf"))].map(name);
  await page.locator("#partners").getByRole("button", { name: "Shading" }).click();
  const shading = [...(await rows(page, "In the kit")), ...(await rows(page, "On the shelf"))];
  assert.ok(shading.length > 0);
  for (const row of shading) {
    assert.match(row, /\d+ darker, hue (kept|turns \d+°)/);
    assert.ok(!neutral.includes(name(row)), row);
  }
});

visit("a partner that is chosen becomes the other end, at its ratio", {}, async ({ page }) => {
  await ready(page);
  const row = page.locator("#partners .take").nth(1);
  const text = await row.locator(".name").textContent();
  // By itself: a paint's code ends in a digit, and the ratio follows.
  const told = await row.locator(".traits").textContent();
  await row.click();
  const [a, b] = await ends(page);
  assert.match(a, /PB29$/);
  assert.ok(text.startsWith(b), `${b} from ${text}`);
  assert.equal((await readout(page)).ratio.replaceAll(" ", ""), told.match(/^greyest at (\d+:\d+):/)[1]);
  assert.equal((await readout(page)).numbers["Chroma C*"], told.match(/C\*\s(\d+)/)[1]);
  await page.getByLabel("Whose partners").selectOption({ index: 1 });
  await page.locator("#partners .take").first().click();
  assert.equal((await ends(page))[1], b, "partners of B fill A");
});

/** The darks lie in the report, folded. */
async function openDarks(page) {
  await page.getByRole("button", { name: "Report", exact: true }).click();
  await page.getByText("Darks of every hue").click();
}

visit("darks tell each hue's darkest mix and put it on the path", {}, async ({ page }) => {
  await openDarks(page);
  const dark = page.locator("#darks li");
  await dark.first().waitFor();
  assert.equal(await dark.count(), 13, "twelve hue families and grey");
  const green = dark.filter({ has: page.locator(".name", { hasText: /^green/ }) });
  const value = Number((await green.locator(".figure").textContent()).replace("L* ", ""));
  await green.locator(".take").click();
  const { numbers, words, load } = await readout(page);
  assert.equal(Number(numbers["Value L*"]), value);
  assert.match(words, /green/);
  assert.equal(load, "masstone");
});

visit("an empty tin has no darks, and says what to do", {}, async ({ page }) => {
  await page.getByRole("button", { name: "Edit pans" }).click();
  await page.getByRole("button", { name: "Empty the tin" }).click();
  await page.waitForFunction(() => document.getElementById("darks").textContent.includes("Pack some paints"));
});

const noEnds = () => localStorage.setItem("washpath/looks", JSON.stringify({ ends: [null, null] }));
visit("without an end there are no partners, and it says what to do", { script: noEnds }, async ({ page }) => {
  await page.locator("#partners h3").waitFor();
  assert.match(await page.locator("#partners").textContent(), /Choose a paint/);
});
