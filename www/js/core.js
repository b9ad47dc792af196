// The core: the one module that knows how the wasm is loaded.

import init, * as core from "../pkg/washpath_web.js";

let started;

/** Starts the core once; answers its exports. */
export function ready() {
  started ??= source()
    .then((module_or_path) => init({ module_or_path }))
    .then(() => core);
  return started;
}

/** The wasm: its bytes where the page is one file, else its address. */
export const source = async () => globalThis.packedCore ?? new URL("../pkg/washpath_web_bg.wasm", import.meta.url);
