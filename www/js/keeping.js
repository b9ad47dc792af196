// Keeps the state while it changes, and stands by when something breaks: nothing is lost, and it is said plainly.

import { notice } from "./dom.js";
import { filmsOf, readFilms } from "./films.js";
import { MOST_OTHERS } from "./kit.js";
import { adopt, renumberedMix, settle } from "./own.js";
import { MOST_RECORDS, newOnes } from "./records.js";
import { save } from "./save.js";
import { textOf } from "./share.js";
import { keep, onOther } from "./storage.js";

/** What is kept between visits, besides the kits. */
const KEPT = ["own", "records", "held", "learned", "learning", "owned", "ticked", "ends", "laid", "share", "load", "light", "showShelf", "ribbon", "reach", "dim", "welcome"];

const REST = 200;

const REASONS = {
  denied: "This browser does not let the page keep anything. Share your kit as a link to keep it.",
  full: "This browser has no room left to keep your changes. Share your kit as a link or save it, then free some room.",
};

/** Writes the state whenever it changed and the hand rests. */
export function attachKeeping(store, core) {
  let told = null;
  let due = null;
  let theirs = null;

  function write() {
    clearTimeout(due);
    if (due === null) return;
    due = null;
    takeIn();
    const now = store.get();
    const text = (kit) => textOf(now, core, kit);
    const fault = keep({ kit: text(now.kit), others: now.others.map(text), films: filmsOf(now.own, now.films), ...Object.fromEntries(KEPT.map((key) => [key, now[key]])) });
    if (fault && fault !== told) notice(REASONS[fault]);
    told = fault;
  }

  /** Kits, own paints and records that another tab kept come in beside those here, before they are written over. */
  function takeIn() {
    if (!theirs) return;
    const other = theirs;
    theirs = null;
    const state = store.get();
    // Records bring the own paints they are of.
    const { to, added } = settle(other.own ?? [], state.own, core.first_own(), state.visiting);
    const moved = (other.records ?? []).map((record) => renumberedMix(record, to));
    const records = newOnes(moved, state.records).slice(0, MOST_RECORDS - state.records.length);
    const recorded = new Set(records.flatMap(({ parts }) => parts.map(([paint]) => paint)));
    let own = [...state.own, ...added.filter(([number]) => recorded.has(number))];
    const known = new Set([state.kit, ...state.others].map((kit) => textOf(state, core, kit)));
    const kits = [];
    for (const text of [other.kit, ...(other.others ?? [])]) {
      if (known.has(text)) continue;
      known.add(text);
      try {
        const { kit, added } = adopt(core.decode_kit(text), own, core.first_own());
        own = [...own, ...added];
        kits.push(kit);
      } catch {
        // Not a kit of this version: the other tab has it still.
      }
    }
    if (kits.length + records.length === 0) return;
    store.set({ own, films: [...state.films, ...readFilms(other.films)], others: [...state.others, ...kits].slice(0, MOST_OTHERS), records: [...state.records, ...records] });
  }

  store.subscribe((state, changed) => {
    if (!changed.has("kit") && !changed.has("others") && !KEPT.some((key) => changed.has(key))) return;
    clearTimeout(due);
    due = setTimeout(write, REST);
  });
  // A page that is put away or closed does not wait.
  addEventListener("pagehide", write);
  document.addEventListener("visibilitychange", () => document.hidden && write());

  onOther((kept) => {
    const state = store.get();
    // Looks and settings of another tab are its own affair.
    if (kept.kit === textOf(state, core, state.kit) && (kept.records ?? []).length === state.records.length) return;
    theirs = kept;
    notice("Another tab changed what is kept. What you do here is kept too: its kit then waits beside yours.", { actions: [["Show it here", () => ((theirs = null), (due = null), location.reload())]] });
  });
}

/** Says that what was kept could not be read, and hands it out. */
export function tellFault(fault) {
  notice("What this browser kept could not be read. You see the state before it, or the demo.", { actions: [["Save what was kept", () => save(fault, "washpath-unreadable.txt", "text/plain")]] });
}

/** When the core breaks, every later call would: the page says so and starts anew from what is kept. */
export function attachRescue() {
  const broken = (error) => {
    if (!(error instanceof WebAssembly.RuntimeError)) return;
    notice("Something broke inside. What you had is kept.", { actions: [["Start again", () => location.reload()]] });
  };
  addEventListener("error", ({ error }) => broken(error));
  addEventListener("unhandledrejection", ({ reason }) => broken(reason));
}
