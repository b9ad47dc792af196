// Stands by when something breaks: nothing is lost, and it is said plainly.

/** @import { Keeping, Read } from "./state/types.js" */

import { button, notice } from "./page/dom.js";
import { save } from "./page/save.js";
import { erase, eraseEverything, eraseOld, everything, oldTexts } from "./state/device.js";
import * as words from "./words/start.js";

/** Asks the next start to leave alone what is kept. */
const WITHOUT = "washpath without";

/** Whether this start is to leave alone what is kept; asked once. */
export function isWithout() {
  try {
    const isAsked = sessionStorage.getItem(WITHOUT) !== null;
    sessionStorage.removeItem(WITHOUT);
    return isAsked;
  } catch {
    return false;
  }
}

function startWithout() {
  try {
    sessionStorage.setItem(WITHOUT, "1");
  } finally {
    location.reload();
  }
}

const saveEverything = () => save(everything(), "washpath-everything.json", "application/json");

/** @param {HTMLElement} verb */
function startAnew(verb) {
  if (verb.dataset.sure) {
    eraseEverything();
    location.reload();
  }
  verb.dataset.sure = "yes";
  verb.textContent = words.reallyAnew;
}

/**
 * When nothing can be shown: what was kept can be saved, left alone for this visit, or thrown away.
 *
 * @param {Error} error
 */
export function offerRescue(error) {
  const anew = button(words.startAnew, () => startAnew(anew));
  notice(words.noStartWithKept(error.message), {
    verbs: [button(words.saveEverything, saveEverything), button(words.startWithout, startWithout), anew],
  });
}

/**
 * Says which parts of what was kept could not be read, and hands them out. They stay where they are until they are thrown away.
 *
 * @param {Read["faults"]} faults
 * @param {Keeping} keeping
 */
export function tellFaults(faults, keeping) {
  /** @param {string} kind */
  const count = (kind) => faults.filter(({ key }) => key.split(/[/ ]/)[0] === kind).length;
  const counts = { kit: count("kit"), own: count("own"), record: count("record") };
  const text = faults.map(({ key, text, why }) => `${key}\n${why}\n${text}\n`).join("\n");
  const saved = () => save(text, "washpath-unreadable.txt", "text/plain");
  const dropped = () => {
    erase(faults.map(({ key }) => key).filter((key) => key.includes("/")));
    // Of what a former version kept goes what cannot be read when all else of it is kept anew.
    if (oldTexts().length && keeping.writeAll()) eraseOld();
  };
  notice(words.unread(counts), {
    actions: [
      [words.saveUnread, saved],
      [words.throwAway, dropped],
    ],
  });
}

/** When the core breaks, every later call would: the page says so and starts again from what is kept. */
export function attachRescue() {
  /** @param {unknown} error */
  const broken = (error) => {
    if (!(error instanceof WebAssembly.RuntimeError)) return;
    notice(words.broken, { actions: [[words.startAgain, () => location.reload()]] });
  };
  addEventListener("error", ({ error }) => broken(error));
  addEventListener("unhandledrejection", ({ reason }) => broken(reason));
}
