// On paper: the wheel, the mix and the kit, without what only a screen can do.

import assert from "node:assert/strict";
import { visits } from "./support/visit.js";

const visit = visits();

visit("printing leaves out what only a screen can do", {}, async ({ page }) => {
  await page.getByRole("button", { name: "Edit pans" }).click();
  await page.emulateMedia({ media: "print" });
  for (const gone of [".bar .verbs", ".tabs", "#shelf", ".swap", ".slider input >> nth=0", ".settings", ".editor", ".crossing button"]) {
    assert.ok(await page.locator(gone).isHidden(), gone);
  }
  for (const stays of ["#wheel-ground", "#wheel-path", "#readout .wash", "#sheet table", "#tin .pans", ".crossing span"]) {
    assert.ok(await page.locator(stays).isVisible(), stays);
  }
  const paper = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  assert.equal(paper, "rgb(255, 255, 255)");
});

for (const [name, act] of [["light", async () => {}], ["dim", (page) => page.getByRole("button", { name: "Dim" }).click()]]) {
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
