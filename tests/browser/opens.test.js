// The page opens from a disk and from its host, and from nowhere once visited.

import assert from "node:assert/strict";
import { test } from "node:test";
import { assertQuiet, drawn, open, openHosted, openPacked, packedAddress, sizes } from "./support/launch.js";

for (const size of Object.keys(sizes)) {
  test(`the single file opens from a disk, ${size}`, async () => {
    const { page, log, close } = await openPacked({ size });
    try {
      assertQuiet(log, packedAddress());
      const wide = await page.evaluate(() => {
        // Not innerWidth: a phone zooms out to what is too wide, and then says it fits.
        const { scrollWidth, clientWidth } = document.documentElement;
        return scrollWidth - clientWidth;
      });
      assert.ok(wide <= 0, `the page is ${wide} px wider than its window`);
    } finally {
      await close();
    }
  });
}

test("the single file may not ask for anything", async () => {
  const { page, close } = await openPacked();
  try {
    const asked = await page.evaluate(() => fetch("http://127.0.0.1:9/").then(() => "answered", String));
    assert.match(asked, /TypeError/);
    const policy = await page.evaluate(
      () =>
        new Promise((resolve) => {
          addEventListener("securitypolicyviolation", (event) => resolve(event.effectiveDirective));
          fetch("http://127.0.0.1:9/").catch(() => {});
        }),
    );
    assert.equal(policy, "connect-src", "it is the policy that refuses");
  } finally {
    await close();
  }
});

test("the hosted page opens, asks its host alone, and opens again without it", async () => {
  const { page, log, address, visitor, stop, close } = await openHosted();
  try {
    assertQuiet(log, address);
    // Ready means installed: every file is in the cache.
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => {}));
    await stop();
    await page.reload();
    await drawn(page);
    const again = await open(visitor, `${address}?again#fragment`);
    assertQuiet(again.log, address);
  } finally {
    await close();
  }
});

test("until it is ready the hosted page asks for the first load alone", async () => {
  const { page, close } = await openHosted({ context: { serviceWorkers: "block" } });
  try {
    await page.addInitScript(() => {
      new MutationObserver((changes, observer) => {
        if (!document.documentElement?.dataset.ready) return;
        globalThis.readyAt = performance.now();
        observer.disconnect();
      }).observe(document, { attributes: true, childList: true, subtree: true });
    });
    await page.reload();
    await drawn(page);
    const asked = await page.evaluate(() =>
      performance
        .getEntriesByType("resource")
        .filter(({ startTime }) => startTime < globalThis.readyAt)
        .map(({ name }) => name),
    );
    assert.ok(asked.some((url) => url.endsWith("pkg/studio_bg.wasm")));
    assert.deepEqual(
      asked.filter((url) => /pkg\/adviser|worker\.js|sw\.js|OFL/.test(url)),
      [],
    );
  } finally {
    await close();
  }
});

/** Ways a worker may not start: there are none, or its script cannot be had, which is told some time later. */
const workless = {
  "no worker can start": () => delete globalThis.Worker,
  "a worker fails once it was started": () => {
    const Real = globalThis.Worker;
    globalThis.Worker = class extends Real {
      constructor() {
        super("./missing.js");
        this.addEventListener("error", () => (globalThis.failed = true));
      }
    };
  },
};
for (const [how, spoil] of Object.entries(workless)) {
  test(`where ${how} the page asks its own half of the core`, async () => {
    const { page, log, address, close } = await openHosted({ context: { serviceWorkers: "block" } });
    try {
      await page.addInitScript(spoil);
      await page.reload();
      await drawn(page);
      const press = (name) => page.getByRole("button", { name, exact: true }).click();
      await press("Report");
      await page.locator("#report-said li").first().waitFor();
      assert.ok(log.requests.some((url) => url.endsWith("pkg/adviser_bg.wasm")));
      // The next question comes when the failure is known.
      if (how.includes("fails")) await page.waitForFunction(() => globalThis.failed);
      await press("Print");
      await page.locator("#print-proof svg").first().waitFor();
      log.complaints = log.complaints.filter((text) => !text.includes("404"));
      assertQuiet(log, address);
    } finally {
      await close();
    }
  });
}

for (const [form, openPage] of [
  ["hosted", openHosted],
  ["as one file", openPacked],
]) {
  test(`long questions are answered by a worker, ${form}`, async () => {
    const { page, close } = await openPage();
    try {
      const started = page.workers().length ? Promise.resolve() : page.waitForEvent("worker");
      await page.getByRole("button", { name: "Report", exact: true }).click();
      await started;
      await page.locator("#report-said li").first().waitFor();
      assert.equal(page.workers().length, 1, "it did not give up");
    } finally {
      await close();
    }
  });
}

test("a page never visited does not open without its host", async () => {
  const { visitor, address, stop, close } = await openHosted({ context: { serviceWorkers: "block" } });
  try {
    await stop();
    const page = await visitor.newPage();
    await assert.rejects(page.goto(address), /ERR_CONNECTION_REFUSED/);
  } finally {
    await close();
  }
});
