// Asks long questions of a worker, or of the page itself where there can be none.

import { createVerbs } from "./advice.js";
import { ready, source } from "./core.js";

/** Answers `ask(verb, question)`: a promise of the answer. The worker starts with the first question. */
export function createAdviser() {
  let asked;
  return async (verb, question) => {
    asked ??= open().catch(inPage);
    return (await asked)(verb, question);
  };
}

async function open() {
  const worker = new Worker(import.meta.resolve("./worker.js"), { type: "module" });
  const waiting = new Map();
  let last = 0;
  const failed = new Promise((resolve, reject) => worker.addEventListener("error", () => reject(new Error("no worker"))));
  failed.catch(() => {});
  worker.addEventListener("message", ({ data: { id, answer, fault } }) => {
    const { resolve, reject } = waiting.get(id);
    waiting.delete(id);
    if (fault === undefined) resolve(answer);
    else reject(new Error(fault));
  });
  const bytes = await source();
  worker.postMessage({ start: { glue: import.meta.resolve("../pkg/washpath_web.js"), advice: import.meta.resolve("./advice.js"), source: bytes instanceof URL ? bytes.href : bytes } });
  const ask = (verb, question) => new Promise((resolve, reject) => {
    last += 1;
    waiting.set(last, { resolve, reject });
    worker.postMessage({ id: last, verb, args: [question] });
  });
  let page;
  return (verb, question) => Promise.race([ask(verb, question), failed]).catch(async (error) => {
    if (error.message !== "no worker") throw error;
    page ??= await inPage();
    return page(verb, question);
  });
}

/** Without a worker the page answers itself, and stands still meanwhile. */
async function inPage() {
  const verbs = createVerbs(await ready());
  return async (verb, question) => verbs[verb](question);
}
