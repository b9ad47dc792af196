// The questions that take longer than a frame, as verbs on plain values. Runs in the worker, or in the page where there is none.

/** Verbs over a started core. `paper` and `wide` say what colours are seen on; the adviser of the last ones is kept. */
export function createVerbs(core) {
  let adviser;
  let seen;

  function on(paper, wide) {
    const now = JSON.stringify([paper, wide]);
    if (now !== seen) {
      adviser?.free();
      adviser = new core.Adviser(paper, wide);
      seen = now;
    }
    return adviser;
  }

  return {
    report: ({ paper, wide, paints }) => on(paper, wide).report(paints),
    next: ({ paper, wide, paints, candidates, wish }) => on(paper, wide).next(paints, candidates, wish),
    substitutes: ({ paper, wide, paints, owned }) =>
      [...paints].filter((paint) => !owned.includes(paint)).map((paint) => [paint, on(paper, wide).substitutes(paint, owned, paints)]),
  };
}
