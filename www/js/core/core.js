// The core's half for the page, started with this module: it compiles while it streams.

/** @import { Core } from "../state/types.js" */

import init, * as core from "../../pkg/studio.js";

/** Where the page is one file it compiles its core by itself; else it comes after the first picture (`looks.js`). */
const source =
  globalThis.packed?.core ?? globalThis.pictured.then(() => fetch(new URL("./pkg/studio_bg.wasm", document.baseURI)));
const started = init({ module_or_path: source }).then(() => /** @type {any} */ (core));
// Whoever asks hears of a failure.
started.catch(() => {});

/**
 * The core's exports, once it has started.
 *
 * @type {() => Promise<Core>}
 */
export const ready = () => started;
