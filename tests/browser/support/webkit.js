// The same page in WebKit, driven by WebDriver: WebKitGTK's own small browser on a screen that nobody sees.

import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { existsSync, readdirSync } from "node:fs";
import { createServer } from "node:net";
import { delimiter, join } from "node:path";
import { after, test } from "node:test";
import { Builder, Capabilities } from "selenium-webdriver";
import { host, packedAddress } from "./launch.js";

const onPath = (name) =>
  (process.env.PATH ?? "")
    .split(delimiter)
    .map((folder) => join(folder, name))
    .find((file) => existsSync(file));

/** WebKitGTK keeps its browser beside its libraries, where no PATH leads. */
function miniBrowser() {
  if (process.env.MINI_BROWSER) return process.env.MINI_BROWSER;
  const libraries = `/usr/lib/${{ x64: "x86_64", arm64: "aarch64" }[process.arch]}-linux-gnu`;
  if (!existsSync(libraries)) return undefined;
  const folders = readdirSync(libraries)
    .filter((name) => name.startsWith("webkit"))
    .sort()
    .reverse();
  return folders.map((name) => join(libraries, name, "MiniBrowser")).find((file) => existsSync(file));
}

const [driver, screen, browser] = [onPath("WebKitWebDriver"), onPath("Xvfb"), miniBrowser()];
const missing = [
  [driver, "WebKitWebDriver"],
  [screen, "Xvfb"],
  [browser, "WebKitGTK's MiniBrowser"],
]
  .filter(([found]) => !found)
  .map(([, name]) => name);

function freePort() {
  return new Promise((resolve) => {
    const server = createServer();
    server.listen(0, "127.0.0.1", () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });
}

/** Starts a screen and answers its name and how to stop it. */
function startScreen() {
  const process = spawn(screen, ["-displayfd", "3", "-screen", "0", "1600x1000x24"], {
    stdio: ["ignore", "ignore", "ignore", "pipe"],
  });
  return new Promise((resolve, reject) => {
    process.once("error", reject);
    process.once("exit", () => reject(new Error("the screen stopped before it gave its number")));
    process.stdio[3].once("data", (text) => resolve({ name: `:${String(text).trim()}`, stop: () => process.kill() }));
  });
}

/** Starts the driver on a screen of its own: `{address, stop}`. */
async function startDriver() {
  const { name, stop } = await startScreen();
  const port = await freePort();
  const process = spawn(driver, [`--port=${port}`], {
    stdio: "ignore",
    env: { ...globalThis.process.env, DISPLAY: name },
  });
  const address = `http://127.0.0.1:${port}/`;
  for (let tries = 0; tries < 50; tries += 1) {
    if (
      await fetch(`${address}status`).then(
        ({ ok }) => ok,
        () => false,
      )
    )
      break;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return { address, stop: () => (process.kill(), stop()) };
}

/** What the page itself sees of its complaints; a driver of WebDriver's first kind hands on no console. */
const complaints = () => globalThis.complaints;
const listen = () => {
  globalThis.complaints = [];
  addEventListener("error", ({ message }) => globalThis.complaints.push(message));
  addEventListener("unhandledrejection", ({ reason }) => globalThis.complaints.push(String(reason)));
  addEventListener("securitypolicyviolation", ({ blockedURI }) => globalThis.complaints.push(`blocked: ${blockedURI}`));
};

/** The driver as a page: what `washpath.js` and the tests ask for. */
function pageOf(session) {
  const evaluate = async (act, word = null) => {
    const [answer, fault] = await session.executeAsyncScript(
      `const done = arguments[arguments.length - 1];
       Promise.resolve().then(() => (${act})(arguments[0])).then((answer) => done([answer ?? null, null]), (error) => done([null, String(error)]));`,
      word,
    );
    assert.equal(fault, null);
    return answer;
  };
  const until = (act, word) => session.wait(() => evaluate(act, word), 30_000, `never: ${act}`);
  const move = (x, y, options) => session.actions().move({ x: Math.round(x), y: Math.round(y), ...options });
  const button = (name) =>
    session.findElement({ xpath: `//button[normalize-space()="${name}" or @aria-label="${name}"]` });
  return {
    evaluate,
    until,
    press: async (name) => (await button(name)).click(),
    click: ({ x, y }) => move(x, y).click().perform(),
    drag: (from, to) =>
      move(from.x, from.y)
        .press()
        .move({ x: Math.round(to.x), y: Math.round(to.y), duration: 300 })
        .release()
        .perform(),
    type: async (selector, text) => (await session.findElement({ css: selector })).sendKeys(text),
    reload: async () => {
      assert.deepEqual(await evaluate(complaints), []);
      await session.navigate().refresh();
      await evaluate(listen);
      await until(ready);
    },
    text: (selector) => evaluate((selector) => document.querySelector(selector).textContent, selector),
  };
}

const ready = () => document.documentElement.dataset.whole === "true";

/** As `visits`, in WebKit; skipped where it is not installed. `act` gets `{page, address}`. */
export function webkitVisits({ hosted = false } = {}) {
  const skip = missing.length ? `${missing.join(", ")} not installed` : false;
  let running;
  let site;
  after(async () => {
    (await running)?.stop();
    await (await site)?.stop();
  });
  return (name, { hash = "" }, act) =>
    test(name, { skip }, async () => {
      running ??= startDriver();
      if (hosted) site ??= host();
      const address = hosted ? (await site).address : packedAddress();
      const options = {
        browserName: "MiniBrowser",
        "webkitgtk:browserOptions": { binary: browser, args: ["--automation"] },
      };
      // Every session has a storage of its own.
      const session = await new Builder()
        .usingServer((await running).address)
        .withCapabilities(new Capabilities(options))
        .build();
      try {
        await session.manage().setTimeouts({ pageLoad: 60_000, script: 30_000 });
        await session.manage().window().setRect({ x: 0, y: 0, width: 1440, height: 940 });
        const page = pageOf(session);
        await session.get(address + hash);
        await page.evaluate(listen);
        await page.until(ready);
        await act({ page, address });
        assert.deepEqual(await page.evaluate(complaints), []);
      } finally {
        await session.quit();
      }
    });
}
