// Films of own paints of swatches: the worker works them out, the page keeps them as a list of [what the swatches are, film].

/** @import { Ask, Film, KeptFilm, Own, OwnPaint } from "./types.js" */

/** Raised with every change of how the core makes them: older ones are then worked out anew. */
const FIT = 2;

/** @type {(value: unknown) => boolean} */
const isAmount = (value) => typeof value === "number" && value >= 0 && value < 1e6;

/** @type {(film: any) => boolean} */
const isFilm = (film) =>
  [film?.k, film?.s].every((curve) => curve?.length === 36 && Array.from(curve).every(isAmount)) &&
  isAmount(film.strength) &&
  film.strength > 0;

/** @type {(paint: OwnPaint) => string} */
const keyOf = ({ paper, masstone, wash, washLoad }) => JSON.stringify([FIT, paper, masstone, wash, washLoad]);

/** @type {(films: KeptFilm[], paint: OwnPaint) => Film | null} */
const find = (films, paint) => films.find(([key]) => key === keyOf(paint))?.[1] ?? null;

/**
 * A film as it was kept, or nothing where it cannot be one.
 *
 * @type {(text: string | null) => KeptFilm | null}
 */
export function keptFilm(text) {
  try {
    const entry = JSON.parse(text ?? "null");
    return Array.isArray(entry) && typeof entry[0] === "string" && isFilm(entry[1]) ? [entry[0], entry[1]] : null;
  } catch {
    return null;
  }
}

/**
 * Own paints as the core puts them on a shelf: each with its film.
 *
 * @type {(own: Own[], films: KeptFilm[]) => [number, OwnPaint, Film | null][]}
 */
export const withFilms = (own, films) => own.map(([number, paint]) => [number, paint, find(films, paint)]);

/**
 * Those films that belong to these paints.
 *
 * @type {(own: Own[], films: KeptFilm[]) => KeptFilm[]}
 */
export function filmsOf(own, films) {
  const keys = new Set(own.map(([, paint]) => keyOf(paint)));
  return films.filter(([key]) => keys.has(key));
}

/**
 * The films known, and those of these paints that were not; `ask` is the adviser.
 *
 * @type {(paints: OwnPaint[], films: KeptFilm[], ask: Ask) => Promise<KeptFilm[]>}
 */
export async function learnFilms(paints, films, ask) {
  const lacking = paints.filter((paint) => paint.parts.length === 0 && !find(films, paint));
  if (lacking.length === 0) return films;
  const found = await ask("films", { paints: lacking });
  /** @type {KeptFilm[]} */
  const learned = lacking.map((paint, i) => [keyOf(paint), found[i]]);
  return [...films, ...learned];
}
