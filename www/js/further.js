// The parts of the page that nobody sees at first: fetched once the first picture stands. Each is attached in a task of
// its own, so that the page answers in between.

/** @import { DrawOn } from "./wheel/wheel.js" */
/** @import { Ask, Choose, Context, Store } from "./state/types.js" */

import { attachChoosing } from "./kit/choosing.js";
import { createPaperDialog } from "./kit/paper-dialog.js";
import { attachNext, attachReport } from "./kit/report.js";
import { attachShelf } from "./kit/shelf-list.js";
import { attachSubstitutes } from "./kit/substitutes.js";
import { attachKits } from "./kit/switcher.js";
import { attachTin } from "./kit/tin.js";
import { attachPhoto } from "./match/photo.js";
import { createAnswer } from "./match/photo-answer.js";
import { attachPlace } from "./match/place.js";
import { attachRecipes } from "./match/recipes.js";
import { attachStudy } from "./match/study.js";
import { attachTarget } from "./match/target-panel.js";
import { attachAbout } from "./mix/about.js";
import { attachDarks } from "./mix/darks.js";
import { attachPartners } from "./mix/partners.js";
import { attachPuddles } from "./mix/puddles.js";
import { attachSheet } from "./mix/sheet.js";
import { attachDrop } from "./page/drop.js";
import { attachOffline } from "./page/offline.js";
import { inTurn } from "./page/rest.js";
import { attachExports } from "./send/exports.js";
import { attachFiles } from "./send/file-panel.js";
import { attachPrint } from "./send/print.js";
import { attachLesson } from "./swatches/lesson.js";
import { attachLog } from "./swatches/log.js";
import { attachOwnPaints } from "./swatches/own-paints.js";
import { attachRecord } from "./swatches/record-form.js";

/**
 * Attaches what stands below the mix and the kit beside it.
 *
 * @param {Store} store
 * @param {Pick<Context, "core" | "shelf">} what
 * @param {Ask} ask
 * @param {{ choose: Choose, choosePan: (paint: number) => void, showShelf: () => void }} whats
 */
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

/**
 * Attaches matching, swatches, the report, choosing and printing.
 *
 * @param {Store} store
 * @param {Context} context
 * @param {Ask} ask
 * @param {{ choose: Choose, choosePan: (paint: number) => void, closeShare: () => void, drawOn: DrawOn, showMix: () => void }} what
 */
export function attachFurther(store, context, ask, { choose, choosePan, closeShare, drawOn, showMix }) {
  const { core, shelf } = context;
  const answer = createAnswer(store);
  /** @type {ReturnType<typeof attachChoosing>} */
  let chooseFor;
  return inTurn([
    () => attachReport(store, shelf, ask, choosePan),
    () => attachDarks(store, shelf),
    () => attachNext(store, shelf, ask),
    () => attachSubstitutes(store, shelf, ask),
    () => (chooseFor = attachChoosing(store, shelf, ask)),
    () => attachTarget(store, core),
    () => attachRecipes(store, shelf, ask, showMix, answer.tell),
    () => {
      const toStudy = attachStudy(store, ask);
      const toPlace = attachPlace(store, shelf, ask, { showMix, chooseFor });
      attachPhoto(store, core, answer.node, (pixels) => {
        toStudy(pixels);
        toPlace(pixels);
      });
    },
    () => attachRecord(store, shelf, core, ask),
    () => {
      const plan = attachLesson(store, shelf, ask, showMix);
      for (const way of document.querySelectorAll('[data-show="swatches"]')) way.addEventListener("click", plan);
      if ([document.body.dataset.tab, document.body.dataset.beside].includes("swatches")) plan();
    },
    () => attachLog(store, shelf, core, ask, showMix),
    () => attachOwnPaints(store, context, ask, choose),
    () => attachPrint(store, core, ask),
    () => attachFiles(store, context, ask, closeShare),
    () => attachExports(store, shelf, core, drawOn),
    attachDrop,
    () => void attachOffline().catch(() => {}), // Without it the page works while there is a network.
  ]);
}
