// The start of the page: what shows before its modules are there, and that nothing moves when they fill it.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { drawn, host, packedAddress, sizes, startBrowser } from "./support/launch.js";
import { slide } from "./support/washpath.js";

/** The design's budget of layout shift, as Chromium counts it: the share of the window that moved, times how far. */
const MOST_SHIFT = 0.02;

let browser;
let site;
before(async () => {
  [browser, site] = await Promise.all([startBrowser(), host()]);
});
after(async () => {
  await browser.close();
  await site.stop();
});

/** Counts from the first picture on. */
const countShifts = () => {
  const moved = [];
  const count = (entries) => {
    for (const { value, hadRecentInput, sources } of entries) {
      if (!hadRecentInput)
        moved.push({ value, of: sources.map(({ node }) => node?.id || node?.className || node?.nodeName) });
    }
  };
  const observer = new PerformanceObserver((list) => count(list.getEntries()));
  observer.observe({ type: "layout-shift", buffered: true });
  globalThis.shifts = async () => {
    // What was drawn last is counted with the frame after it.
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(resolve, 0))));
    count(observer.takeRecords());
    return moved;
  };
};

async function visitor(size, script = countShifts) {
  const visitor = await browser.newContext({ ...sizes[size], serviceWorkers: "block" });
  await visitor.addInitScript(script);
  return visitor;
}

async function assertStill(page, after = "the start") {
  const shifts = await page.evaluate(() => globalThis.shifts());
  const sum = shifts.reduce((sum, { value }) => sum + value, 0);
  assert.ok(sum <= MOST_SHIFT, `${sum} after ${after}: ${JSON.stringify(shifts)}`);
}

const forms = [
  ["hosted", () => site.address],
  ["as one file", packedAddress],
];

for (const [form, address] of forms) {
  for (const size of Object.keys(sizes)) {
    test(`nothing moves while the page starts, ${form}, ${size}`, async () => {
      const one = await visitor(size);
      const page = await one.newPage();
      await page.goto(address());
      await drawn(page);
      await page.evaluate(() => document.fonts.ready.then(() => {}));
      await assertStill(page);
      await one.close();
    });
  }

  test(`nor does it for somebody who was here before, ${form}`, async () => {
    const one = await visitor("desktop");
    const page = await one.newPage();
    await page.goto(address());
    await drawn(page);
    await page.getByRole("button", { name: "Got it" }).click();
    await page.getByRole("button", { name: "Dim", exact: true }).click();
    await page.waitForFunction(() => localStorage.getItem("washpath/looks")?.includes('"dim":true'));
    await page.reload();
    await drawn(page);
    assert.ok(await page.locator("#welcome").isHidden());
    await assertStill(page);
    await one.close();
  });
}

/** The first things a painter does, as the page does them without an input that Chromium would excuse a shift by. */
const FIRST_USE = {
  "along the path": async (page) => {
    for (let value = 0; value <= 1000; value += 50) await slide(page, "Ratio", value);
  },
  "from masstone to wash": async (page) => {
    for (const value of [500, 400, 300, 200, 100, 0]) await slide(page, "Load", value);
  },
  "by the wheel's verbs": (page) =>
    page.evaluate(() => {
      for (const name of ["ribbon", "pin", "reach", "wet"]) document.getElementById(`view-${name}`).click();
    }),
  "in another light": (page) =>
    page.evaluate(() => {
      const list = document.getElementById("view-light");
      list.selectedIndex = 2;
      list.dispatchEvent(new Event("change", { bubbles: true }));
    }),
};

for (const size of Object.keys(sizes)) {
  test(`little moves in first use, ${size}`, async () => {
    const one = await visitor(size);
    const page = await one.newPage();
    await page.goto(packedAddress());
    await drawn(page);
    for (const [name, use] of Object.entries(FIRST_USE)) {
      await use(page);
      await assertStill(page, name);
    }
    await one.close();
  });
}

test("letters that come late move nothing", async () => {
  const one = await visitor("phone");
  const page = await one.newPage();
  let send;
  const sent = new Promise((resolve) => (send = resolve));
  await page.route("**/*.woff2", async (route) => {
    await sent;
    await route.continue();
  });
  await page.goto(site.address, { waitUntil: "commit" });
  await drawn(page);
  send();
  await page.waitForFunction(() => document.fonts.check('16px "Source Sans 3"'));
  await assertStill(page);
  await one.close();
});

test("frame, first line and surround need no module", async () => {
  const one = await browser.newContext({ ...sizes.desktop, serviceWorkers: "block", colorScheme: "dark" });
  const page = await one.newPage();
  await page.route("**/js/*.js", (route) => route.abort());
  await page.goto(site.address);
  assert.ok(await page.getByText("This is a demo kit.").isVisible());
  assert.ok(await page.getByRole("button", { name: "All loads" }).isVisible());
  assert.equal(await page.locator("html").getAttribute("data-surround"), "dim");
  const disc = await page.evaluate(() =>
    parseFloat(getComputedStyle(document.querySelector(".stage"), "::before").width),
  );
  assert.ok(disc > 400, `a disc of ${disc} px`);
  // Somebody who comes by a link has a kit to look at, and is not shown round.
  await page.goto(`${site.address}?other#kit=AQ`);
  assert.ok(await page.getByText("This is a demo kit.").isHidden());
  await one.close();
});

test("the first load is eight answers at most", async () => {
  const one = await visitor("desktop", () => {
    new MutationObserver((_, observer) => {
      if (!document.documentElement?.dataset.ready) return;
      globalThis.readyAt = performance.now();
      observer.disconnect();
    }).observe(document, { attributes: true, childList: true, subtree: true });
  });
  const page = await one.newPage();
  await page.goto(site.address);
  await drawn(page);
  const asked = await page.evaluate(() => [
    location.href,
    ...performance
      .getEntriesByType("resource")
      .filter(({ startTime }) => startTime < globalThis.readyAt)
      .map(({ name }) => name),
  ]);
  assert.ok(asked.length <= 8, asked.join("\n"));
  await one.close();
});
