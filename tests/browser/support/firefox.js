// The same page in a stock Firefox, driven by WebDriver BiDi.

import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { after, test } from "node:test";
import puppeteer from "puppeteer-core";
import { assertQuiet, host, packedAddress } from "./launch.js";

const folders = (process.env.PATH ?? "").split(delimiter);
const found = ["firefox-esr", "firefox"]
  .flatMap((name) => folders.map((folder) => join(folder, name)))
  .find((file) => existsSync(file));

/** The browser's program, or undefined where there is none. */
const firefox = process.env.FIREFOX ?? found;

/** Counts in the page what its workers answer. */
function countAnswers() {
  globalThis.answered = 0;
  globalThis.Worker = class extends Worker {
    constructor(...words) {
      super(...words);
      this.addEventListener("message", () => (globalThis.answered += 1));
    }
  };
}

const drawn = (page) => page.waitForSelector("html[data-whole=true]", { timeout: 20_000 });

/** A new visitor with empty storage, at the page: `{page, log, close}`. */
export async function visitor(browser, address) {
  const context = await browser.createBrowserContext();
  const page = await context.newPage();
  await page.setViewport({ width: 1440, height: 900 });
  const log = { requests: [], complaints: [] };
  page.on("request", (request) => log.requests.push(request.url()));
  page.on("console", (message) => message.type() === "error" && log.complaints.push(message.text()));
  page.on("pageerror", (error) => log.complaints.push(String(error)));
  await page.evaluateOnNewDocument(countAnswers);
  await page.goto(address);
  await drawn(page);
  return { page, log, close: () => context.close() };
}

/** As `visits`, in Firefox; skipped where there is none. `act` gets `{page, browser, address}`. */
export function firefoxVisits({ hosted = false } = {}) {
  const skip = firefox ? false : "no firefox-esr or firefox on the PATH";
  let browser;
  let site;
  after(async () => {
    await (await browser)?.close();
    await (await site)?.stop();
  });
  return (name, act) =>
    test(name, { skip }, async () => {
      browser ??= puppeteer.launch({ browser: "firefox", executablePath: firefox, headless: true });
      if (hosted) site ??= host();
      const address = hosted ? (await site).address : packedAddress();
      const { page, log, close } = await visitor(await browser, address);
      try {
        await act({ page, browser: await browser, address });
        assertQuiet(log, address);
      } finally {
        await close();
      }
    });
}
