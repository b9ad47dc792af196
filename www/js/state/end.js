// Ends of a path: whole parts of paints, perhaps asked for by an empty place of the wheel. Never changed in place.

/** @import { Context, End, Own, Pair, Part, Patch, Shelf, State } from "./types.js" */

import { nameIn, touch as touchWords } from "../words/terms.js";
import { emptyKit } from "./kit.js";

/**
 * An end that is a paint alone.
 *
 * @type {(number: number) => End}
 */
export const paintEnd = (number) => ({ parts: [[number, 1]] });

/**
 * The paint of an end, or nothing where it is a mix.
 *
 * @type {(end: End | null | undefined) => number | null}
 */
export const paintOf = (end) => (end?.parts.length === 1 ? end.parts[0][0] : null);

/**
 * Which end a paint alone is: 0, 1 or -1.
 *
 * @type {(ends: (End | null)[], paint: number) => number}
 */
export const endOf = (ends, paint) => ends.findIndex((end) => paintOf(end) === paint);

/** @type {(a: Part[], b: Part[]) => boolean} */
export const sameParts = (a, b) => JSON.stringify(a) === JSON.stringify(b);

/** Most parts that a brush counts; one part beside more is a touch. */
const MOST_COUNTED = 8;

/**
 * "Ultramarine blue", or "2 ultramarine blue + 1 raw umber" for a mix; "raw umber + a touch of viridian (1 in 20)".
 *
 * @type {(parts: Part[], shelf: Shelf) => string}
 */
export function shortName(parts, shelf) {
  if (parts.length === 1) return nameIn(parts[0][0], shelf);
  /** @type {(part: Part) => string} */
  const plain = ([paint]) => nameIn(paint, shelf).toLowerCase();
  /** @type {(parts: Part[]) => string} */
  const counted = (parts) => parts.map((part) => `${part[1]} ${plain(part)}`).join(" + ");
  const found = touchOf(parts);
  if (!found) return counted(parts);
  const { touch, rest } = found;
  const whole = parts.reduce((sum, [, count]) => sum + count, 0);
  return touchWords(rest.length === 1 ? plain(rest[0]) : counted(rest), plain(touch), whole);
}

/**
 * The paint of which there is one part beside too many to count, and the rest in their smallest parts.
 *
 * @type {(parts: Part[]) => { touch: Part, rest: Part[] } | null}
 */
function touchOf(parts) {
  const touch = parts.find(([, count]) => count === 1);
  const others = parts.filter((part) => part !== touch);
  const common = others.reduce((common, [, count]) => gcd(common, count), 0);
  if (!touch || common === 1 || others.every(([, count]) => count <= MOST_COUNTED)) return null;
  return { touch, rest: others.map(([paint, count]) => [paint, count / common]) };
}

/** @type {(a: number, b: number) => number} */
const gcd = (a, b) => (b === 0 ? a : gcd(b, a % b));

/**
 * The pair the core asks for: both ends and how they are laid.
 *
 * @type {(state: Pick<State, "ends" | "laid">) => Pair}
 */
export const pairOf = ({ ends, laid }) => ({ ends: ends.map((end) => end?.parts ?? []), laid });

/**
 * Every paint of both ends, each once.
 *
 * @type {(ends: (End | null)[]) => Set<number>}
 */
export const paintsOf = (ends) => new Set(ends.flatMap((end) => end?.parts ?? []).map(([paint]) => paint));

/**
 * Whether both ends are chosen.
 *
 * @type {(state: Pick<State, "ends">) => boolean}
 */
export const isPair = ({ ends }) => Boolean(ends[0] && ends[1]);

/**
 * An end as it was kept, if it is one and every paint of it is known. `partsOf` reads parts; the core judges them.
 *
 * @type {(kept: any, partsOf: (parts: any) => Part[], context: Pick<Context, "core" | "isBuiltIn"> & { own: Own[] }) => End | null}
 */
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

/**
 * What changes where an end is chosen: it fills the next one, and the other is next then. One that is chosen again stays.
 *
 * @type {(state: Pick<State, "ends" | "next">, end: End) => Patch}
 */
export function chooseEnd({ ends, next }, end) {
  const same = ends.findIndex((known) => known && sameParts(known.parts, end.parts) && !end.asked);
  return same >= 0 ? { next: 1 - same } : { ends: ends.map((known, i) => (i === next ? end : known)), next: 1 - next };
}
