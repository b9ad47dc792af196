// What once kept the page from starting again, or lost something without a word, done by hand as a painter would.

import assert from "node:assert/strict";
import { drawn } from "./support/launch.js";
import { linkText } from "./support/link.js";
import { visits } from "./support/visit.js";
import { kit } from "./support/washpath.js";

const visit = visits();

const press = (page, name) => page.getByRole("button", { name, exact: true }).click();
const notice = (page) => page.locator("#notice").textContent();
const kits = (page) => page.locator("#kits option").allTextContents();

/** Loads the page anew: it starts, and complains of nothing. */
async function again(page) {
  await page.reload();
  await drawn(page);
  assert.ok(await page.locator("#notice").isHidden(), await notice(page));
}

/** Puts the mix at hand on the shelf as an own paint. */
async function makeOwn(page, name) {
  await page.locator(".switch").getByRole("button", { name: "Swatches" }).click();
  await press(page, "New from the mix at hand");
  await page.locator("#own-form [name=name]").fill(name);
  await press(page, "Put it on my shelf");
  await page.locator("#own-dialog").waitFor({ state: "hidden" });
}

/** Adds what a kit file holds. */
async function addFile(page, file) {
  await press(page, "Share");
  await press(page, "File");
  await page.locator("#file-open").setInputFiles({
    name: "all.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify({ washpath: 1, ...file })),
  });
  await press(page, "Add to what is here");
}

const puddle = (keys) => ({ parts: keys.map((key) => [key, 1]), load: 0.5 });

visit("two puddles of nine paints together are no path, and it is said", {}, async ({ page }) => {
  const puddles = [puddle(["pb29", "pb15-3", "py42", "pr254", "pg18"]), puddle(["pb60", "pv23", "pr179", "po73"])];
  await addFile(page, { kits: [{ title: "Many", pans: [["pb29"]], puddles }] });
  await page.getByLabel("Kit in hand").selectOption({ label: "Many" });
  const takes = page.locator("#puddles .take");
  await takes.nth(0).click();
  await takes.nth(1).click();
  assert.match(await notice(page), /9 paints, and a mix holds at most 8/);
  await page.locator("#notice").getByRole("button", { name: "Close" }).click();
  await again(page);
  assert.equal(await takes.count(), 2);
});

visit(
  "the shared kit comes beside the one in hand, and one undo takes it back",
  { hash: `#kit=${linkText({ title: "Lent", pans: [[1], [3]] })}` },
  async ({ page }) => {
    const mine = await kit(page);
    await press(page, "Pack the shared kit");
    assert.match(await notice(page), /“Lent” is your kit now\. “North Sea harbour, October” is kept in the list/);
    assert.deepEqual(await kits(page), ["Lent", mine.title]);
    await page.locator("#undo").click();
    assert.deepEqual(await kit(page), mine);
    assert.equal(await page.locator("#notice").isVisible(), false, "what it told is past");
    await page.locator("#redo").click();
    await again(page);
    assert.deepEqual(await kits(page), ["Lent", mine.title]);
  },
);

/** A kit with own paints "Quay red" and "Harbour grey"; of crate/core/tests/reference/links_own.csv. */
const QUAY =
  "AgEMDAACgEADgSBRdWF5BUICCFF1YXkgcmVkC1BSMjU0IFBSMTAxAAQCAAgCAQCYAdABeA8AwgJYMgxIYXJib3VyIGdyZXkAAAAAAAAAAgECAwEayg";

visit(
  "a paint doubled while a guest's of that name is shown is called otherwise, and the page starts again",
  {},
  async ({ page, address }) => {
    await makeOwn(page, "Quay red");
    await page.goto(`${address}#kit=${QUAY}`);
    await page.locator("#guest h2").waitFor();
    // The guest's stands on the shelf as "Quay red 2".
    await page.locator("#mine").getByRole("button", { name: "Duplicate: Quay red", exact: true }).click();
    await press(page, "Pack the shared kit");
    await page.locator("#notice").getByRole("button", { name: "Close" }).click();
    const names = () =>
      page.locator("#mine .name").evaluateAll((names) => names.map((name) => name.textContent).sort());
    const before = await names();
    assert.equal(new Set(before).size, 4, before.join("; "));
    await again(page);
    await page.locator(".switch").getByRole("button", { name: "Swatches" }).click();
    assert.deepEqual(await names(), before);
  },
);

visit("twenty kits restored on a new device are all there: the demo takes no room", {}, async ({ page }) => {
  await addFile(page, { kits: Array.from({ length: 20 }, (_, i) => ({ title: `Kit ${i + 1}`, pans: [["pb29"]] })) });
  assert.deepEqual(
    (await kits(page)).slice(1),
    Array.from({ length: 20 }, (_, i) => `Kit ${i + 1}`),
  );
});
