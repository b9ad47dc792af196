// Visits: one browser for a file of tests, a new visitor with empty storage for each test.

import { after, test } from "node:test";
import { assertQuiet, host, open, packedAddress, sizes, startBrowser } from "./launch.js";

/**
 * Answers `visit(name, options, act)`: a test that opens the page and lets `act({page, log, visitor, address})` use it.
 *
 * Options: `size`, one of `sizes`; `context`, playwright's for a visitor; `hash`, the address's fragment; `script`, run
 * in the page before its own, with `given`. Every visit ends by making sure that nothing was asked of elsewhere and nothing complained.
 */
export function visits({ hosted = false } = {}) {
  let browser;
  let site;
  after(async () => {
    await (await browser)?.close();
    await (await site)?.stop();
  });

  return (name, { size = "desktop", context = {}, hash = "", script, given } = {}, act) =>
    test(name, async () => {
      browser ??= startBrowser();
      if (hosted) site ??= host();
      const address = hosted ? (await site).address : packedAddress();
      const visitor = await (await browser).newContext({ ...sizes[size], ...context });
      try {
        if (script) await visitor.addInitScript(script, given);
        const { page, log } = await open(visitor, address + hash);
        await act({ page, log, visitor, address, stop: async () => (await site).stop() });
        assertQuiet(log, address);
      } finally {
        await visitor.close();
      }
    });
}
