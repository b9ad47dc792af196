// How fast the built page is, one figure a line: name, tab, milliseconds. `bench` reads it.

import { fileURLToPath } from "node:url";
import { drawn, host, packedAddress, sizes, startBrowser } from "./support/launch.js";
import { show } from "./support/show.js";
import { dabs, slide } from "./support/washpath.js";

/** The core with its glue, as the build bundled it from. */
const built = fileURLToPath(new URL("../../target/sources/pkg/", import.meta.url));

/** Visits of which the median counts. */
const VISITS = 5;
/** As slow as the design's budget has it. */
const THROTTLE = 4;

/** The value that this share of all lies below. */
const quantile = (values, share) => [...values].sort((a, b) => a - b)[Math.floor(share * values.length)];
const median = (values) => quantile(values, 0.5);
const say = (name, milliseconds) => console.log(`${name}\t${milliseconds.toFixed(3)}`);

const site = await host();
const browser = await startBrowser();
try {
  say("ready, hosted", await ready(site.address));
  say("ready, one file", await ready(packedAddress()));
  await inside(async (page) => {
    say("frame of a drag", median(await dragged(page)));
    say("kilobytes kept after 600 steps", await kept(page));
    for (const [name, time] of await page.evaluate(long)) say(name, time);
  });
  await inside(async (page) => {
    await throttle(page);
    say("frame of a drag, throttled", quantile(await dragged(page), 0.95));
  }, sizes.phone);
  await inside(async (page) => say("longest task", await longest(page)));
} finally {
  await browser.close();
  await site.stop();
}

async function inside(act, size = sizes.desktop) {
  const visitor = await browser.newContext({ ...size, serviceWorkers: "block" });
  try {
    const page = await visitor.newPage();
    await page.addInitScript(() => {
      // What a frame's callbacks take, beside what the event before them took.
      const ask = globalThis.requestAnimationFrame.bind(globalThis);
      globalThis.framed = 0;
      globalThis.requestAnimationFrame = (act) =>
        ask((now) => {
          const start = performance.now();
          act(now);
          globalThis.framed += performance.now() - start;
        });
    });
    await page.route("**/pkg/*.js", (route) => route.fulfill({ path: built + route.request().url().split("/").pop() }));
    await page.goto(site.address);
    await drawn(page);
    await act(page);
  } finally {
    await visitor.close();
  }
}

async function throttle(page) {
  const session = await page.context().newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: THROTTLE });
}

/** Milliseconds from the start of loading to the first picture that can be used, the processor throttled. */
async function ready(address) {
  const times = [];
  for (let i = 0; i < VISITS; i += 1) {
    const visitor = await browser.newContext({ ...sizes.desktop, serviceWorkers: "block" });
    const page = await visitor.newPage();
    await throttle(page);
    await page.addInitScript(() => {
      new MutationObserver((_, observer) => {
        if (!document.documentElement?.dataset.ready) return;
        globalThis.readyAt = performance.now();
        observer.disconnect();
      }).observe(document, { attributes: true, childList: true, subtree: true });
    });
    await page.goto(address);
    await drawn(page);
    times.push(await page.evaluate(() => globalThis.readyAt));
    await visitor.close();
  }
  return median(times);
}

/** What the page itself works for each of 60 steps of a drag along the path: the event with all views, and the drawing. */
function dragged(page) {
  return page.evaluate(async () => {
    const slider = [...document.querySelectorAll("input[type=range]")].find((input) =>
      /ratio/i.test(input.getAttribute("aria-label") ?? input.labels?.[0]?.textContent ?? ""),
    );
    const times = [];
    for (let step = 0; step < 60; step += 1) {
      globalThis.framed = 0;
      const start = performance.now();
      slider.value = String(Number(slider.min) + ((Number(slider.max) - Number(slider.min)) * (step + 1)) / 62);
      slider.dispatchEvent(new Event("input", { bubbles: true }));
      const spent = performance.now() - start;
      await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 0)));
      times.push(spent + globalThis.framed);
    }
    return times;
  });
}

/** Kilobytes of objects that 600 steps of a drag leave behind, once what can go is gone; as many went before. */
async function kept(page) {
  const session = await page.context().newCDPSession(page);
  const used = async () => {
    await session.send("HeapProfiler.collectGarbage");
    return (await session.send("Runtime.getHeapUsage")).usedSize;
  };
  const steps = async () => {
    for (let i = 0; i < 10; i += 1) await dragged(page);
  };
  await steps();
  const before = await used();
  await steps();
  return ((await used()) - before) / 1024;
}

/** What a painter does in an hour, once each. */
function ordinary(page, spots) {
  return [
    () => page.mouse.click(spots[0].x, spots[0].y),
    () => page.mouse.click(spots[6].x, spots[6].y),
    () => slide(page, "Ratio", 20),
    () => slide(page, "Load", 10),
    () => page.getByLabel("Find a paint").first().fill("sienna"),
    () => page.getByLabel("Find a paint").first().fill(""),
    ...["Report", "Match", "Swatches", "Mix"].map((name) => () => show(page, name)),
    ...["Share", "Print"].flatMap((name) => [
      () =>
        page
          .getByRole("button", { name: new RegExp(`^${name}`) })
          .first()
          .click(),
      () => page.keyboard.press("Escape"),
    ]),
    () => page.getByLabel("Light", { exact: true }).selectOption({ index: 2 }),
    () => page.keyboard.press("Control+z"),
    () => page.getByRole("button", { name: /^Wet/ }).click(),
  ];
}

/** Milliseconds of the page's longest task while it is used. */
async function longest(page) {
  const spots = Object.values(await dabs(page));
  await browser.startTracing(page, { categories: ["disabled-by-default-devtools.timeline"] });
  for (const act of ordinary(page, spots)) {
    await act();
    // The answer of the worker, and what waits until the hand rests.
    await page.waitForTimeout(700);
  }
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString());
  const of = ({ pid, tid }) => `${pid} ${tid}`;
  const main = (event) => event.name === "thread_name" && event.args.name === "CrRendererMain";
  const mains = new Set(traceEvents.filter(main).map(of));
  const tasks = traceEvents.filter((event) => event.name === "RunTask" && mains.has(of(event)));
  return Math.max(...tasks.map((task) => task.dur ?? 0)) / 1000;
}

/** The worker's half of the core, asked in the page: the same questions as the core's own example of its speed. */
async function long() {
  const core = await import(new URL("./pkg/adviser.js", location.href).href);
  await core.default({ module_or_path: new URL("./pkg/adviser_bg.wasm", location.href) });
  const adviser = new core.Adviser({ stock: 0, own: null }, false);
  const all = core.paints().map(({ number }) => number);
  const kit = Uint16Array.from(all.filter((_, i) => i % 10 === 0).slice(0, 15));
  const timed = (act) => {
    const times = Array.from({ length: 5 }, () => {
      const start = performance.now();
      act();
      return performance.now() - start;
    });
    return Math.min(...times);
  };
  const target = (i) => Float32Array.of(45 + i, -12, 10);
  adviser.report(kit);
  let asked = 0;
  const rules = {
    mustHave: [],
    mustNot: [],
    noCadmium: false,
    noCobalt: false,
    noCaution: false,
    lightfast: 0,
    granulating: 0,
    transparent: 0,
    triad: false,
  };
  const choose = () => {
    const choosing = adviser.choose(12, Uint16Array.from(all.slice(0, 120)), null, rules);
    while (!choosing.step(1000).finished);
    choosing.free();
  };
  const studioCore = await import(new URL("./pkg/studio.js", location.href).href);
  await studioCore.default({ module_or_path: new URL("./pkg/studio_bg.wasm", location.href) });
  const studio = new studioCore.Studio({ stock: 0, own: null }, 0, false);
  const ultramarine = studioCore.paints().find(({ key }) => key === "pb29").number;
  const CALLS = 500;
  const strongest = () => {
    for (let i = 0; i < CALLS; i += 1) studio.strongest_load([[ultramarine, 1]]);
  };
  return [
    ["strongest load", timed(strongest) / CALLS],
    ["report on 15 paints", timed(() => adviser.report(kit))],
    ["recipes of 15 paints", timed(() => adviser.matches(kit, target((asked += 1))))],
    ["best 12 of 120", timed(choose)],
  ];
}
