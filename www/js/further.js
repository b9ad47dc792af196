// The parts of the page that nobody sees at first: fetched once the first picture stands. Each is attached in a task of
// its own, so that the page answers in between.

import { attachAbout } from "./about.js";
import { attachChoosing } from "./choosing.js";
import { attachDarks } from "./darks.js";
import { attachDrop } from "./drop.js";
import { attachExports } from "./exports.js";
import { attachFiles } from "./files.js";
import { attachKits } from "./kits.js";
import { attachLesson } from "./lesson.js";
import { attachLog } from "./log.js";
import { attachMine } from "./mine.js";
import { attachOffline } from "./offline.js";
import { attachOwned } from "./owned.js";
import { createPaperDialog } from "./paper.js";
import { attachPartners } from "./partners.js";
import { attachPhoto } from "./photo.js";
import { attachPlace } from "./place.js";
import { attachPrint } from "./print.js";
import { attachPuddles } from "./puddles.js";
import { attachRecipes } from "./recipes.js";
import { attachRecord } from "./record.js";
import { attachNext, attachReport } from "./report.js";
import { inTurn } from "./rest.js";
import { attachSheet } from "./sheet.js";
import { attachShelf } from "./shelf-list.js";
import { attachStudy } from "./study.js";
import { attachTarget } from "./targeting.js";
import { attachTin } from "./tin.js";

/** Attaches what stands below the mix and the kit beside it. */
export function attachBelow(store, { core, shelf }, ask, { choose, choosePan, showShelf }) {
  return inTurn([
    () => attachSheet(store, shelf, core),
    () => attachPuddles(store, shelf, choose),
    () => attachPartners(store, shelf),
    () => attachAbout(store, shelf),
    () => attachTin(store, shelf, choosePan, createPaperDialog(core), showShelf),
    () => attachKits(store, shelf, ask),
    () => attachShelf(store, shelf, choosePan),
  ]);
}

/** Attaches matching, swatches, the report, choosing and printing. */
export function attachFurther(store, context, ask, { choose, choosePan, closeShare, drawOn, showMix }) {
  const { core, shelf } = context;
  let chooseFor;
  return inTurn([
    () => attachReport(store, shelf, ask, choosePan),
    () => attachDarks(store, shelf),
    () => attachNext(store, shelf, ask),
    () => attachOwned(store, shelf, ask),
    () => (chooseFor = attachChoosing(store, shelf, ask)),
    () => attachTarget(store, core),
    () => attachRecipes(store, shelf, ask, showMix),
    () => {
      const toStudy = attachStudy(store, ask);
      const toPlace = attachPlace(store, shelf, ask, { showMix, chooseFor });
      attachPhoto(store, core, (pixels) => (toStudy(pixels), toPlace(pixels)));
    },
    () => attachRecord(store, shelf, core, ask),
    () => {
      const plan = attachLesson(store, shelf, ask, showMix);
      for (const way of document.querySelectorAll('[data-show="swatches"]')) way.addEventListener("click", plan);
      if ([document.body.dataset.tab, document.body.dataset.beside].includes("swatches")) plan();
    },
    () => attachLog(store, shelf, core, ask, showMix),
    () => attachMine(store, context, ask, choose),
    () => attachPrint(store, core, ask),
    () => attachFiles(store, context, ask, closeShare),
    () => attachExports(store, shelf, core, drawOn),
    attachDrop,
    () => void attachOffline().catch(() => {}), // Without it the page works while there is a network.
  ]);
}
