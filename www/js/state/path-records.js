// Records of the mixes of a path, and where they stand on it.

/** @import { End, Record, State } from "./types.js" */

import { paintOf, paintsOf } from "./end.js";

/**
 * Those of the paints of a path: each is a mix of no other paint.
 *
 * @type {(state: Pick<State, "records" | "ends">) => Record[]}
 */
export function recordsOn({ records, ends }) {
  const paints = paintsOf(ends);
  return records.filter(({ parts }) => parts.every(([paint]) => paints.has(paint)));
}

/**
 * Share of B at which a record stands on a path of two paints, or nothing.
 *
 * @type {(record: Pick<Record, "parts">, ends: (End | null)[]) => number | null}
 */
export function shareOf({ parts }, ends) {
  if (ends.some((end) => end?.parts.length !== 1)) return null;
  /** @type {(end: End | null) => number} */
  const of = (end) => parts.find(([paint]) => paint === paintOf(end))?.[1] ?? 0;
  const [a, b] = ends.map(of);
  return a + b > 0 ? b / (a + b) : null;
}
