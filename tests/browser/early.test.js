// What is clicked while the rest of the page is still on its way.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { assertQuiet, drawn, host, sizes, startBrowser } from "./support/launch.js";

let browser;
let site;
before(async () => {
  [browser, site] = await Promise.all([startBrowser(), host()]);
});
after(async () => {
  await browser.close();
  await site.stop();
});

/** The hosted page, ready, while `further.js` waits until `arrive` is called. */
async function waiting(act) {
  const visitor = await browser.newContext({ ...sizes.desktop, serviceWorkers: "block", acceptDownloads: true });
  try {
    const page = await visitor.newPage();
    const log = { requests: [], complaints: [] };
    page.on("request", (request) => log.requests.push(request.url()));
    page.on("console", (message) => message.type() === "error" && log.complaints.push(message.text()));
    page.on("pageerror", (error) => log.complaints.push(String(error)));
    let send;
    const sent = new Promise((resolve) => (send = resolve));
    await page.route("**/js/further-*.js", async (route) => {
      await sent;
      await route.continue();
    });
    await page.goto(site.address);
    await page.waitForSelector("html[data-ready=true]", { state: "attached" });
    const arrive = async () => {
      send();
      await drawn(page);
    };
    await act(page, arrive);
    assertQuiet(log, site.address);
  } finally {
    await visitor.close();
  }
}

test("Print, clicked before its part is there, opens once it is", () =>
  waiting(async (page, arrive) => {
    await page.locator("#print").click();
    await page.locator("#print").click();
    assert.equal(await page.locator("dialog[open]").count(), 0, "nobody hears of it yet");
    await arrive();
    await page.locator("#print-proof svg").first().waitFor();
    await page.locator("#print-close").click();
    assert.equal(await page.locator("dialog[open]").count(), 0, "opened once");
    await page.locator("#print").click();
    assert.equal(await page.locator("#print-dialog[open]").count(), 1);
  }));

test("a file asked for early is saved once", () =>
  waiting(async (page, arrive) => {
    const saved = [];
    page.on("download", (download) => saved.push(download.suggestedFilename()));
    await page.locator("#share").click();
    await page.getByRole("button", { name: "File", exact: true }).click();
    await page.locator("#file-kit").click();
    await page.locator("#file-kit").click();
    await arrive();
    await page.locator("#file-all").click();
    while (saved.length < 2) await page.waitForEvent("download");
    assert.equal(saved.filter((name) => name.endsWith(".json")).length, 2, String(saved));
    assert.equal(saved.filter((name) => name.startsWith("washpath-")).length, 1, String(saved));
  }));

test("a choice beside the wheel that is heard at once is done once", () =>
  waiting(async (page, arrive) => {
    await page.locator("#surround").click();
    const dim = () => page.locator("html").getAttribute("data-surround");
    const seen = await dim();
    await page.getByRole("button", { name: "Match", exact: true }).first().click();
    await arrive();
    assert.equal(await dim(), seen);
    assert.equal(await page.locator("body").getAttribute("data-beside"), "match");
    await page.locator("#target input").first().waitFor();
  }));

test("Swatches, looked at early, has its plan", () =>
  waiting(async (page, arrive) => {
    await page.getByRole("button", { name: "Swatches", exact: true }).first().click();
    await arrive();
    await page.locator("#plan .plan li").first().waitFor();
  }));

test("what is gone by then is not clicked", () =>
  waiting(async (page, arrive) => {
    await page.locator("#print").click();
    await page.evaluate(() => {
      const gone = document.getElementById("print");
      gone.replaceWith(gone.cloneNode(true));
    });
    await arrive();
    assert.equal(await page.locator("dialog[open]").count(), 0);
  }));
