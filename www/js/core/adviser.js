// Asks long questions of a worker, or of the page itself where there can be none.

/** @import { Advice, Progress } from "../state/answers.js" */
/** @import { Ask, KitContent } from "../state/types.js" */
/** @typedef {(verb: string, question: object, tell: (told: Progress) => void) => { answer: Promise<any>, cancel: () => void }} Send */
/** @typedef {<Verb extends keyof Advice>(verb: Verb, question: object) => Promise<Advice[Verb]>} Asking */

import { isWide } from "../page/display.js";
import { paintsOf, paperOf } from "../state/kit.js";

/**
 * What every question tells of the page, and what it asks.
 *
 * @param {{ kit: KitContent }} what
 * @param {object} [asked]
 */
export const question = ({ kit }, asked = {}) => ({
  paper: paperOf(kit),
  wide: isWide(),
  paints: Uint16Array.from(paintsOf(kit)),
  ...asked,
});

/**
 * Answers `ask(verb, question)`: a promise of the answer. `ask.long(verb, question, tell)` answers at once `{answer, cancel}`;
 * `tell` hears how far it is. The worker starts with the first question.
 *
 * @type {() => Ask}
 */
export function createAdviser() {
  /** @type {Promise<Send> | undefined} */
  let asked;
  /** @type {Ask["long"]} */
  const long = (verb, question, tell = () => {}) => {
    asked ??= inWorker().catch(inPage);
    let cancel = () => {};
    const answer = asked.then((send) => {
      const sent = send(verb, question, tell);
      cancel = sent.cancel;
      return sent.answer;
    });
    return { answer, cancel: () => cancel() };
  };
  return Object.assign(/** @type {Asking} */ ((verb, question) => long(verb, question).answer), { long });
}

/** The core's half for long questions: compiled where the page is one file, else the address of its wasm. */
const source = async () => globalThis.packed?.core ?? new URL("./pkg/adviser_bg.wasm", document.baseURI).href;

/** A worker; from a file in memory where the page is one file, which no browser takes for a module there. */
const startWorker = async () =>
  globalThis.packed
    ? new Worker(URL.createObjectURL(await globalThis.packed.worker))
    : new Worker(new URL("./js/worker.js", document.baseURI), { type: "module" });

/** @type {() => Promise<Send>} */
async function inWorker() {
  const worker = await startWorker();
  /** @type {Map<number, { verb: string, question: object, tell: (told: Progress) => void, resolve: (answer: any) => void, reject: (error: Error) => void }>} */
  const waiting = new Map();
  let last = 0;
  /** Answers from the page itself, once the worker failed. */
  /** @type {Promise<Send> | null} */
  let page = null;
  worker.addEventListener("message", ({ data: { id, told, answer, fault } }) => {
    const asked = waiting.get(id);
    if (!asked) return;
    const { resolve, reject, tell } = asked;
    if (told !== undefined) return tell(told);
    waiting.delete(id);
    if (fault === undefined) resolve(answer);
    else reject(new Error(fault));
  });
  worker.addEventListener("error", () => {
    page ??= inPage();
    for (const [id, { verb, question, tell, resolve, reject }] of waiting) {
      waiting.delete(id);
      page.then((send) => send(verb, question, tell).answer).then(resolve, reject);
    }
  });
  worker.postMessage({ start: await source() });
  return (verb, question, tell) => {
    if (page) {
      const sent = page.then((send) => send(verb, question, tell));
      return { answer: sent.then(({ answer }) => answer), cancel: () => sent.then(({ cancel }) => cancel()) };
    }
    last += 1;
    const id = last;
    const answer = new Promise((resolve, reject) => waiting.set(id, { verb, question, tell, resolve, reject }));
    worker.postMessage({ id, verb, question });
    return { answer, cancel: () => worker.postMessage({ cancel: id }) };
  };
}

/**
 * Without a worker the page answers itself, and stands still for as long as a step takes.
 *
 * @type {() => Promise<Send>}
 */
async function inPage() {
  const [core, { createVerbs }] = await Promise.all([import("../../pkg/adviser.js"), import("./advice.js")]);
  await core.default({ module_or_path: await source() });
  const verbs = createVerbs(core);
  return (verb, question, tell) => {
    let stop = false;
    const answer = (async () => verbs[/** @type {keyof Advice} */ (verb)](question, { tell, stopped: () => stop }))();
    return { answer, cancel: () => (stop = true) };
  };
}
