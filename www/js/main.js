// Starts the page: core, state, views.

/** @import { Core, Read, State, Store, Tell } from "./state/types.js" */

import { createAdviser } from "./core/adviser.js";
import { ready } from "./core/core.js";
import { createShelf } from "./core/shelf.js";
import { attachHistory } from "./history-keys.js";
import { attachWelcome } from "./kit/welcome.js";
import { attachBrief } from "./mix/brief.js";
import { attachEnds, choosePaint, createChoose } from "./mix/end-panel.js";
import { attachMix } from "./mix/mix.js";
import { all, byId, endNotice, first, notice, say } from "./page/dom.js";
import { keepEarly } from "./page/early.js";
import { breath, inTurn } from "./page/rest.js";
import { attachSwitch, attachTabs } from "./page/tabs.js";
import { attachRescue, isWithout, offerRescue, tellFaults } from "./rescue.js";
import { attachGuest } from "./send/guest.js";
import { attachShare } from "./send/send-button.js";
import { startKit } from "./state/collection.js";
import { linkText } from "./state/link-text.js";
import { openState } from "./state/open.js";
import { attachView, createOutlines } from "./wheel/view.js";
import { attachWheel } from "./wheel/wheel.js";
import { sentence } from "./words/form.js";
import * as words from "./words/start.js";

const root = document.documentElement;

start();

async function start() {
  const early = keepEarly();
  try {
    const core = await ready();
    await open(core, early).catch(offerRescue);
  } catch (error) {
    notice(words.noStart(error.message));
  }
}

/**
 * @param {Core} core
 * @param {ReturnType<typeof keepEarly>} what
 */
async function open(core, { doSoon, doLater }) {
  const shelf = createShelf(core.paints());
  await breath();
  const ask = createAdviser();
  const { store, context, read, keeping } = await openState(core, shelf, ask, {
    isBare: isWithout(),
    looks: firstLooks,
    refused: (error) => notice(sentence(error.message), { seconds: 10 }),
    tell,
  });
  if (read.faults.length) tellFaults(read.faults, keeping);
  attachRescue();
  const choose = createChoose(store, shelf);
  const choosePan = choosePaint(choose);
  attachHistory(store);
  attachPaper(store);
  attachSurround(store);
  const tab = attachTabs(first(document, ".tabs"));
  const switches = Object.fromEntries(
    all(document, ".switch").map((frame) => [frame.dataset.key, attachSwitch(frame)]),
  );
  attachWelcome(store, () => store.set((state) => startKit(state, shelf)) && tab("kit"));
  attachView(store);
  const { drawn, drawOn } = attachWheel(store, shelf, choose, createOutlines(store));
  await drawn;
  let closeShare = () => {};
  await inTurn([
    () => {
      attachBrief(store);
      attachEnds(store, shelf);
    },
    () => attachMix(store, shelf),
    () => (closeShare = attachShare(store, core, ask)),
    () => attachGuest(store, shelf, context, choosePan),
  ]);
  store.subscribe((_, changed) => changed.has("kit") && endNotice());
  byId("help-open").addEventListener("click", () => {
    const help = byId("help", HTMLDialogElement);
    help.showModal();
    // The browser scrolls to what takes the focus, which stands at the end.
    help.scrollTop = 0;
  });
  doSoon();
  root.dataset.ready = "true";
  const { attachBelow, attachFurther } = await import("./further.js");
  const showShelf = () => {
    tab("shelf");
    switches.below("shelf");
    byId("shelf-find").focus();
  };
  await attachBelow(store, context, ask, { choose, choosePan, showShelf });
  root.dataset.filled = "true";
  await attachFurther(store, context, ask, {
    choose,
    choosePan,
    closeShare,
    drawOn,
    showMix: () => {
      tab("mix");
      switches.beside("mix");
    },
  });
  doLater();
  root.dataset.whole = "true";
}

/**
 * What a first visit shows besides what was kept.
 *
 * @param {Read} read
 */
function firstLooks({ state, isFirst }) {
  const dim = state.dim ?? matchMedia("(prefers-color-scheme: dark)").matches;
  return { dim, welcome: state.welcome ?? (isFirst && linkText(location.hash) === null) };
}

/**
 * Says what happened while keeping.
 *
 * @param {Parameters<Tell>[0]} what
 * @param {string} [name]
 */
function tell(what, name) {
  if (what === "elsewhere") return say(words.elsewhere(name));
  if (what === "beside") return notice(words.beside(name), { seconds: 12 });
  return notice(what === "full" ? words.full : words.denied);
}

/**
 * What paint lies on has the colour of the kit's paper: pans, rims of washes, the sheet.
 *
 * @param {Store} store
 */
function attachPaper(store) {
  /** @param {State} state */
  const show = ({ studio }) => document.documentElement.style.setProperty("--sheet", studio.paper());
  store.subscribe((state, changed) => changed.has("studio") && show(state));
  show(store.get());
}

/** @param {Store} store */
function attachSurround(store) {
  const toggle = byId("surround");
  /** @param {State} state */
  const show = ({ dim }) => {
    document.documentElement.dataset.surround = dim ? "dim" : "light";
    toggle.setAttribute("aria-pressed", String(dim));
  };
  toggle.addEventListener("click", () => store.set({ dim: !store.get().dim }));
  store.subscribe((state, changed) => changed.has("dim") && show(state));
  show(store.get());
}
