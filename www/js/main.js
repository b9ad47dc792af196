// Starts the page: core, state, views.

import { attachAbout } from "./about.js";
import { createAdviser, seenOn } from "./adviser.js";
import { attachBrief } from "./brief.js";
import { ready } from "./core.js";
import { DEMO_ENDS, DEMO_LOAD, demoKit } from "./demo.js";
import { byId, notice } from "./dom.js";
import { keepEarly } from "./early.js";
import { paintEnd, readEnd } from "./end.js";
import { attachEnds, choosePaint, createChoose } from "./ends.js";
import { learnFilms, readFilms } from "./films.js";
import { attachHistory } from "./history.js";
import { attachKeeping, attachRescue, tellFault } from "./keeping.js";
import { attachKits, startKit } from "./kits.js";
import { attachMix } from "./mix.js";
import { adopt, attachOwnShelf, onShelf } from "./own.js";
import { createPaperDialog } from "./paper.js";
import { attachPartners } from "./partners.js";
import { attachPuddles } from "./puddles.js";
import { attachGuest, attachShare, linkText } from "./share.js";
import { attachSheet } from "./sheet.js";
import { attachShelf, createShelf } from "./shelf.js";
import { restore } from "./storage.js";
import { createStore } from "./store.js";
import { attachSwitch, attachTabs } from "./tabs.js";
import { attachTin } from "./tin.js";
import { LIGHTS, attachView, createOutlines } from "./view.js";
import { attachWelcome } from "./welcome.js";
import { attachWheel } from "./wheel.js";

start().catch((error) => notice(`Washpath could not start: ${error.message}. It needs a browser of 2023 or later.`));

async function start() {
  const doEarly = keepEarly();
  // The one file comes hidden.
  const core = await ready().finally(() => (document.body.hidden = false));
  const shelf = createShelf(core.paints());
  const ask = createAdviser();
  const { kept, fault } = restore(({ kit }) => readKit(core, kit) !== null);
  const store = createStore(await firstState(core, shelf, kept, ask));
  attachRescue();
  const choose = createChoose(store, shelf);
  attachOwnShelf(store, shelf, core, ask, (kit, light) => studioOf(core, kit, light));
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
  const { drawn, drawOn } = attachWheel(store, shelf, choose, createOutlines(store));
  attachBrief(store);
  attachEnds(store, shelf);
  attachMix(store, shelf);
  attachWelcome(store, () => (startKit(store), tab("kit")));
  attachKeeping(store, core);
  if (fault !== null) tellFault(fault);
  const closeShare = attachShare(store, core, ask);
  attachGuest(store, shelf, core, ask, choosePan);
  byId("help-open").addEventListener("click", () => byId("help").showModal());
  await drawn;
  const further = import("./further.js");
  await shown();
  attachSheet(store, shelf, core);
  attachPuddles(store, shelf, choose);
  attachPartners(store, shelf);
  attachAbout(store, shelf);
  attachTin(store, shelf, choosePan, createPaperDialog(core), () => (tab("shelf"), switches.below("shelf"), byId("shelf-find").focus()));
  attachKits(store, shelf, ask);
  await shown();
  attachShelf(store, shelf, choosePan);
  const { attachFurther } = await further;
  attachFurther(store, shelf, core, ask, { choose, choosePan, closeShare, drawOn, showMix: () => (tab("mix"), switches.beside("mix")) });
  doEarly();
  document.documentElement.dataset.whole = "true";
}

/** Once what was drawn is on the screen. */
const shown = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 0)));

/** The state kept from last time as far as it can be read, else the demo. */
async function firstState(core, shelf, kept, ask) {
  const { own, learned, learning, ...swatches } = readSwatches(core, kept);
  /** A kit as it was kept; paints of its own that are not among them come along. */
  const read = (text) => {
    const found = readKit(core, text);
    if (!found) return null;
    const { kit, added } = adopt(found, own, core.first_own());
    own.push(...added);
    return kit;
  };
  const kit = read(kept.kit) ?? demoKit(shelf);
  const others = (Array.isArray(kept.others) ? kept.others : []).map(read).filter(Boolean);
  const films = await learnFilms(own.map(([, paint]) => paint), readFilms(kept.films), ask);
  fillShelf(core, shelf, onShelf({ own, visiting: [], films, learned, learning }));
  const ends = Array.isArray(kept.ends) ? kept.ends.slice(0, 2).map((end) => readEnd(end, shelf)) : DEMO_ENDS.map((key) => paintEnd(shelf.find(key).number));
  const light = LIGHTS[kept.light] ? kept.light : 0;
  return {
    kit,
    others,
    own,
    films,
    learned,
    learning,
    ...swatches,
    visiting: [],
    lesson: null,
    owned: (Array.isArray(kept.owned) ? kept.owned : []).filter((paint) => shelf.get(paint)),
    ticked: (Array.isArray(kept.ticked) ? kept.ticked : []).filter((tick) => typeof tick === "string"),
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
    welcome: kept.welcome ?? (Object.keys(kept).length === 0 && linkText(location.hash) === null),
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

/** Own paints, records and what was learned, as far as they can be read. */
function readSwatches(core, kept) {
  const list = (value) => (Array.isArray(value) ? value : []);
  const each = (values, read) => list(values).flatMap((value) => {
    try {
      return [read(value)];
    } catch {
      return [];
    }
  });
  return {
    own: each(kept.own, ([number, paint]) => [number, core.read_own(paint)]).filter(([number]) => Number.isInteger(number) && number >= core.first_own()),
    records: each(kept.records, (record) => core.read_record(record)),
    held: list(kept.held).filter(Number.isInteger),
    learned: list(kept.learned),
    learning: kept.learning !== false,
  };
}

/** Puts paints on the shelf; what was learned in a form it does not take is forgotten, as records teach it anew. */
function fillShelf(core, shelf, { own, learned }) {
  if (own.length === 0 && learned.length === 0) return;
  try {
    shelf.fill(core.set_shelf(own, learned));
  } catch {
    shelf.fill(core.set_shelf(own, []));
  }
}

const between = (value, least, most, otherwise) =>
  typeof value === "number" && value >= least && value <= most ? value : otherwise;

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
