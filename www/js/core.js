// The core's half for the page: the one module that knows how its wasm is loaded.

import init, * as core from "../pkg/studio.js";

let started;

/** Starts the core once; answers its exports. The wasm is bytes where the page is one file, else at an address. */
export function ready() {
  started ??= init({ module_or_path: globalThis.packedCore ?? new URL("../pkg/studio_bg.wasm", import.meta.url) }).then(() => core);
  return started;
}
