// Long questions, answered off the page's own thread. The page tells it where the core is.

/** @import { Advice, Progress } from "./state/answers.js" */

import init, * as core from "../pkg/adviser.js";
import { createVerbs } from "./core/advice.js";

/** @type {Promise<ReturnType<typeof createVerbs>> | undefined} */
let started;
const cancelled = new Set();

addEventListener("message", async ({ data: { start, cancel, id, verb, question } }) => {
  if (start) {
    started = init({ module_or_path: start }).then(() => createVerbs(core));
    return;
  }
  if (cancel) return void cancelled.add(cancel);
  try {
    const verbs = await started;
    if (!verbs) return;
    /** @param {Progress} told */
    const tell = (told) => postMessage({ id, told });
    postMessage({
      id,
      answer: await verbs[/** @type {keyof Advice} */ (verb)](question, { tell, stopped: () => cancelled.delete(id) }),
    });
  } catch (error) {
    postMessage({ id, fault: error.message });
  }
});
