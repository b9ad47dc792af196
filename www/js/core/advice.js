// The questions that take longer than a frame, as verbs on plain values. Runs in the worker, or in the page where there is none.

/** @import { Advice, Progress } from "../state/answers.js" */
/** @import { Paper } from "../state/types.js" */

/** Tenths of a millisecond of work between two looks at what else is asked. */
const STEP = 300;

/**
 * Verbs over a started core. `paper` and `wide` say what colours are seen on; the adviser of the last ones is kept.
 *
 * @param {typeof import("../../pkg/adviser.js")} core
 * @returns {{ [Verb in keyof Advice]: (question: any, progress: { tell: (told: Progress) => void, stopped: () => boolean }) => Advice[Verb] | Promise<Advice[Verb]> }}
 */
export function createVerbs(core) {
  /** @type {import("../../pkg/adviser.js").Adviser | undefined} */
  let adviser;
  /** @type {string | undefined} */
  let seen;

  /** @type {(paper: Paper, wide: boolean) => import("../../pkg/adviser.js").Adviser} */
  function on(paper, wide) {
    const now = JSON.stringify([paper, wide]);
    if (adviser && now === seen) return adviser;
    adviser?.free();
    adviser = new core.Adviser(paper, wide);
    seen = now;
    return adviser;
  }

  return {
    /** The shelf at hand changed: whatever was worked out with the one before is gone. */
    shelf({ own, learned }) {
      adviser?.free();
      adviser = seen = undefined;
      core.set_shelf(own, learned);
    },
    films: ({ paints }) => core.films_of_swatches(paints),
    learn: ({ records, paints, held, paper }) => core.learn(records, paints, held, paper),
    samples: ({ text }) => core.samples_of(text),
    writeLog: ({ records }) => core.log_of(records),
    readLog: ({ text, dayFirst }) => core.records_of(text, dayFirst),
    report: ({ paper, wide, paints }) => on(paper, wide).report(paints),
    next: ({ paper, wide, paints, candidates, wish }) => on(paper, wide).next(paints, candidates, wish),
    match: ({ paper, wide, paints, target }) => on(paper, wide).matches(paints, target),
    nearest: ({ paper, wide, paints, place }) => on(paper, wide).nearest(paints, place),
    nextForPlace: ({ paper, wide, paints, candidates, place }) =>
      on(paper, wide).next_for_place(paints, candidates, place),
    /** Sheets as SVG documents, a page each; the same as one PDF; a link as the SVG of a QR code. */
    print: (wanted) => core.print_svg(wanted),
    printPdf: (wanted) => /** @type {Uint8Array<ArrayBuffer>} */ (core.print_pdf(wanted)),
    qr: ({ link }) => core.qr_svg(link),
    cluster: ({ data, width, count }) => core.colours_of(data, width, count),
    study: ({ paper, wide, paints, data, width, steps }) => on(paper, wide).study(paints, data, width, steps),
    /** Answers the choice, or nothing if it was stopped; tells how far it is and lets other questions in between. */
    async choose({ paper, wide, size, candidates, rules, place }, { tell, stopped }) {
      const choosing = on(paper, wide).choose(size, candidates, place, rules);
      try {
        for (;;) {
          const progress = choosing.step(STEP);
          tell(progress);
          if (progress.finished) return choosing.choice();
          await new Promise((resolve) => setTimeout(resolve, 0));
          if (stopped()) return null;
        }
      } finally {
        choosing.free();
      }
    },
    substitutes: ({ paper, wide, paints, owned }) =>
      [...paints]
        .filter((paint) => !owned.includes(paint))
        .map((paint) => [paint, on(paper, wide).substitutes(paint, owned, paints)]),
  };
}
