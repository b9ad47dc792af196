// Starts the page: core, state, views.

import { ready } from "./core.js";
import { DEMO_ENDS, DEMO_LOAD, demoKit } from "./demo.js";
import { byId, notice, say } from "./dom.js";
import { attachHistory } from "./history.js";
import { attachMix } from "./mix.js";
import { attachOffline } from "./offline.js";
import { attachGuest, attachShare } from "./share.js";
import { attachSheet } from "./sheet.js";
import { attachShelf, createShelf } from "./shelf.js";
import { keep, restore } from "./storage.js";
import { createStore } from "./store.js";
import { attachTabs } from "./tabs.js";
import { attachTin } from "./tin.js";
import { attachWheel } from "./wheel.js";

const DAYLIGHT = 0;

start().catch((error) => notice(`Washpath could not start: ${error.message}. It needs a browser of 2023 or later.`));

async function start() {
  const core = await ready();
  const shelf = createShelf(core.paints());
  const store = createStore(firstState(core, shelf));
  const choose = (paint) => chooseEnd(store, shelf, paint);

  store.subscribe((state, changed, before) => {
    if (changed.has("kit") && state.kit.stock !== before.kit.stock) store.set({ studio: new core.Studio(state.kit.stock, DAYLIGHT) });
  });
  attachHistory(store, { undo: byId("undo"), redo: byId("redo") });
  attachSurround(store);
  attachTabs(document.querySelector(".tabs"));
  attachWheel(store, shelf, choose);
  attachMix(store, shelf);
  attachSheet(store, shelf);
  attachTin(store, shelf, choose);
  attachShelf(store, shelf, choose);
  attachKeeping(store, core);
  attachShare(store, core);
  attachGuest(store, shelf, core, choose);
  byId("help-open").addEventListener("click", () => byId("help").showModal());
  attachOffline().catch(() => {}); // Without it the page works while there is a network.
}

/** The state kept from last time as far as it can be read, else the demo. */
function firstState(core, shelf) {
  const kept = restore();
  const kit = readKit(core, kept.kit) ?? demoKit(shelf);
  const [a, b] = Array.isArray(kept.ends) ? kept.ends : DEMO_ENDS.map((key) => shelf.find(key).number);
  return {
    kit,
    studio: new core.Studio(kit.stock, DAYLIGHT),
    ends: [a, b].map((end) => (shelf.get(end) ? end : 0)),
    next: 0,
    share: between(kept.share, 0, 1, 0.5),
    load: between(kept.load, 1 / 32, 1, DEMO_LOAD),
    cursor: 0,
    showShelf: Boolean(kept.showShelf),
    dim: kept.dim ?? matchMedia("(prefers-color-scheme: dark)").matches,
    editing: false,
  };
}

function readKit(core, text) {
  try {
    return core.decode_kit(text);
  } catch {
    return null;
  }
}

const between = (value, least, most, otherwise) =>
  typeof value === "number" && value >= least && value <= most ? value : otherwise;

/** Fills the next end; the other one is next then. A paint that is an end stays it: the other is next. */
function chooseEnd(store, shelf, paint) {
  const { ends, next } = store.get();
  if (ends.includes(paint)) return store.set({ next: 1 - ends.indexOf(paint) });
  const chosen = ends.map((end, i) => (i === next ? paint : end));
  store.set({ ends: chosen, next: 1 - next });
  say(`${shelf.get(paint).name} is ${"AB"[next]}`);
}

function attachKeeping(store, core) {
  let told = false;
  store.subscribe((state, changed) => {
    if (!["kit", "ends", "share", "load", "showShelf", "dim"].some((key) => changed.has(key))) return;
    clearTimeout(attachKeeping.timer);
    attachKeeping.timer = setTimeout(() => {
      const { kit, ends, share, load, showShelf, dim } = store.get();
      if (keep({ kit: core.encode_kit(kit), ends, share, load, showShelf, dim }) || told) return;
      told = true;
      notice("This browser does not let the page keep anything. Share your kit as a link to keep it.");
    }, 200);
  });
}

function attachSurround(store) {
  const toggle = byId("surround");
  const show = ({ dim }) => {
    document.documentElement.dataset.surround = dim ? "dim" : "light";
    toggle.setAttribute("aria-pressed", String(dim));
  };
  toggle.addEventListener("click", () => store.set({ dim: !store.get().dim }));
  store.subscribe((state, changed) => changed.has("dim") && show(state));
  show(store.get());
}
