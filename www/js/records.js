// Records: what was painted and what was seen of it. Never changed in place.

/** Most records that are kept. */
export const MOST_RECORDS = 500;

/** Those of the paints of a path: each is a mix of no other paint. */
export function recordsOn({ records, ends }) {
  const paints = new Set(ends.flatMap((end) => (end?.parts ?? []).map(([paint]) => paint)));
  return records.filter(({ parts }) => parts.every(([paint]) => paints.has(paint)));
}

/** Share of B at which a record stands on a path of two paints, or nothing. */
export function shareOf({ parts }, ends) {
  if (ends.some((end) => end?.parts.length !== 1)) return null;
  const of = (end) => parts.find(([paint]) => paint === end.parts[0][0])?.[1] ?? 0;
  const [a, b] = ends.map(of);
  return a + b > 0 ? b / (a + b) : null;
}

/** Those of some records that are not among the known ones, each once. */
export function newOnes(records, known) {
  const keys = new Set(known.map((record) => JSON.stringify(record)));
  return records.filter((record) => keys.size < keys.add(JSON.stringify(record)).size);
}

export const today = () => new Date().toLocaleDateString("sv");
