// What the page may never do: run text as code, take text for HTML, fail without a word.

import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { test } from "node:test";
import { host, launch, openHosted, openPacked, packedAddress } from "./support/launch.js";

const scripts = new URL("../../www/js/", import.meta.url);

test("no script takes text for HTML or for code", () => {
  const risky = /innerHTML|outerHTML|insertAdjacentHTML|document\.write|createContextualFragment|\beval\(|new Function/;
  const names = readdirSync(scripts, { recursive: true }).filter((name) => name.endsWith(".js"));
  assert.ok(names.length > 40, "the scripts are looked for where they are");
  assert.deepEqual(
    names.filter((name) => risky.test(readFileSync(new URL(name, scripts), "utf8"))),
    [],
  );
});

for (const [name, openPage] of [
  ["hosted page", openHosted],
  ["one file", openPacked],
]) {
  test(`the ${name} runs no text as code`, async () => {
    const { page, close } = await openPage();
    try {
      const policy = await page.locator("meta[http-equiv=Content-Security-Policy]").getAttribute("content");
      assert.match(policy, /default-src 'none'/);
      assert.doesNotMatch(policy, /'unsafe-eval'|https?:|\*/);
      const outcome = await page.evaluate(async () => {
        // A later task: what a debugger runs at once is above the policy.
        await new Promise((resolve) => setTimeout(resolve, 10));
        try {
          return globalThis.Function("return 1")();
        } catch (error) {
          return error.name;
        }
      });
      assert.equal(outcome, "EvalError");
    } finally {
      await close();
    }
  });
}

/** What a browser without WebAssembly's vector instructions says of code that has them. */
const withoutVectors = () => {
  const refuse = async () => {
    throw new WebAssembly.CompileError("invalid opcode 0xfd");
  };
  WebAssembly.instantiate = refuse;
  WebAssembly.instantiateStreaming = refuse;
};

test("a browser that cannot run the core is told so, hosted and as one file", async () => {
  const site = await host();
  const { visitor, close } = await launch();
  try {
    await visitor.addInitScript(withoutVectors);
    for (const address of [site.address, packedAddress()]) {
      const page = await visitor.newPage();
      await page.goto(address);
      const said = page.locator("#notice");
      await said.waitFor({ timeout: 10_000 });
      assert.match(await said.textContent(), /could not start: .*needs a browser of 2023 or later/);
    }
  } finally {
    await close();
    await site.stop();
  }
});
