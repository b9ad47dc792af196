// Records: what was painted and what was seen of it. Never changed in place.

import { paintsOf } from "./end.js";
import { newId } from "./ids.js";

/** Most records that are kept. */
export const MOST_RECORDS = 500;

/** Those of the paints of a path: each is a mix of no other paint. */
export function recordsOn({ records, ends }) {
  const paints = paintsOf(ends);
  return records.filter(({ parts }) => parts.every(([paint]) => paints.has(paint)));
}

/** Share of B at which a record stands on a path of two paints, or nothing. */
export function shareOf({ parts }, ends) {
  if (ends.some((end) => end?.parts.length !== 1)) return null;
  const of = (end) => parts.find(([paint]) => paint === end.parts[0][0])?.[1] ?? 0;
  const [a, b] = ends.map(of);
  return a + b > 0 ? b / (a + b) : null;
}

/** How far numbers of one record may lie apart: a log is written to four decimals. */
const ALIKE = 1e-3;

/** What two records of one swatch have in common to the letter. */
const keyOf = ({ parts, paper, seen, date, note }) =>
  JSON.stringify([[...parts].sort(([a], [b]) => a - b), paper, seen.length, date, note]);

const isNear = (a, b) =>
  Math.abs(a.load - b.load) < ALIKE && a.seen.every((value, i) => Math.abs(value - b.seen[i]) < ALIKE);

/** Those of some records that are not among the known ones, each once. */
export function newOnes(records, known) {
  const alike = new Map();
  const isNew = (record) => {
    const key = keyOf(record);
    const others = alike.get(key) ?? [];
    if (others.some((other) => isNear(record, other))) return false;
    alike.set(key, [...others, record]);
    return true;
  };
  known.forEach(isNew);
  return records.filter(isNew);
}

/** What changes where records come in: those that are new, as far as there is room. */
export function addRecords({ records }, more) {
  const fresh = newOnes(more, records);
  const room = fresh.slice(0, Math.max(MOST_RECORDS - records.length, 0)).map((record) => ({ ...record, id: newId() }));
  return {
    patch: room.length ? { records: [...records, ...room] } : {},
    added: room.length,
    known: more.length - fresh.length,
    left: fresh.length - room.length,
  };
}

export const today = () => new Date().toLocaleDateString("sv");
