// Records: what was painted and what was seen of it. Never changed in place.

/** @import { Patch, Record, State } from "./types.js" */
/** @typedef {Omit<Record, "id">} Unkept */

import { MOST_RECORDS } from "../../pkg/facts.js";
import { newId } from "./ids.js";

/** How far numbers of one record may lie apart: a log is written to four decimals. */
const ALIKE = 1e-3;

/**
 * What two records of one swatch have in common to the letter.
 *
 * @type {(record: Unkept) => string}
 */
const keyOf = ({ parts, paper, seen, date, note }) =>
  JSON.stringify([[...parts].sort(([a], [b]) => a - b), paper, seen.length, date, note]);

/** @type {(a: Unkept, b: Unkept) => boolean} */
const isNear = (a, b) =>
  Math.abs(a.load - b.load) < ALIKE && a.seen.every((value, i) => Math.abs(value - b.seen[i]) < ALIKE);

/**
 * Those of some records that are not among the known ones, each once.
 *
 * @type {<R extends Unkept>(records: R[], known: Unkept[]) => R[]}
 */
export function newOnes(records, known) {
  /** @type {Map<string, Unkept[]>} */
  const alike = new Map();
  /** @type {(record: Unkept) => boolean} */
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

/**
 * What changes where records come in: those that are new, as far as there is room.
 *
 * @type {(state: Pick<State, "records">, more: Unkept[]) => { patch: Patch, added: number, known: number, left: number }}
 */
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
