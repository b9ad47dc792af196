// On paper: the page itself without what only a screen can do, and sheets of their own to paint on.

import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { assertAccessible } from "./support/axe.js";
import { controls, overflow } from "./support/layout.js";
import { linkText } from "./support/link.js";
import { visits } from "./support/visit.js";
import { hostAt, sharedLink } from "./support/washpath.js";

const visit = visits();

visit("printing leaves out what only a screen can do", {}, async ({ page }) => {
  await page.getByRole("button", { name: "Edit pans" }).click();
  await page.emulateMedia({ media: "print" });
  for (const gone of [
    ".bar .verbs",
    ".tabs",
    "#shelf",
    ".swap",
    ".slider input >> nth=0",
    ".settings",
    ".editor",
    ".crossing button",
  ]) {
    assert.ok(await page.locator(gone).isHidden(), gone);
  }
  for (const stays of [
    "#wheel-ground",
    "#wheel-path",
    "#wheel-labels",
    "#wheel-mark",
    "#readout .wash",
    "#sheet table",
    "#tin .pans",
    ".crossing span",
  ]) {
    assert.ok(await page.locator(stays).isVisible(), stays);
  }
  const paper = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  assert.equal(paper, "rgb(255, 255, 255)");
});

for (const [name, act] of [
  ["light", async () => {}],
  ["dim", (page) => page.getByRole("button", { name: "Dim" }).click()],
]) {
  visit(`the page prints on a few sheets, in ${name} surround`, {}, async ({ page }) => {
    await act(page);
    const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
    assert.equal(pdf.subarray(0, 5).toString(), "%PDF-");
    // Chromium writes page objects uncompressed.
    const sheets = pdf.toString("latin1").match(/\/Type \/Page\b/g)?.length;
    assert.ok(sheets >= 1 && sheets <= 4, `${sheets} sheets`);
  });
}
visit("ink on paper is dark, whatever the surround", {}, async ({ page }) => {
  await page.getByRole("button", { name: "Dim" }).click();
  await page.emulateMedia({ media: "print" });
  const [ink, ground] = await page.evaluate(() => {
    const style = getComputedStyle(document.querySelector("#readout .words"));
    return [style.color, getComputedStyle(document.querySelector("#readout")).backgroundColor];
  });
  assert.equal(ink, "rgb(0, 0, 0)");
  assert.equal(ground, "rgb(255, 255, 255)");
});

const hosted = visits({ hosted: true });
const places = { "from a disk": visit, hosted };

const press = (page, name) => page.getByRole("button", { name, exact: true }).click();

const dialog = (page) => page.locator("#print-dialog");

/** A choice of the dialog by its name. */
const wish = (page, name) => dialog(page).locator(`[name="${name}"]`);

/** Opens the dialog and waits for its first sheet. */
async function toPrint(page) {
  await press(page, "Print");
  await page.locator("#print-proof svg").waitFor();
}

const choose = async (page, sheet) => {
  await wish(page, "what").selectOption({ label: sheet });
  await page.getByRole("img", { name: `Preview of ${sheet}` }).waitFor();
};

/** Saves by a button's name; answers the file's name and bytes. */
async function saved(page, name) {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    dialog(page).getByRole("button", { name, exact: true }).click(),
  ]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

/** Pages of a PDF whose objects are not compressed. */
const pagesOf = (bytes) => bytes.toString("latin1").match(/\/Type \/Page\b/g)?.length ?? 0;

for (const [where, visit] of Object.entries(places)) {
  visit(`every sheet is made and saved, ${where}`, {}, async ({ page }) => {
    await toPrint(page);
    for (const [sheet, ending] of [
      ["Mixing chart of all pairs", "chart"],
      ["Sheet of A and B", "pair"],
      ["Hue wheel", "wheel"],
      ["Tin and labels", "tin"],
      ["Swatch cards", "cards"],
    ]) {
      await choose(page, sheet);
      const count = Number((await page.locator("#print-said").textContent()).match(/(\d+)( page)?$/)[1]);
      const pdf = await saved(page, "Save PDF");
      assert.equal(pdf.name, `north-sea-harbour-october-${ending}.pdf`);
      assert.equal(pdf.bytes.subarray(0, 5).toString(), "%PDF-");
      assert.equal(pagesOf(pdf.bytes), count, sheet);
      const svg = await saved(page, "Save SVG");
      assert.match(svg.bytes.toString(), /^<svg [^>]*width="210mm" height="297mm"/);
    }
  });
}

/** Advances of the PDF's letters in thousandths of an em, by character; `crate/print/data/README.md` says how the file is laid out, the OpenType specification how its tables are found. */
function advances() {
  const at = (name) => new URL(`../../crate/print/data/${name}`, import.meta.url);
  const file = readFileSync(at("latin.ttf"));
  const records = Array.from({ length: file.readUInt16BE(4) }, (_, i) => 12 + 16 * i);
  const hmtx = file.readUInt32BE(records.find((record) => file.toString("latin1", record, record + 4) === "hmtx") + 8);
  return new Map(
    [...readFileSync(at("latin.txt"), "utf8")].map((character, i) => [
      character,
      file.readUInt16BE(hmtx + 4 * (i + 1)),
    ]),
  );
}

for (const [where, visit] of Object.entries(places)) {
  visit(`a saved SVG brings its letters, as wide as those of the PDF, ${where}`, {}, async ({ page, visitor }) => {
    await toPrint(page);
    assert.equal(await page.locator("#print-proof style").count(), 0, "the preview has the page's own");
    const { bytes } = await saved(page, "Save SVG");
    const folder = mkdtempSync(join(tmpdir(), "washpath-"));
    try {
      writeFileSync(join(folder, "sheet.svg"), bytes);
      const alone = await visitor.newPage();
      await alone.goto(pathToFileURL(join(folder, "sheet.svg")).href);
      const { faces, words } = await alone.evaluate(async () => {
        await document.fonts.ready;
        const words = [...document.querySelectorAll("text")].map((node) => [
          node.textContent,
          node.getComputedTextLength() / Number(node.getAttribute("font-size")),
        ]);
        return { faces: [...document.fonts].map(({ family, status }) => [family.replaceAll('"', ""), status]), words };
      });
      assert.deepEqual(faces, [["Source Sans 3", "loaded"]]);
      const wide = advances();
      assert.ok(words.length > 20);
      for (const [text, width] of words) {
        const wanted = [...text].reduce((sum, character) => sum + wide.get(character), 0) / 1000;
        assert.ok(Math.abs(width - wanted) < 0.01 * wanted + 0.02, `${text}: ${width} em, not ${wanted}`);
      }
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
}

visit("choices change the sheet that is looked at", {}, async ({ page }) => {
  const proof = page.locator("#print-proof svg");
  const viewBox = () => proof.getAttribute("viewBox");
  const coloured = () =>
    proof.evaluate(
      (svg) =>
        [...svg.querySelectorAll("[fill^='#']")].filter((node) => {
          const [r, g, b] = node.getAttribute("fill").match(/[0-9a-f]{2}/g);
          return r !== g || g !== b;
        }).length,
    );
  await toPrint(page);
  assert.equal(await viewBox(), "0 0 210 297");
  assert.equal(await coloured(), (14 * 15) / 2, "a colour for each pair and paint of the demo kit");
  await wish(page, "outlines").selectOption("1");
  await page.waitForFunction(() =>
    [...document.querySelectorAll("#print-proof text")].some(
      (text) => text.textContent === "PB29" && text.getAttribute("text-anchor") === "middle",
    ),
  );
  assert.equal(await coloured(), 0);
  await wish(page, "format").selectOption({ label: "Letter" });
  await wish(page, "landscape").selectOption({ label: "on its side" });
  await page.waitForFunction(
    () => document.querySelector("#print-proof svg").getAttribute("viewBox") === "0 0 279.4 215.9",
  );
  assert.ok(await wish(page, "strips").isVisible());
  await choose(page, "Tin and labels");
  assert.ok(await wish(page, "strips").isHidden());
  assert.ok(await wish(page, "half").isVisible());
});

visit("pages are turned, and the last turns no further", {}, async ({ page }) => {
  await toPrint(page);
  await choose(page, "Swatch cards");
  const said = page.locator("#print-said");
  assert.equal(await said.textContent(), "Page 1 of 2");
  assert.ok(await page.getByRole("button", { name: "Previous page" }).isDisabled());
  await page.getByRole("button", { name: "Next page" }).click();
  assert.equal(await said.textContent(), "Page 2 of 2");
  assert.ok(await page.getByRole("button", { name: "Next page" }).isDisabled());
  assert.match((await saved(page, "Save SVG")).name, /-2\.svg$/);
});

for (const [label, format, [width, height]] of [
  ["A4", "a4", [595.28, 841.89]],
  ["A5", "a5-side", [595.28, 419.53]],
  ["Letter", "letter", [612, 792]],
]) {
  visit(
    `the browser prints exact pages, ${format}`,
    { script: () => (globalThis.print = () => {}) },
    async ({ page }) => {
      await toPrint(page);
      await wish(page, "format").selectOption({ label });
      if (format.endsWith("-side")) await wish(page, "landscape").selectOption({ label: "on its side" });
      await choose(page, "Swatch cards");
      const count = Number((await page.locator("#print-said").textContent()).match(/\d+$/)[0]);
      await dialog(page).getByRole("button", { name: "Print", exact: true }).click();
      const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
      const boxes = [...pdf.toString("latin1").matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
      assert.equal(boxes.length, count, "no blank page, none lost");
      for (const [, w, h] of boxes) {
        // Chromium rounds pages to its pixels, three quarters of a point.
        assert.ok(Math.abs(w - width) < 0.8 && Math.abs(h - height) < 0.8, `${w} x ${h}`);
      }
      await page.evaluate(() => dispatchEvent(new Event("afterprint")));
      assert.equal(await page.evaluate(() => document.body.dataset.printing), undefined);
      assert.equal(await page.locator("#print-root svg").count(), 0);
    },
  );
}

visit(
  "an empty tin says that there is nothing to print",
  { hash: `#kit=${linkText({ title: "Empty", pans: [] })}` },
  async ({ page }) => {
    await press(page, "Pack the shared kit");
    await press(page, "Print");
    await page.getByText("No paint to print: pack some first.").waitFor();
    for (const verb of ["Save PDF", "Save SVG"])
      assert.ok(await dialog(page).getByRole("button", { name: verb }).isDisabled(), verb);
    // Two ends are chosen all the same: their sheet needs no tin.
    await choose(page, "Sheet of A and B");
    assert.ok(await dialog(page).getByRole("button", { name: "Save PDF" }).isEnabled());
  },
);

const noEnds = () => localStorage.setItem("washpath/looks", JSON.stringify({ ends: [] }));
visit("without a pair its sheet says what is missing", { script: noEnds }, async ({ page }) => {
  await toPrint(page);
  await wish(page, "what").selectOption("pair");
  await page.getByText("Choose two ends, A and B, first.").waitFor();
  assert.ok(await dialog(page).getByRole("button", { name: "Save PDF" }).isDisabled());
});

visit(
  "a hostile title is only text",
  { hash: `#kit=${linkText({ title: "<img src=x onerror=alert(1)>", pans: [[1]] })}` },
  async ({ page }) => {
    await press(page, "Pack the shared kit");
    await toPrint(page);
    const [texts, images] = await page
      .locator("#print-proof")
      .evaluate((proof) => [proof.textContent, proof.querySelectorAll("img, image, script").length]);
    assert.ok(texts.includes("<img src=x onerror=alert(1)>"));
    assert.equal(images, 0);
  },
);

visit("the dialog works by keys alone", {}, async ({ page }) => {
  await page.locator("#print").focus();
  await page.keyboard.press("Enter");
  await page.locator("#print-proof svg").waitFor();
  assert.equal(await page.evaluate(() => document.activeElement.name), "what");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Escape");
  assert.ok(await dialog(page).isHidden());
  assert.equal(await page.evaluate(() => document.activeElement.id), "print");
});

for (const size of ["desktop", "tablet", "phone"]) {
  visit(`the dialog fits and is accessible, ${size}`, { size }, async ({ page }) => {
    await toPrint(page);
    await choose(page, "Tin and labels");
    assert.ok((await overflow(page, page.viewportSize().width)) <= 0);
    const hidden = (await controls(page)).filter(
      ({ covered, height }) => covered || (size !== "desktop" && height < 44),
    );
    assert.deepEqual(
      hidden.map(({ name, covered, height }) => `${name}: ${covered ?? `${height} px high`}`),
      [],
    );
    await assertAccessible(page);
  });
}

for (const [where, visit] of Object.entries(places)) {
  visit(`the link's QR code is shown, ${where}`, {}, async ({ page }) => {
    await press(page, "Share");
    if (where === "from a disk") await hostAt(page, "https://school.example/");
    const code = page.getByRole("img", { name: "QR code of the link" });
    await code.waitFor();
    const { src, complete, width } = await code.evaluate((image) =>
      image.decode().then(() => ({ src: image.src, complete: image.complete, width: image.clientWidth })),
    );
    assert.match(src, /^data:image\/svg\+xml,/);
    assert.ok(complete && width >= 120);
  });
}

visit(
  "where a browser can send, the link is sent by it",
  {
    script: () => {
      globalThis.sent = [];
      navigator.share = async (what) => void globalThis.sent.push(what);
    },
  },
  async ({ page }) => {
    await press(page, "Share");
    await hostAt(page, "https://school.example/");
    await press(page, "Send");
    const link = await sharedLink(page);
    assert.deepEqual(await page.evaluate(() => globalThis.sent), [{ title: "North Sea harbour, October", url: link }]);
  },
);
