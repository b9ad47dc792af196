// `serve --watch`: the sources as they are, and anew once one of them changed.

import assert from "node:assert/strict";
import { utimes } from "node:fs/promises";
import { after, test } from "node:test";
import { assertQuiet, drawn, host, open, sizes, startBrowser } from "./support/launch.js";

const site = await host(["--watch"]);
const browser = await startBrowser();
after(async () => {
  await browser.close();
  await site.stop();
});

test("the sources are served unbundled, and the page loads anew once one changed", async () => {
  const visitor = await browser.newContext({ ...sizes.desktop, serviceWorkers: "block" });
  const listening = visitor.waitForEvent("request", (request) => /changes\?\d/.test(request.url()));
  const { page, log } = await open(visitor, site.address);
  for (const path of ["js/main.js", "js/wheel/wheel.js", "style.css", "pkg/studio_bg.wasm"]) {
    assert.ok(log.requests.includes(site.address + path), path);
  }
  await listening;
  const loaded = page.waitForEvent("load");
  await utimes(new URL("../../www/js/words/form.js", import.meta.url), new Date(), new Date());
  await loaded;
  await drawn(page);
  assertQuiet(log, site.address);
});
