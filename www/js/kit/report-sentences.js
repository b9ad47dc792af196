// The report on a kit in a painter's sentences. Pure: no page.

/** @import { Report, Worth } from "../state/answers.js" */
/** @import { Paint, Shelf } from "../state/types.js" */

import { TRANSPARENT } from "../../pkg/facts.js";
import * as words from "../words/report.js";

/** A dark that another paint would take lower by so much is worth a sentence. */
const DEEPER = 4;
const MOST_DARKS = 3;

/**
 * Sentences as `{text, paints}`: what the kit can do, then what it lacks. `shelf.get` tells of a paint.
 *
 * @param {Report} report
 * @param {number[]} paints
 * @param {Shelf} shelf
 */
export function sentences(report, paints, shelf) {
  if (paints.length === 0) return [];
  const known = paints.map((paint) => shelf.paint(paint));
  return [
    reach(report),
    ...gaps(report),
    ...darks(report, shelf),
    neutrals(report),
    textures(known),
    lasting(report, shelf, known),
    cautions(known),
    ...spare(report, shelf),
  ].filter(Boolean);
}

/** @param {Report} report */
const reach = ({ reached: [close, near] }) => words.reaches(near, close);

/** @param {Report} report */
const gaps = ({ gaps }) =>
  gaps.length === 0 ? [words.noGap] : gaps.map(({ hues, reach }) => words.gap(hues.slice(0, 3), reach));

/**
 * @param {Report} report
 * @param {Shelf} shelf
 */
function darks({ darks }, shelf) {
  const values = darks.flatMap(({ hue, swatch }) => (swatch ? [{ hue, lightness: swatch.lightness }] : []));
  if (values.length === 0) return [];
  const deepest = values.reduce((a, b) => (b.lightness < a.lightness ? b : a));
  const missing = darks
    .flatMap(({ hue, swatch, with: better }) =>
      better ? [{ hue, now: swatch?.lightness ?? 100, paint: shelf.paint(better[0]), lightness: better[1] }] : [],
    )
    .filter(({ now, lightness }) => now - lightness >= DEEPER)
    .sort((a, b) => b.now - b.lightness - (a.now - a.lightness))
    .slice(0, MOST_DARKS);
  return [
    words.deepest(deepest.hue, deepest.lightness),
    ...missing.map(({ hue, now, paint, lightness }) =>
      now === 100 ? words.noDark(hue, paint, lightness) : words.deeper(hue, now, paint, lightness),
    ),
  ];
}

/** @param {Report} report */
function neutrals({ neutrals }) {
  if (neutrals.length === 0) return words.noGrey;
  const warm = neutrals.filter(({ warm }) => warm).length;
  return words.greys(neutrals.length, Math.min(...neutrals.map(({ lightness }) => lightness)), warm);
}

/** @param {Paint[]} known */
function textures(known) {
  /** @param {(paint: Paint) => boolean} test */
  const many = (test) => known.filter(test).length;
  return words.textures({
    granulate: many(({ granulation }) => (granulation ?? 0) >= 2),
    smooth: many(({ granulation }) => (granulation ?? 1) < 1),
    transparent: many(({ transparency }) => (transparency ?? 0) >= TRANSPARENT),
    stain: many(({ staining }) => (staining ?? 0) >= 3),
    earth: many(({ earth }) => earth),
  });
}

/**
 * @param {Report} report
 * @param {Shelf} shelf
 * @param {Paint[]} known
 */
function lasting({ leastLightfast }, shelf, known) {
  if (!leastLightfast) return words.fastnessUnknown;
  const [paint, grade] = leastLightfast;
  const unknown = known.filter(
    ({ lightfastTint, lightfastMasstone }) => lightfastTint == null && lightfastMasstone == null,
  ).length;
  return words.leastLightfast(shelf.paint(paint).name, grade, unknown);
}

/** @param {Paint[]} known */
function cautions(known) {
  const careful = known.filter(({ caution }) => caution).map(({ name }) => name);
  return careful.length ? words.careful(careful) : words.careless;
}

/**
 * @param {Report} report
 * @param {Shelf} shelf
 */
function spare({ worths, duplicates }, shelf) {
  /** @param {number} paint */
  const nameOf = (paint) => shelf.paint(paint).name;
  const idle = worths.filter(({ idle }) => idle).map(({ paint }) => nameOf(paint));
  return [
    idle.length ? words.spare(idle) : null,
    ...duplicates.map(({ paints, error }) => words.duplicates(paints.map(nameOf), error)),
  ];
}

/**
 * "primary, dark, greys 3 others".
 *
 * @param {Worth} worth
 */
export function rolesOf({ roles }) {
  const greyed = new Set(roles.filter(({ of }) => of != null).map(({ of }) => of)).size;
  const names = new Set(roles.filter(({ of }) => of == null).map(({ name }) => name));
  return [...names, greyed && words.greysOthers(greyed)].filter(Boolean).join(", ");
}

/** A part of all colours that is worth a figure of one digit. */
const TOLD = 0.0005;

/**
 * What a paint adds to the others, in a few words.
 *
 * @param {Worth} worth
 */
export const addedBy = ({ lost: [close, near], darks }) =>
  words.adds(near >= TOLD ? near : 0, near < TOLD && close >= TOLD, darks);
