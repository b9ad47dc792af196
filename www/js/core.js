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

/** The wasm: bytes where the page is one file, else its address. */
export async function source() {
  const packed = document.getElementById("core-wasm");
  if (!packed) return new URL("../pkg/washpath_web_bg.wasm", import.meta.url);
  const bytes = Uint8Array.from(atob(packed.textContent), (letter) => letter.charCodeAt(0));
  const unzipped = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(unzipped).arrayBuffer();
}
