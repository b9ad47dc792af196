// Ends of a path: whole parts of paints, perhaps asked for by an empty place of the wheel. Never changed in place.

import { isolated } from "../page/words.js";
import { emptyKit } from "./kit.js";

/** An end that is a paint alone. */
export const paintEnd = (number) => ({ parts: [[number, 1]] });

/** The paint of an end, or nothing where it is a mix. */
export const paintOf = (end) => (end?.parts.length === 1 ? end.parts[0][0] : null);

/** Which end a paint alone is: 0, 1 or -1. */
export const endOf = (ends, paint) => ends.findIndex((end) => paintOf(end) === paint);

export const sameParts = (a, b) => JSON.stringify(a) === JSON.stringify(b);

/** Most parts that a brush counts; one part beside more is a touch. */
const MOST_COUNTED = 8;

/** "Ultramarine blue", or "2 ultramarine blue + 1 raw umber" for a mix; "raw umber + a touch of viridian (1 in 20)". */
export function shortName(parts, shelf) {
  if (parts.length === 1) return isolated(shelf.get(parts[0][0]).name);
  const plain = ([paint]) => isolated(shelf.get(paint).name.toLowerCase());
  const counted = (parts) => parts.map((part) => `${part[1]} ${plain(part)}`).join(" + ");
  const { touch, rest } = touchOf(parts);
  if (!touch) return counted(parts);
  const whole = parts.reduce((sum, [, count]) => sum + count, 0);
  return `${rest.length === 1 ? plain(rest[0]) : counted(rest)} + a touch of ${plain(touch)} (1 in ${whole})`;
}

/** The paint of which there is one part beside too many to count, and the rest in their smallest parts. */
function touchOf(parts) {
  const touch = parts.find(([, count]) => count === 1);
  const others = parts.filter((part) => part !== touch);
  const common = others.reduce((common, [, count]) => gcd(common, count), 0);
  if (!touch || common === 1 || others.every(([, count]) => count <= MOST_COUNTED)) return {};
  return { touch, rest: others.map(([paint, count]) => [paint, count / common]) };
}

const gcd = (a, b) => (b === 0 ? a : gcd(b, a % b));

/** The pair the core asks for: both ends and how they are laid. */
export const pairOf = ({ ends, laid }) => ({ ends: ends.map((end) => end?.parts ?? []), laid });

/** Every paint of both ends, each once. */
export const paintsOf = (ends) => new Set(ends.flatMap((end) => end?.parts ?? []).map(([paint]) => paint));

/** Whether both ends are chosen. */
export const isPair = ({ ends }) => Boolean(ends[0] && ends[1]);

/** An end as it was kept, if it is one and every paint of it is known. `partsOf` reads parts; the core judges them. */
export function readEnd(kept, partsOf, { core, own, isBuiltIn }) {
  try {
    const parts = partsOf(kept.parts);
    core.encode_kit({ ...emptyKit(), puddles: [{ parts, load: 1 }], own });
    if (!parts.every(([paint]) => isBuiltIn(paint) || own.some(([number]) => number === paint))) return null;
    const { off } = kept.asked ?? {};
    return typeof off === "number" ? { parts, asked: { ...kept.asked, off } } : { parts };
  } catch {
    return null;
  }
}

/** What changes where an end is chosen: it fills the next one, and the other is next then. One that is chosen again stays. */
export function chooseEnd({ ends, next }, end) {
  const same = ends.findIndex((known) => known && sameParts(known.parts, end.parts) && !end.asked);
  return same >= 0 ? { next: 1 - same } : { ends: ends.map((known, i) => (i === next ? end : known)), next: 1 - next };
}

/** Ends and share at which a recipe stands on a path: its last paint is B, what is before it A. */
export function pathOf(parts) {
  if (parts.length === 1) return { ends: [{ parts }, { parts }], share: 0 };
  const [a, b] = [parts.slice(0, -1), parts.slice(-1)];
  const volume = (side) => side.reduce((sum, [, count]) => sum + count, 0);
  return { ends: [{ parts: a }, { parts: [[b[0][0], 1]] }], share: volume(b) / volume(parts) };
}
