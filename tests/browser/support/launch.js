// Opens the built page in Chromium as a person would: from a disk, or from its host.

import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { chromium } from "playwright-core";

const root = fileURLToPath(new URL("../../../", import.meta.url));

export const sizes = {
  desktop: { viewport: { width: 1440, height: 900 } },
  tablet: { viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true },
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 3 },
};

// No sandbox: in a container Chromium has no rights to make one. No network but the page's own.
export const flags = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** Starts a browser. */
export const startBrowser = () =>
  chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: flags });

/** Starts a browser; `context` takes playwright's options for a visitor, such as one of `sizes`. */
export async function launch({ size = "desktop", context = {} } = {}) {
  const browser = await startBrowser();
  const visitor = await browser.newContext({ ...sizes[size], ...context });
  return { visitor, close: () => browser.close() };
}

/** The single-file page's address. */
export function packedAddress() {
  const file = `${root}target/washpath.html`;
  assert.ok(existsSync(file), "no target/washpath.html: run `cargo run -p pkg-scripts -- pack`");
  return pathToFileURL(file).href;
}

/** Hosts target/site, or what other words of `serve` say, on a free port; answers its address and how to stop it. */
export async function host(more = []) {
  const built = process.env.PKG_SCRIPTS;
  const [program, ...words] = built ? [built] : ["cargo", "run", "-q", "-p", "pkg-scripts", "--"];
  const options = { cwd: root, stdio: ["ignore", "pipe", "inherit"] };
  const server = spawn(program, [...words, "serve", "--no-build", "--port", "0", ...more], options);
  const gone = new Promise((resolve) => server.once("exit", resolve));
  const address = new Promise((resolve) => {
    let said = "";
    // Read on after the address: a server whose output is closed cannot go on.
    server.stdout.on("data", (text) => {
      said += text;
      const found = said.match(/http:\/\/127\.0\.0\.1:\d+\//);
      if (found) resolve(found[0]);
    });
  });
  const found = await Promise.race([address, gone]);
  assert.equal(typeof found, "string", "the server stopped before it gave its address");
  const stop = async () => {
    server.kill();
    await gone;
  };
  return { address: found, stop };
}

/** Opens a page and waits for its first drawing; keeps what it asked for and complained of. */
export async function open(visitor, address) {
  const page = await visitor.newPage();
  const log = { requests: [], complaints: [] };
  page.on("request", (request) => log.requests.push(request.url()));
  page.on("console", (message) => message.type() === "error" && log.complaints.push(message.text()));
  page.on("pageerror", (error) => log.complaints.push(String(error)));
  await page.goto(address);
  await drawn(page);
  return { page, log };
}

/** Waits until the page is drawn and all its parts are there. */
export async function drawn(page) {
  await page.waitForSelector("html[data-whole=true]", { state: "attached", timeout: 20_000 });
}

/** Fails where the page asked for anything outside `own`, its own address, or complained. */
export function assertQuiet(log, own) {
  const inside = (url) => url.startsWith(own) || url.startsWith("data:") || url.startsWith("blob:");
  const foreign = log.requests.filter((url) => !inside(url));
  assert.deepEqual(foreign, [], "requests to elsewhere");
  assert.deepEqual(log.complaints, [], "errors in the console");
}

/** The packed page, open: `{page, log, close}`. */
export async function openPacked(options) {
  const { visitor, close } = await launch(options);
  try {
    return { ...(await open(visitor, packedAddress())), visitor, close };
  } catch (error) {
    await close();
    throw error;
  }
}

/** The hosted page, open: `{page, log, address, stop, close}`; `stop` ends the server alone. */
export async function openHosted(options) {
  const { address, stop } = await host();
  const { visitor, close } = await launch(options);
  const both = async () => {
    await close();
    await stop();
  };
  try {
    return { ...(await open(visitor, address)), visitor, address, stop, close: both };
  } catch (error) {
    await both();
    throw error;
  }
}
