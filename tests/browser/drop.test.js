// Files dropped on the page: opened where their kind is, and the page stays.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { PNG } from "pngjs";
import { visits } from "./support/visit.js";

const visit = visits();

/** Drops files on what stands at a selector, as a browser would tell the page. Answers whether the page kept it to itself. */
const drop = (page, selector, ...files) =>
  page.evaluate(
    ([selector, files]) => {
      const dataTransfer = new DataTransfer();
      for (const { name, type, bytes } of files)
        dataTransfer.items.add(new File([Uint8Array.from(bytes)], name, { type }));
      const on = document.querySelector(selector);
      const tell = (kind) => !on.dispatchEvent(new DragEvent(kind, { bubbles: true, cancelable: true, dataTransfer }));
      return tell("dragover") && tell("drop");
    },
    [selector, files],
  );

const picture = () => ({
  name: "quay.png",
  type: "image/png",
  bytes: [...PNG.sync.write(new PNG({ width: 9, height: 6 }))],
});
const text = (name, words, type = "") => ({ name, type, bytes: [...Buffer.from(words)] });
const log = "date,recipe,load,L,a,b,paper,note\n2026-10-03,1 pb29,0.5,40,4,-30,,\n";
const meter =
  "CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\n1 48 2 4\nEND_DATA\n";
const kit = readFileSync(new URL("../reference/kit_file_v1.json", import.meta.url), "utf8");
const notice = (page) => page.locator("#notice").textContent();

for (const size of ["desktop", "phone"]) {
  visit(`each kind of file opens where it belongs, ${size}`, { size }, async ({ page, address }) => {
    assert.ok(await drop(page, "header", picture()));
    await page.locator("#photo .picture").waitFor();
    assert.ok(await page.locator("#match").isVisible());
    assert.ok(await drop(page, "#match", text("log.csv", log, "text/csv")));
    await page.locator("#log tbody tr").waitFor();
    assert.ok(await page.locator("#swatches").isVisible());
    assert.ok(await drop(page, "body", text("reading.txt", meter, "text/plain")));
    await page.waitForFunction(() => document.querySelector("#record .typed input").value === "lab(48 2 4)");
    assert.ok(await drop(page, "#wheel-path", text("kit.json", kit, "application/json")));
    await page.locator("#file-preview h4").getByText("In kit.json").waitFor();
    assert.ok(await page.locator("#share-by-file").isVisible());
    // Another while the dialog is open.
    assert.ok(await drop(page, "#share-dialog", text("other.json", "{}", "application/json")));
    await page.locator("#file-preview .fault").waitFor();
    assert.equal(page.url(), address);
  });
}

visit("what cannot be opened is named, and nothing changes", {}, async ({ page, address }) => {
  assert.ok(await drop(page, "main", text("notes.pdf", "%PDF-1.7", "application/pdf")));
  assert.match(await notice(page), /“notes\.pdf” cannot be opened here.*photo.*\.json.*\.csv/);
  assert.ok(await drop(page, "main", picture(), text("log.csv", log)));
  await page.locator("#photo .picture").waitFor();
  assert.match(await notice(page), /“quay\.png” is opened; the others are not/);
  assert.equal(await page.locator("#log tbody tr").count(), 0);
  assert.equal(page.url(), address);
});

visit("a dialog that waits for its answer takes no files, and keeps what was typed", {}, async ({ page }) => {
  await page.locator(".switch").getByRole("button", { name: "Swatches" }).click();
  await page.getByRole("button", { name: "New from swatches" }).click();
  await page.locator("#own-form [name=name]").fill("Quay red");
  assert.ok(await drop(page, "#own-dialog", picture()));
  assert.ok(await page.locator("#photo .picture").isHidden());
  assert.equal(await page.locator("#own-form [name=name]").inputValue(), "Quay red");
});

visit("words are dragged as ever", {}, async ({ page }) => {
  const kept = await page.evaluate(() => {
    const dataTransfer = new DataTransfer();
    dataTransfer.setData("text/plain", "sienna");
    return !document
      .getElementById("shelf-find")
      .dispatchEvent(new DragEvent("dragover", { bubbles: true, cancelable: true, dataTransfer }));
  });
  assert.equal(kept, false, "the field may take them");
});

visit(
  "a file that is dropped early is opened later",
  {
    script: ([name, bytes]) => {
      new MutationObserver((_, observer) => {
        if (!document.documentElement?.dataset.ready) return;
        observer.disconnect();
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File([Uint8Array.from(bytes)], name, { type: "image/png" }));
        globalThis.early = document.documentElement.dataset.whole === undefined;
        const told = ["dragover", "drop"].map(
          (kind) =>
            !document.body.dispatchEvent(new DragEvent(kind, { bubbles: true, cancelable: true, dataTransfer })),
        );
        globalThis.kept = told.every(Boolean);
      }).observe(document, { attributes: true, childList: true, subtree: true });
    },
    given: ["quay.png", picture().bytes],
  },
  async ({ page }) => {
    await page.locator("#photo .picture").waitFor();
    assert.deepEqual(await page.evaluate(() => [globalThis.early, globalThis.kept]), [true, true]);
  },
);
