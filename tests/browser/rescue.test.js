// What the page shows when its start breaks: nothing that was kept is lost, and there is a next step.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { drawn } from "./support/launch.js";
import { visits } from "./support/visit.js";
import { kit } from "./support/washpath.js";

const visit = visits();

const notice = (page) => page.locator("#notice");
const verb = (page, name) => notice(page).getByRole("button", { name, exact: true });

/** Everything this browser keeps of the page, by its key. */
const kept = (page) => page.evaluate(() => ({ ...localStorage }));
/** The painter's work among it: what a start notes of its looks may change. */
const workOf = (all) =>
  Object.fromEntries(Object.entries(all).filter(([key]) => /^washpath\/(kit|record|own)\//.test(key)));

/** What the window's name says is missing fails at the next start: a part of the browser that the wheel needs, or the core. */
function breakable() {
  if (window.name === "no observer") delete globalThis.ResizeObserver;
  if (window.name === "no core") WebAssembly.compileStreaming = () => Promise.reject(new Error("no room for it"));
}

/** A kit that the painter has changed, and a record that cannot be read. */
async function work(page) {
  await page.getByLabel("Title of the kit").fill("Kept over a breakdown");
  await page.getByLabel("Title of the kit").press("Enter");
  // Looks follow once the hand rests; after them nothing more is written.
  await page.waitForFunction(() => ["kit/demo", "learned", "looks"].every((key) => `washpath/${key}` in localStorage));
  await page.evaluate(() => localStorage.setItem("washpath/record/0123456789ab", "{damaged"));
}

/** Loads the page anew, broken as it is told to be; an empty word mends it. */
async function again(page, broken) {
  await page.evaluate((broken) => (window.name = broken), broken);
  await page.reload();
}

const mend = (page) => page.evaluate(() => (window.name = ""));

visit("a start that breaks keeps all, saves all, and starts without it", { script: breakable }, async ({ page }) => {
  await work(page);
  const before = await kept(page);
  await again(page, "no observer");
  await notice(page).getByText("None of it is lost").waitFor();
  assert.match(await notice(page).textContent(), /could not start with what this browser keeps: .*ResizeObserver/);
  assert.deepEqual(await kept(page), before, "a broken start writes nothing");

  const [file] = await Promise.all([page.waitForEvent("download"), verb(page, "Save everything as a file").click()]);
  const saved = readFileSync(await file.path(), "utf8");
  for (const [key, text] of Object.entries(workOf(before)))
    assert.ok(saved.includes(JSON.stringify(text).slice(1, -1)), `${key} is in the file`);

  await mend(page);
  await verb(page, "Start without it").click();
  await drawn(page);
  assert.notEqual((await kit(page)).title, "Kept over a breakdown", "it is left alone");
  assert.deepEqual(workOf(await kept(page)), workOf(before), "and it is still there");

  await page.reload();
  await drawn(page);
  assert.equal((await kit(page)).title, "Kept over a breakdown");
  assert.match(await notice(page).textContent(), /one record could not be read/);
});

visit("starting anew asks twice before it throws anything away", { script: breakable }, async ({ page }) => {
  await work(page);
  const before = await kept(page);
  await again(page, "no observer");
  await verb(page, "Start anew").click();
  const sure = verb(page, "Really throw all of it away?");
  await sure.waitFor();
  assert.deepEqual(await kept(page), before, "one press throws nothing away");
  await mend(page);
  await sure.click();
  await page.waitForSelector("html[data-whole=true]", { state: "attached" });
  assert.notEqual((await kit(page)).title, "Kept over a breakdown");
  assert.ok(!("washpath/record/0123456789ab" in (await kept(page))), "a first visit");
});

visit("a core that does not load is said, and what is kept stays", { script: breakable }, async ({ page }) => {
  await work(page);
  const before = await kept(page);
  await again(page, "no core");
  await notice(page).getByText("Washpath could not start").waitFor();
  assert.match(await notice(page).textContent(), /no room for it/);
  assert.deepEqual(await kept(page), before);
  await again(page, "");
  await drawn(page);
  assert.equal((await kit(page)).title, "Kept over a breakdown");
});
