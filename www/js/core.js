// The core's half for the page: the one module that knows how its wasm is loaded.

import init, * as core from "../pkg/studio.js";

/** Begun with this module, while others are still on their way. The wasm is bytes where the page is one file, else at an address. */
const started = init({ module_or_path: globalThis.packedCore ?? new URL("../pkg/studio_bg.wasm", import.meta.url) }).then(() => core);
// Whoever asks hears of a failure.
started.catch(() => {});

/** The core's exports, once it has started. */
export const ready = () => started;
