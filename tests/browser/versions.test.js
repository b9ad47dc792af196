// Several versions hosted one after the other: each page stays with its own, and what is not the page's is left alone.

import assert from "node:assert/strict";
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { extname, join, sep } from "node:path";
import { after, test } from "node:test";
import { fileURLToPath } from "node:url";
import { drawn, startBrowser } from "./support/launch.js";
import { painted } from "./support/washpath.js";

const site = fileURLToPath(new URL("../../target/site", import.meta.url));
const TYPES = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".wasm": "application/wasm",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
};

const folder = mkdtempSync(join(tmpdir(), "washpath-"));
let browser;
after(async () => {
  await (await browser)?.close();
  rmSync(folder, { recursive: true });
});

/** Modules that say of which version they are, loaded at once, later by the page, and by its worker. */
const MARKED = { page: /^main\.js$/, later: /^further-\w+\.js$/, worker: /^worker\.js$/ };

/** A copy of the built page as another version. */
function version(name) {
  const copy = join(folder, name);
  cpSync(site, copy, { recursive: true });
  const change = (file, edit) => writeFileSync(join(copy, file), edit(readFileSync(join(copy, file), "utf8")));
  for (const [part, pattern] of Object.entries(MARKED)) {
    const file = readdirSync(join(copy, "js")).find((name) => pattern.test(name));
    change(
      `js/${file}`,
      (text) =>
        `${text}\nglobalThis.marks={...globalThis.marks,${part}:"${name}"};if(globalThis.postMessage&&!globalThis.document)new BroadcastChannel("marks").postMessage("${name}");`,
    );
  }
  change("sw.js", (text) => {
    // Eight hexadecimal digits, wherever the build writes them.
    const [, , digits] = text.match(/(["'`])([\da-f]{8})\1/);
    const built = text.replaceAll(digits, name);
    assert.ok(built !== text, "the worker's version is found");
    return built;
  });
  return copy;
}

/** Hosts a version at /paint/; beside and below it other pages. `host.serves` may be changed. */
async function hosting(first) {
  const others = { "/timetable/": "a timetable", "/paint/beta/": "a beta", "/": "a school" };
  const host = { serves: first, asked: [] };
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url, "http://here");
    host.asked.push(pathname);
    const answer = (status, type, body) =>
      response.writeHead(status, { "content-type": type, "cache-control": "no-cache" }).end(body);
    if (others[pathname]) return answer(200, "text/html", `<title>${others[pathname]}</title>`);
    const file = join(host.serves, pathname.replace(/^\/paint\//, "").replaceAll("/", sep) || "index.html");
    if (!pathname.startsWith("/paint/") || !existsSync(file) || !extname(file))
      return answer(404, "text/plain", "not found");
    answer(200, TYPES[extname(file)] ?? "text/plain", readFileSync(file));
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  host.origin = `http://127.0.0.1:${server.address().port}`;
  host.address = `${host.origin}/paint/`;
  host.stop = () => (server.closeAllConnections(), new Promise((resolve) => server.close(resolve)));
  return host;
}

/** A test with a host of version one and a visitor of its own. */
function visiting(name, act) {
  test(name, async () => {
    browser ??= startBrowser();
    const [one, two] = ["one", "two"].map((name) =>
      existsSync(join(folder, name)) ? join(folder, name) : version(name),
    );
    const host = await hosting(one);
    const visitor = await (await browser).newContext();
    const opened = async (address = host.address) => {
      const page = await visitor.newPage();
      await page.addInitScript(
        () =>
          (new BroadcastChannel("marks").onmessage = ({ data }) =>
            (globalThis.marks = { ...globalThis.marks, worker: data })),
      );
      await page.goto(address);
      await drawn(page);
      return page;
    };
    const update = async (page) => {
      host.serves = two;
      await page.evaluate(async () => void (await (await navigator.serviceWorker.ready).update()));
      await page.locator("#notice").getByText("A new version is ready").waitFor();
    };
    try {
      await act({ host, visitor, opened, update });
    } finally {
      await visitor.close();
      await host.stop();
    }
  });
}

const marks = (page) => page.evaluate(() => globalThis.marks);
const ready = (page) => page.evaluate(() => navigator.serviceWorker.ready.then(() => {}));
/** Makes the page load a module that it had no need of, and start its worker if it has none. */
async function useMore(page) {
  await page.getByRole("button", { name: "Share", exact: true }).click();
  await page.locator("#share-dialog[open]").waitFor();
  await page.keyboard.press("Escape");
}
const useNow = async (page) => {
  await Promise.all([
    page.waitForEvent("load"),
    page.locator("#notice").getByRole("button", { name: "Use it now" }).click(),
  ]);
  await drawn(page);
};

visiting(
  "a tab stays with its version while another takes the new one, until it is loaded anew",
  async ({ host, opened, update }) => {
    const first = await opened();
    await ready(first);
    const [a, b] = [await opened(), await opened()];
    await update(a);
    await useNow(a);
    assert.equal((await marks(a)).page, "two");
    await useMore(a);
    assert.equal((await marks(a)).later, "two");
    // Loaded by the worker at work now, for a page that was there before it: from the old copy, not from the host.
    host.asked.length = 0;
    for (const page of [b, first]) {
      await useMore(page);
      const { later, page: loaded } = await marks(page);
      assert.deepEqual([loaded, later], ["one", "one"]);
    }
    assert.deepEqual(
      host.asked.filter((path) => path.endsWith(".js")),
      [],
    );
    // Its own notice still does what it says.
    await useNow(b);
    await useMore(b);
    assert.deepEqual([(await marks(b)).page, (await marks(b)).later], ["two", "two"]);
    await first.reload();
    await drawn(first);
    assert.equal((await marks(first)).page, "two");
  },
);

visiting("a worker of a page is of the page's version", async ({ opened, update }) => {
  const first = await opened();
  await ready(first);
  // This page's worker is started only once the other tab has the new version.
  const late = await opened();
  const restarted = () =>
    late.evaluate(() => {
      const worker = new Worker(new URL("js/worker.js", location.href), { type: "module" });
      const at = (path) => new URL(path, location.href).href;
      return new Promise((resolve) => {
        new BroadcastChannel("marks").onmessage = ({ data }) => resolve(data);
        worker.postMessage({
          start: { glue: at("pkg/adviser.js"), advice: at("js/advice.js"), source: at("pkg/adviser_bg.wasm") },
        });
      });
    });
  assert.equal(await restarted(), "one");
  await update(first);
  await useNow(first);
  assert.equal(await restarted(), "one");
});

visiting("old copies go once no page needs them", async ({ opened, update }) => {
  const first = await opened();
  await ready(first);
  const second = await opened();
  const copies = () =>
    first.evaluate(async () =>
      (await caches.keys())
        .filter((name) => !name.endsWith(" clients"))
        .map((name) => name.split(" ").at(-1))
        .sort(),
    );
  await update(first);
  await useNow(first);
  assert.deepEqual(await copies(), ["one", "two"], "the second tab needs the old");
  await second.close();
  // A minute later, as the notes have it, and with the next page that is opened.
  await first.evaluate(async () => {
    const notes = await caches.open((await caches.keys()).find((name) => name.endsWith(" clients")));
    for (const request of await notes.keys()) {
      const note = await (await notes.match(request)).json();
      await notes.put(request, Response.json({ ...note, time: note.time - 61_000 }));
    }
  });
  await first.reload();
  // Asked from here: a wait in the page takes the promise itself for a yes.
  while ((await copies()).includes("one")) await painted(first);
  assert.deepEqual(await copies(), ["two"]);
});

visiting(
  "what is beside the page and below it is the host's, and what is missing stays missing",
  async ({ host, opened, visitor }) => {
    const page = await opened();
    await ready(page);
    await page.reload();
    await drawn(page);
    for (const [path, title] of [
      ["/timetable/", "a timetable"],
      ["/paint/beta/", "a beta"],
      ["/", "a school"],
    ]) {
      const other = await visitor.newPage();
      assert.equal((await other.goto(host.origin + path)).status(), 200);
      assert.equal(await other.title(), title);
      await other.close();
    }
    for (const path of ["nothing", "nothing/", "js/nothing.js"]) {
      const other = await visitor.newPage();
      assert.equal((await other.goto(host.address + path)).status(), 404, path);
      await other.close();
    }
    assert.equal(await page.evaluate(() => fetch("js/nothing.js").then(({ status }) => status)), 404);
    // The page by its other names, with the host gone.
    await host.stop();
    for (const name of ["", "index.html", "?fbclid=1"]) {
      const again = await opened(host.address + name);
      assert.equal((await marks(again)).page, "one");
      await again.close();
    }
  },
);
