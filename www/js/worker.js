// Long questions, answered off the page's own thread. The page tells it where the core is.

import init, * as core from "../pkg/adviser.js";
import { createVerbs } from "./core/advice.js";

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
    const tell = (told) => postMessage({ id, told });
    postMessage({ id, answer: await verbs[verb](question, { tell, stopped: () => cancelled.delete(id) }) });
  } catch (error) {
    postMessage({ id, fault: error.message });
  }
});
