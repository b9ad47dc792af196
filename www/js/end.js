// Ends of a path: whole parts of paints, perhaps asked for by an empty place of the wheel. Never changed in place.

/** An end that is a paint alone. */
export const paintEnd = (number) => ({ parts: [[number, 1]] });

/** The paint of an end, or nothing where it is a mix. */
export const paintOf = (end) => (end?.parts.length === 1 ? end.parts[0][0] : null);

/** Which end a paint alone is: 0, 1 or -1. */
export const endOf = (ends, paint) => ends.findIndex((end) => paintOf(end) === paint);

export const sameParts = (a, b) => JSON.stringify(a) === JSON.stringify(b);

/** "Ultramarine blue", or "2 PB29 + 1 raw umber" for a mix: by code, or by name where several paints bear the code. */
export function shortName(parts, shelf) {
  if (parts.length === 1) return shelf.get(parts[0][0]).name;
  const plain = ({ code, name }) => (shelf.all.filter((paint) => paint.code === code).length > 1 ? name.toLowerCase() : code);
  return parts.map(([paint, count]) => `${count} ${plain(shelf.get(paint))}`).join(" + ");
}

/** The pair the core asks for: both ends and how they are laid. */
export const pairOf = ({ ends, laid }) => ({ ends: ends.map((end) => end?.parts ?? []), laid });

/** Whether both ends are chosen. */
export const isPair = ({ ends }) => Boolean(ends[0] && ends[1]);

/** An end as it was kept, if every paint of it is known. */
export function readEnd(kept, shelf) {
  if (typeof kept === "number") return shelf.get(kept) ? paintEnd(kept) : null;
  const parts = kept?.parts;
  const known = Array.isArray(parts) && parts.length > 0 && parts.every((part) => Array.isArray(part) && shelf.get(part[0]) && part[1] > 0);
  return known ? { parts } : null;
}

/** Ends and share at which a recipe stands on a path: its last paint is B, what is before it A. */
export function pathOf(parts) {
  if (parts.length === 1) return { ends: [{ parts }, { parts }], share: 0 };
  const [a, b] = [parts.slice(0, -1), parts.slice(-1)];
  const volume = (side) => side.reduce((sum, [, count]) => sum + count, 0);
  return { ends: [{ parts: a }, { parts: [[b[0][0], 1]] }], share: volume(b) / volume(parts) };
}
