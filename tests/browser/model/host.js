// Serves the page's sources and the core to a browser without any network, each module perhaps with a fault put in.

import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../../../", import.meta.url));

/** An address that is never asked: every request is answered here. */
const ORIGIN = "http://127.0.0.1:9";

const TYPES = { html: "text/html", js: "text/javascript", wasm: "application/wasm" };

const FOLDERS = {
  js: `${root}www/js/`,
  pkg: `${root}target/sources/pkg/`,
  model: fileURLToPath(new URL("./", import.meta.url)),
};

/** Opens the model in a new page of a visitor. `mutant` is `{file, find, replace}`: a fault put into one of the page's modules. */
export async function openModel(visitor, mutant = null) {
  const page = await visitor.newPage();
  await page.route("**/*", async (route) => {
    const { pathname } = new URL(route.request().url());
    if (pathname === "/")
      return route.fulfill({ contentType: "text/html", body: "<!doctype html><title>model</title><body>" });
    const [folder, ...rest] = pathname === "/tab.html" ? ["model", "tab.html"] : pathname.slice(1).split("/");
    const file = `${FOLDERS[folder]}${rest.join("/")}`;
    if (!FOLDERS[folder] || !existsSync(file)) return route.fulfill({ status: 404, body: "" });
    let body = await readFile(file);
    if (mutant && pathname === `/js/state/${mutant.file}`) {
      const text = body.toString();
      if (!text.includes(mutant.find)) throw new Error(`${mutant.file} no longer holds ${mutant.find}`);
      body = text.replace(mutant.find, () => mutant.replace);
    }
    return route.fulfill({ contentType: TYPES[file.split(".").at(-1)], body });
  });
  await page.goto(`${ORIGIN}/`);
  /** A verb of `run.js`, done in the page. */
  const verb =
    (name) =>
    (...words) =>
      page.evaluate(async ([name, words]) => (await import("/model/run.js"))[name](...words), [name, words]);
  return { page, play: verb("play"), playFailing: verb("playFailing") };
}
