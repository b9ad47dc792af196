// Starts the page: core, state, views.

import { attachAbout } from "./about.js";
import { createAdviser, seenOn } from "./adviser.js";
import { attachChoosing } from "./choosing.js";
import { ready } from "./core.js";
import { attachDarks } from "./darks.js";
import { DEMO_ENDS, DEMO_LOAD, demoKit } from "./demo.js";
import { byId, notice } from "./dom.js";
import { paintEnd, readEnd } from "./end.js";
import { attachEnds, choosePaint, createChoose } from "./ends.js";
import { attachHistory } from "./history.js";
import { attachKits } from "./kits.js";
import { attachMix } from "./mix.js";
import { attachOffline } from "./offline.js";
import { attachOwned } from "./owned.js";
import { attachPhoto } from "./photo.js";
import { attachPlace } from "./place.js";
import { createPaperDialog } from "./paper.js";
import { attachPartners } from "./partners.js";
import { attachPuddles } from "./puddles.js";
import { attachRecipes } from "./recipes.js";
import { attachNext, attachReport } from "./report.js";
import { attachGuest, attachShare } from "./share.js";
import { attachSheet } from "./sheet.js";
import { attachShelf, createShelf } from "./shelf.js";
import { keep, restore } from "./storage.js";
import { createStore } from "./store.js";
import { attachSwitch, attachTabs } from "./tabs.js";
import { attachStudy } from "./study.js";
import { attachTarget } from "./target.js";
import { attachTin } from "./tin.js";
import { LIGHTS, attachView, createOutlines } from "./view.js";
import { attachWheel } from "./wheel.js";

start().catch((error) => notice(`Washpath could not start: ${error.message}. It needs a browser of 2023 or later.`));

async function start() {
  const core = await ready();
  const shelf = createShelf(core.paints());
  const store = createStore(firstState(core, shelf));
  const choose = createChoose(store, shelf);
  const ask = createAdviser();
  const choosePan = choosePaint(choose);

  store.subscribe((state, changed, before) => {
    const paper = changed.has("kit") && (state.kit.stock !== before.kit.stock || state.kit.paper !== before.kit.paper);
    if (paper || changed.has("light")) store.set({ studio: studioOf(core, state.kit, state.light) });
  });
  attachHistory(store, { undo: byId("undo"), redo: byId("redo") });
  attachSurround(store);
  const tab = attachTabs(document.querySelector(".tabs"));
  const switches = Object.fromEntries([...document.querySelectorAll(".switch")].map((frame) => [frame.dataset.key, attachSwitch(frame)]));
  attachView(store);
  attachWheel(store, shelf, choose, createOutlines(store));
  attachEnds(store, shelf);
  attachMix(store, shelf);
  attachSheet(store, shelf);
  attachPuddles(store, shelf, choose);
  attachPartners(store, shelf);
  attachAbout(store, shelf);
  attachTin(store, shelf, choosePan, createPaperDialog(core));
  attachKits(store, shelf, ask);
  attachReport(store, shelf, ask, choosePan);
  attachDarks(store, shelf);
  attachNext(store, shelf, ask);
  attachOwned(store, shelf, ask);
  const chooseFor = attachChoosing(store, shelf, ask);
  const showMix = () => (tab("mix"), switches.beside("mix"));
  attachTarget(store, core);
  attachRecipes(store, shelf, ask, showMix);
  const toStudy = attachStudy(store, ask);
  const toPlace = attachPlace(store, shelf, ask, { showMix, chooseFor });
  attachPhoto(store, core, (pixels) => (toStudy(pixels), toPlace(pixels)));
  attachShelf(store, shelf, choosePan);
  attachKeeping(store, core);
  attachShare(store, core);
  attachGuest(store, shelf, core, choosePan);
  byId("help-open").addEventListener("click", () => byId("help").showModal());
  attachOffline().catch(() => {}); // Without it the page works while there is a network.
}

/** The state kept from last time as far as it can be read, else the demo. */
function firstState(core, shelf) {
  const kept = restore();
  const kit = readKit(core, kept.kit) ?? demoKit(shelf);
  const ends = Array.isArray(kept.ends) ? kept.ends.slice(0, 2).map((end) => readEnd(end, shelf)) : DEMO_ENDS.map((key) => paintEnd(shelf.find(key).number));
  const light = LIGHTS[kept.light] ? kept.light : 0;
  return {
    kit,
    others: (Array.isArray(kept.others) ? kept.others : []).map((text) => readKit(core, text)).filter(Boolean),
    owned: (Array.isArray(kept.owned) ? kept.owned : []).filter((paint) => shelf.get(paint)),
    light,
    studio: studioOf(core, kit, light),
    ends: [ends[0] ?? null, ends[1] ?? null],
    next: 0,
    laid: [0, 1, 2].includes(kept.laid) ? kept.laid : 0,
    share: between(kept.share, 0, 1, 0.5),
    load: between(kept.load, 1 / 32, 1, DEMO_LOAD),
    cursor: 0,
    cross: null,
    target: null,
    picking: false,
    showShelf: Boolean(kept.showShelf),
    ribbon: Boolean(kept.ribbon),
    reach: Boolean(kept.reach),
    pins: [],
    pinnedKit: null,
    guestKit: null,
    dim: kept.dim ?? matchMedia("(prefers-color-scheme: dark)").matches,
    editing: false,
  };
}

function studioOf(core, kit, light) {
  const { paper, wide } = seenOn(kit);
  return new core.Studio(paper, light, wide);
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

/** What is kept between visits, besides the kit itself. */
const KEPT = ["owned", "ends", "laid", "share", "load", "light", "showShelf", "ribbon", "reach", "dim"];

function attachKeeping(store, core) {
  let told = false;
  store.subscribe((state, changed) => {
    if (!changed.has("kit") && !changed.has("others") && !KEPT.some((key) => changed.has(key))) return;
    clearTimeout(attachKeeping.timer);
    attachKeeping.timer = setTimeout(() => {
      const now = store.get();
      const kept = Object.fromEntries(KEPT.map((key) => [key, now[key]]));
      if (keep({ kit: core.encode_kit(now.kit), others: now.others.map(core.encode_kit), ...kept }) || told) return;
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
