// Swatches: recording, learning, the plan, the log and its file, own paints and their links.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { assertAccessible } from "./support/axe.js";
import { visits } from "./support/visit.js";
import { sharedLink, slide } from "./support/washpath.js";

const visit = visits();

const press = (page, name) => page.getByRole("button", { name, exact: true }).click();
const open = (page) => page.locator(".switch").getByRole("button", { name: "Swatches" }).click();
const seen = (page) => page.locator("#record .typed input[type=text]");
const rows = (page) => page.locator("#log tbody tr");
const notice = (page) => page.locator("#notice").textContent();

async function record(page, colour, note = "") {
  await seen(page).fill(colour);
  await page.locator("#record").getByLabel("Note").fill(note);
  await press(page, "Record it");
}

const csv = (text, name = "log.csv") => ({ name, mimeType: "text/csv", buffer: Buffer.from(text) });
const importLog = (page, text) => page.locator("#log-file").setInputFiles(csv(text));

visit("a swatch is recorded, judged, kept, deleted and brought back", {}, async ({ page }) => {
  await open(page);
  assert.ok(await page.getByRole("button", { name: "Record it" }).isDisabled(), "nothing is seen yet");
  await seen(page).fill("lab(36 4 -6)");
  assert.match(await page.locator("#record .compared p").textContent(), /than predicted, by \d/);
  await record(page, "lab(36 4 -6)", "second wash");
  await rows(page).first().waitFor();
  assert.match(await rows(page).first().textContent(), /burnt sienna.*strong wash.*second wash/);
  await page.locator("#lesson .figures").waitFor();
  assert.match(await page.locator("#lesson").textContent(), /Too few records/);
  await page.reload();
  await page.waitForSelector('html[data-whole="true"]');
  await open(page);
  assert.equal(await rows(page).count(), 1);
  await page.getByRole("button", { name: /Delete the record/ }).click();
  assert.equal(await rows(page).count(), 0);
  await page.locator("#undo").click();
  assert.equal(await rows(page).count(), 1);
});

const head = "date,recipe,load,L,a,b,paper,note\n";
const bytes = (...parts) => ({
  name: "log.csv",
  mimeType: "text/csv",
  buffer: Buffer.concat(parts.map((part) => Buffer.from(part))),
});
const traits = (page) => page.locator("#log tbody .traits").allTextContents();
const said = (page) => page.locator("#log [role=status]").textContent();

visit("a log whose days may be months is asked about once, and read as answered", {}, async ({ page }) => {
  await open(page);
  await importLog(page, `${head}4/10/2024,1 pb29,1,40,0,0,,\n6/10/2024,1 pb29,1,41,0,0,,\n`);
  const question = page.locator("#log").getByText("A date in this file is “4/10/2024”. Which day is that?");
  await question.waitFor();
  assert.equal(await rows(page).count(), 0, "nothing before the answer");
  assert.equal(await page.evaluate(() => document.activeElement.textContent), "Day first: 4 October 2024");
  await press(page, "Cancel");
  assert.ok(await question.isHidden());
  await importLog(page, `${head}4/10/2024,1 pb29,1,40,0,0,,\n6/10/2024,1 pb29,1,41,0,0,,\n`);
  await press(page, "Month first: 10 April 2024");
  await rows(page).nth(1).waitFor();
  assert.match((await traits(page)).join("|"), /2024-06-10.*\|.*2024-04-10/);
  // One that tells is not asked about.
  await importLog(
    page,
    `${head}5.11.2024,1 pb29,1,42,0,0,,\n4/10/2024,1 pb29,1,43,0,0,,\n13/10/2024 00:00:00,1 pb29,1,44,0,0,,\n`,
  );
  await rows(page).nth(4).waitFor();
  assert.match((await traits(page)).join("|"), /2024-10-13.*\|.*2024-10-04.*\|.*2024-11-05/);
});

visit("pigments of several paints are named in a log's faults", {}, async ({ page }) => {
  await open(page);
  await importLog(page, `${head},PBr7,1,40,0,0,,\n,PB29,1,40,0,0,,\n`);
  await rows(page).first().waitFor();
  assert.match(
    await page.locator("#log .fault li").textContent(),
    /“?"PBr7" may be any of pbr7-burnt-sienna, .*: name one/,
  );
});

visit("a log in the letters of Windows or in UTF-16 is read and said to be", {}, async ({ page }) => {
  await open(page);
  // "Château, 5 €": é is E9 in Windows-1252 and in Latin-1, € is 80 in Windows-1252 alone.
  await page.locator("#log-file").setInputFiles(bytes(`${head},1 pb29,1,40,0,0,,Ch`, [0xe2], "teau ", [0x80], "\n"));
  await rows(page).first().waitFor();
  assert.match((await traits(page))[0], /Château €$/);
  assert.match(await said(page), /1 record came in\. It is not written in UTF-8 and was read as Windows-1252/);
  const wide = Buffer.from(`\ufeff${head},1 pb29,1,41,0,0,,Étretat\n`, "utf16le");
  for (const buffer of [wide, Buffer.from(wide).swap16()]) {
    await page
      .getByRole("button", { name: /Delete the record/ })
      .first()
      .click();
    await page.locator("#log-file").setInputFiles(bytes(buffer));
    await page.waitForFunction(() => document.querySelector("#log tbody .traits")?.textContent.endsWith("Étretat"));
    assert.match(await said(page), /UTF-16/);
  }
  await importLog(page, `${head},1 pb29,1,42,0,0,,Étretat\n`);
  await rows(page).nth(1).waitFor();
  assert.doesNotMatch(await said(page), /written in/);
});

visit("what was seen belongs to its mix: another mix has nothing yet, the same has it again", {}, async ({ page }) => {
  await open(page);
  await slide(page, "Ratio", 300);
  await seen(page).fill("#707078");
  const add = page.getByRole("button", { name: "Record it" });
  assert.ok(await add.isEnabled());
  const words = await page.locator("#record .compared p").textContent();
  await slide(page, "Ratio", 700);
  assert.equal(await seen(page).inputValue(), "");
  assert.ok(await add.isDisabled());
  assert.ok(
    await page
      .locator("#record .compared .chip")
      .nth(1)
      .evaluate((chip) => chip.classList.contains("blank")),
  );
  assert.match(await page.locator("#record .seen > p").textContent(), /comes back when you return to the mix/);
  await slide(page, "Ratio", 300);
  assert.match(await seen(page).inputValue(), /^lab\(47 /);
  assert.equal(await page.locator("#record .compared p").textContent(), words);
  await press(page, "Record it");
  assert.equal(await rows(page).count(), 1);
  await slide(page, "Ratio", 700);
  await slide(page, "Ratio", 300);
  assert.equal(await seen(page).inputValue(), "", "what is recorded is done with");
  // A colour seen of one load is none of another; what is emptied by hand stays empty.
  await seen(page).fill("#707078");
  await slide(page, "Load", 300);
  assert.equal(await seen(page).inputValue(), "");
  await seen(page).fill("#a0a0a8");
  await seen(page).fill("");
  await slide(page, "Load", 200);
  await slide(page, "Load", 300);
  assert.equal(await seen(page).inputValue(), "");
});

visit("what is no colour cannot be recorded", {}, async ({ page }) => {
  await open(page);
  await seen(page).fill("lab(300 0 0)");
  assert.match(await page.locator("#record .seen > p").textContent(), /\S/);
  assert.ok(await page.getByRole("button", { name: "Record it" }).isDisabled());
});

visit("records of a stronger paint teach that it is stronger, and resetting forgets it", {}, async ({ page }) => {
  await open(page);
  // Ultramarine with burnt sienna in washes that came out far bluer than the shelf has them.
  await importLog(
    page,
    [
      "date,recipe,load,L,a,b,paper,note",
      ...[
        ["1 pb29 + 1 pbr7-burnt-sienna", "0.25", 50, 8, -38],
        ["1 pb29 + 2 pbr7-burnt-sienna", "0.25", 52, 5, -24],
        ["1 pb29 + 3 pbr7-burnt-sienna", "0.5", 40, 6, -18],
      ].map((row) => `2026-10-03,${row.join(",")},,`),
    ].join("\n"),
  );
  const row = page.locator("#lesson li", { hasText: "Ultramarine" });
  await row.waitFor();
  const times = Number((await row.textContent()).match(/([\d.]+) times as strong/)[1]);
  assert.ok(times > 1.2, `${times} times`);
  const mix = () =>
    page
      .locator("#record .compared .chip")
      .first()
      .evaluate((chip) => chip.style.getPropertyValue("--wash"));
  const taught = await mix();
  await page.getByLabel("Predict with what was learned").uncheck();
  assert.notEqual(await mix(), taught);
  await page.getByLabel("Predict with what was learned").check();
  assert.equal(await mix(), taught);
  await page.getByRole("button", { name: "Reset Ultramarine blue to the shelf" }).click();
  await page.getByRole("button", { name: "Let records teach of Ultramarine blue again" }).waitFor();
});

visit("a step of the plan sets up its mix", {}, async ({ page }) => {
  await open(page);
  await page.locator("#plan .take").first().waitFor();
  const wanted = (await page.locator("#plan .take .traits").first().textContent()).split(" · ")[0];
  await page.locator("#plan .take").first().click();
  assert.match(await page.locator("#readout").textContent(), new RegExp(wanted));
  await open(page);
  assert.match(await page.locator("#record > .parts").textContent(), new RegExp(wanted));
});

visit("the log goes out and comes in; a bad row is named, the rest stays", {}, async ({ page }) => {
  await open(page);
  await record(page, "lab(40 4 -8)", '=1+1, "quoted"');
  const [download] = await Promise.all([page.waitForEvent("download"), press(page, "Export")]);
  const text = await readFile(await download.path(), "utf8");
  assert.match(text, /^\ufeffdate,recipe,load,L,a,b,paper,note/);
  assert.match(text, /1 pb29 \+ 1 pbr7-burnt-sienna/);
  await page.getByRole("button", { name: /Delete the record/ }).click();
  await importLog(page, `${text.trimEnd()}\n2026-10-04,1 pb99,0.5,40,0,0,,\n2026-10-05,1 pb29,0.5,forty,0,0,,\n`);
  await page.locator("#log .fault").waitFor();
  assert.equal(await rows(page).count(), 1);
  assert.match(await page.locator("#log").textContent(), /1 record came in/);
  const faults = await page.locator("#log .fault li").allTextContents();
  assert.equal(faults.length, 2);
  assert.match(faults[0], /line 3: .*pb99/);
  assert.match(await rows(page).first().textContent(), /=1\+1, "quoted"/);
  // The same file again brings nothing twice.
  await importLog(page, text);
  await page.getByText(/1 known before/).waitFor();
  assert.equal(await rows(page).count(), 1);
  await importLog(page, "what is this");
  await page.getByText(/The log is as it was/).waitFor();
  assert.equal(await rows(page).count(), 1);
});

visit("a meter's file is read, by CGATS and by CSV, and refused in words", {}, async ({ page }) => {
  await open(page);
  const nm = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);
  const fields = ["SAMPLE_ID", "SAMPLE_NAME", ...nm.map((nm) => `SPECTRAL_NM_${nm}`)];
  const values = (level) => nm.map((nm) => (level + nm / 10_000).toFixed(4)).join(" ");
  // Written to the text of ISO 28178.
  const cgats = [
    "CGATS.17",
    'ORIGINATOR "test"',
    `NUMBER_OF_FIELDS ${fields.length}`,
    "BEGIN_DATA_FORMAT",
    fields.join(" "),
    "END_DATA_FORMAT",
    "NUMBER_OF_SETS 2",
    "BEGIN_DATA",
    `1 "grey wash" ${values(0.3)}`,
    `2 "light wash" ${values(0.6)}`,
    "END_DATA",
  ].join("\n");
  const put = (text, name) => page.locator("#record input[type=file]").setInputFiles(csv(text, name));
  await put(cgats, "meter.txt");
  const samples = page.locator("#record").getByLabel("Sample of the file");
  await samples.waitFor();
  assert.deepEqual(await samples.locator("option").allTextContents(), ["grey wash", "light wash"]);
  await samples.selectOption("light wash");
  assert.match(await seen(page).inputValue(), /lab\(8[0-9]/);
  await press(page, "Record it");
  assert.equal(await rows(page).count(), 1);
  await put(`name,${nm.join(",")}\nred,${nm.map(() => "250 %").join(",")}\n`, "bad.csv");
  await page.getByText(/This file could not be read/).waitFor();
});

visit("an own paint is made, packed, shared, and stands in a stranger's browser", {}, async ({ page, address }) => {
  await open(page);
  await press(page, "New from swatches");
  await press(page, "Put it on my shelf");
  const dialog = page.locator("#own-dialog");
  assert.ok(await dialog.isVisible(), "a name is wanted");
  await page.locator("#own-form [name=name]").fill("Quay red <b>");
  await press(page, "Put it on my shelf");
  assert.match(await page.locator("#own-said").textContent(), /swatch/);
  await dialog.locator(".typed input[type=text]").nth(0).fill("lab(38 52 30)");
  await dialog.locator(".typed input[type=text]").nth(1).fill("#e8a5a0");
  await press(page, "Put it on my shelf");
  await page.locator("#mine .take", { hasText: "Quay red <b>" }).waitFor();
  await page.locator("#tin").getByLabel("Tin holds").fill("14");
  await page.locator("#tin").getByLabel("Tin holds").press("Enter");
  await press(page, "Pack: Quay red <b>");
  await press(page, "Share");
  const link = await sharedLink(page);
  assert.ok(link.length < 2_000);
  const stranger = await page.context().browser().newContext();
  const other = await stranger.newPage();
  await other.goto(address + link.slice(link.indexOf("#")));
  await other.locator("#guest").waitFor();
  await press(other, "Pack the shared kit");
  await other.locator(".switch").getByRole("button", { name: "Swatches" }).click();
  assert.match(await other.locator("#mine").textContent(), /Quay red <b>/);
  assert.equal(await other.locator("#tin .pans .pan:not(.gap)").count(), 13);
  await stranger.close();
});

visit("an own paint is edited, copied, deleted with all that holds it, and brought back", {}, async ({ page }) => {
  await open(page);
  await press(page, "New from the mix at hand");
  await page.locator("#own-form [name=name]").fill("Harbour grey");
  await press(page, "Put it on my shelf");
  await press(page, "Duplicate: Harbour grey");
  await page.locator("#mine .take", { hasText: "Harbour grey 2" }).waitFor();
  await press(page, "Edit: Harbour grey 2");
  await page.locator("#own-form [name=name]").fill("harbour GREY");
  await press(page, "Put it on my shelf");
  assert.match(await page.locator("#own-said").textContent(), /already called/);
  await page.locator("#own-form [name=name]").fill("Fog");
  await press(page, "Put it on my shelf");
  await page.locator("#mine .take", { hasText: "Fog" }).click();
  await page.getByLabel("Find a paint").fill("fog");
  assert.equal(await page.locator("#shelf-list li").count(), 1);
  await press(page, "Delete: Fog");
  assert.match(await notice(page), /Fog.*is deleted/);
  assert.equal(await page.locator("#mine .own").count(), 1);
  await page.locator("#undo").click();
  assert.equal(await page.locator("#mine .own").count(), 2);
  await page.reload();
  await page.waitForSelector('html[data-whole="true"]');
  await open(page);
  assert.equal(await page.locator("#mine .own").count(), 2);
});

visit("axe-core finds nothing among swatches", {}, async ({ page }) => {
  await open(page);
  await record(page, "lab(40 4 -8)");
  await page.locator("#lesson .figures").waitFor();
  await page.locator("#plan .take").first().waitFor();
  await assertAccessible(page);
  await press(page, "New from swatches");
  await assertAccessible(page);
});

visit("swatches are used on a phone", { size: "phone" }, async ({ page }) => {
  await page.locator(".tabs").getByRole("button", { name: "Swatches" }).tap();
  await record(page, "#707078");
  assert.equal(await rows(page).count(), 1);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  assert.ok(wide <= 0, `${wide} pixels too wide`);
});

visit("a masstone lighter than its wash is asked about, and they are swapped", {}, async ({ page }) => {
  await open(page);
  await press(page, "New from swatches");
  await page.locator("#own-form [name=name]").fill("Quay red");
  await page.locator("#own-dialog .typed input[type=text]").nth(0).fill("lab(70 30 10)");
  await page.locator("#own-dialog .typed input[type=text]").nth(1).fill("lab(40 55 25)");
  await press(page, "Put it on my shelf");
  assert.match(await page.locator("#own-said").textContent(), /Are they swapped/);
  await press(page, "Swap them");
  assert.match(await page.locator("#own-dialog .typed input[type=text]").nth(0).inputValue(), /40/);
  await press(page, "Put it on my shelf");
  await page.locator("#mine").getByText("Quay red").waitFor();
});

visit("a masstone that no film shows is explained", {}, async ({ page }) => {
  await open(page);
  await press(page, "New from swatches");
  await page.locator("#own-form [name=name]").fill("Deepest black");
  await page.locator("#own-dialog .typed input[type=text]").nth(0).fill("lab(3 0 0)");
  await press(page, "Put it on my shelf");
  await page
    .locator("#notice")
    .getByText(/no dry film of paint shows/)
    .waitFor();
});

visit("a mix that is one paint alone makes no mixture, and it is said why", {}, async ({ page }) => {
  await slide(page, "Ratio", 0);
  await open(page);
  await press(page, "New from the mix at hand");
  await page
    .locator("#notice")
    .getByText(/one paint alone/)
    .waitFor();
});
