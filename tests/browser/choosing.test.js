// A kit chosen under rules: how far it is, its proof, its reasons; stopped, refused, packed.

import assert from "node:assert/strict";
import { visits } from "./support/visit.js";
import { pans } from "./support/washpath.js";

const visit = visits();
const hosted = visits({ hosted: true });

const press = (page, name) => page.getByRole("button", { name, exact: true }).click();
const outcome = (page) => page.locator("#choose-outcome");

async function open(page) {
  await press(page, "Report");
  await press(page, "Choose a kit for me");
}

/** Sets fields of the form by their names. */
const ask = (page, wishes) =>
  page.locator("#choose-form").evaluate((form, wishes) => {
    for (const [name, value] of Object.entries(wishes)) {
      const field = form.elements.namedItem(name);
      if (typeof value === "boolean") field.checked = value;
      else field.value = value;
    }
  }, wishes);

/** Chooses and waits for what comes of it. */
async function choose(page) {
  await press(page, "Choose");
  await page.locator("#choose-outcome .main, #choose-outcome .fault").waitFor({ timeout: 120_000 });
  return outcome(page).textContent();
}

for (const [where, on] of [
  ["in the single file", visit],
  ["hosted", hosted],
]) {
  on(`a kit is chosen with its proof and reasons, and packed, ${where}`, {}, async ({ page }) => {
    await open(page);
    await ask(page, { size: "5" });
    const text = await choose(page);
    assert.match(text, /^Reaches \d+\s% of real surface colours\./);
    const [, gap] = text.match(/no kit under these rules comes nearer by more than ([\d.]+) of 100/);
    assert.ok(Number(gap) < 20, `proven to ${gap} of 100`);
    assert.equal(await outcome(page).locator("li").count(), 5);
    assert.match(text, /without it \d+\.\d of 100 are lost/);
    await press(page, "Pack this kit");
    assert.equal((await pans(page)).length, 5);
    assert.ok(await page.locator("#choose-dialog").isHidden());
    const [packed, before] = await page.locator("#kits option").allTextContents();
    assert.equal(before, "North Sea harbour, October", "the kit in hand waits beside it");
    assert.ok((await page.locator("#notice").textContent()).includes(packed) && packed !== before, `said: ${packed}`);
    await page.locator("#undo").click();
    assert.equal((await pans(page)).length, 12);
    assert.equal(await page.locator("#kits option").count(), 0);
  });
}

visit("rules are kept: no caution, so many granulating, what must be in", {}, async ({ page }) => {
  await open(page);
  await ask(page, { size: "6", caution: true, granulating: "2" });
  await page.getByLabel("Must have", { exact: true }).fill("raw sienna");
  await page.getByRole("option", { name: "Raw sienna PBr7" }).click();
  assert.ok(await page.getByRole("button", { name: "Raw sienna: take off the list" }).isVisible());
  await choose(page);
  await press(page, "Pack this kit");
  const known = await page.evaluate(() =>
    [...document.querySelectorAll("#tin .pan .paint")].map((paint) => paint.title),
  );
  assert.ok(known.includes("Raw sienna PBr7"), known.join(", "));
  await page.waitForFunction(() =>
    /None of its paints calls for more than ordinary care/.test(document.getElementById("report-said").textContent),
  );
  const texture = await page.locator("#report-said li").filter({ hasText: "smooth" }).textContent();
  assert.ok(Number(texture.match(/^(\d+)/)[1]) >= 2, texture);
});

visit("few owned paints are all tried, and more paints than pans stand side by side", {}, async ({ page }) => {
  for (const name of [
    "Ultramarine blue, PB29",
    "Pyrrole scarlet, PR255",
    "Benzimidazolone yellow H3G, PY154",
    "Quinacridone rose, PV19",
    "Burnt sienna, PBr7",
  ]) {
    await page.getByRole("button", { name: `Own ${name}`, exact: true }).click();
  }
  await press(page, "New");
  await page.getByLabel("Tin holds").fill("3");
  await page.getByLabel("Tin holds").press("Enter");
  await open(page);
  await ask(page, { size: "4", from: "owned", lightfast: "0" });
  assert.match(await choose(page), /all were tried/);
  await press(page, "Pack this kit");
  const packed = await pans(page);
  assert.equal(packed.length, 3);
  assert.equal(packed.filter((pan) => pan.includes("+")).length, 1);
});

visit("what cannot be kept is said, and nothing changes", {}, async ({ page }) => {
  await open(page);
  await ask(page, { size: "3", granulating: "9" });
  assert.match(await choose(page), /granulating/);
  await press(page, "Close");
  assert.equal((await pans(page)).length, 12);
});

visit("a choice under way is stopped, and others may be asked meanwhile", {}, async ({ page }) => {
  await open(page);
  await ask(page, { size: "12" });
  await press(page, "Choose");
  await press(page, "Stop");
  await page.waitForFunction(() => document.getElementById("choose-outcome").textContent.includes("Stopped"));
  await ask(page, { size: "2", triad: false });
  assert.match(await choose(page), /Reaches/);
});
