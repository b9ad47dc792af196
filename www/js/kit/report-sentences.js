// The report on a kit in a painter's sentences. Pure: no page.

import { TRANSPARENT } from "../../pkg/facts.js";
import * as words from "../words/report.js";

/** A dark that another paint would take lower by so much is worth a sentence. */
const DEEPER = 4;
const MOST_DARKS = 3;

/** Sentences as `{text, paints}`: what the kit can do, then what it lacks. `shelf.get` tells of a paint. */
export function sentences(report, paints, shelf) {
  if (paints.length === 0) return [];
  const known = paints.map((paint) => shelf.get(paint));
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

const reach = ({ reached: [close, near] }) => words.reaches(near, close);

const gaps = ({ gaps }) =>
  gaps.length === 0 ? [words.noGap] : gaps.map(({ hues, reach }) => words.gap(hues.slice(0, 3), reach));

function darks({ darks }, shelf) {
  const has = darks.filter(({ swatch }) => swatch);
  if (has.length === 0) return [];
  const deepest = has.reduce((a, b) => (b.swatch.lightness < a.swatch.lightness ? b : a));
  const missing = darks
    .filter(({ with: better }) => better)
    .map(({ hue, swatch, with: [paint, lightness] }) => ({
      hue,
      now: swatch?.lightness ?? 100,
      paint: shelf.get(paint),
      lightness,
    }))
    .filter(({ now, lightness }) => now - lightness >= DEEPER)
    .sort((a, b) => b.now - b.lightness - (a.now - a.lightness))
    .slice(0, MOST_DARKS);
  return [
    words.deepest(deepest.hue, deepest.swatch.lightness),
    ...missing.map(({ hue, now, paint, lightness }) =>
      now === 100 ? words.noDark(hue, paint, lightness) : words.deeper(hue, now, paint, lightness),
    ),
  ];
}

function neutrals({ neutrals }) {
  if (neutrals.length === 0) return words.noGrey;
  const warm = neutrals.filter(({ warm }) => warm).length;
  return words.greys(neutrals.length, Math.min(...neutrals.map(({ lightness }) => lightness)), warm);
}

function textures(known) {
  const many = (test) => known.filter(test).length;
  return words.textures({
    granulate: many(({ granulation }) => granulation >= 2),
    smooth: many(({ granulation }) => granulation !== undefined && granulation !== null && granulation < 1),
    transparent: many(({ transparency }) => transparency >= TRANSPARENT),
    stain: many(({ staining }) => staining >= 3),
    earth: many(({ earth }) => earth),
  });
}

function lasting({ leastLightfast }, shelf, known) {
  if (!leastLightfast) return words.fastnessUnknown;
  const [paint, grade] = leastLightfast;
  const unknown = known.filter(
    ({ lightfastTint, lightfastMasstone }) => lightfastTint == null && lightfastMasstone == null,
  ).length;
  return words.leastLightfast(shelf.get(paint).name, grade, unknown);
}

function cautions(known) {
  const careful = known.filter(({ caution }) => caution).map(({ name }) => name);
  return careful.length ? words.careful(careful) : words.careless;
}

function spare({ worths, duplicates }, shelf) {
  const nameOf = (paint) => shelf.get(paint).name;
  const idle = worths.filter(({ idle }) => idle).map(({ paint }) => nameOf(paint));
  return [
    idle.length ? words.spare(idle) : null,
    ...duplicates.map(({ paints, error }) => words.duplicates(paints.map(nameOf), error)),
  ];
}

/** "primary, dark, greys 3 others". */
export function rolesOf({ roles }) {
  const greyed = new Set(roles.filter(({ of }) => of != null).map(({ of }) => of)).size;
  const names = new Set(roles.filter(({ of }) => of == null).map(({ name }) => name));
  return [...names, greyed && words.greysOthers(greyed)].filter(Boolean).join(", ");
}

/** A part of all colours that is worth a figure of one digit. */
const TOLD = 0.0005;

/** What a paint adds to the others, in a few words. */
export const addedBy = ({ lost: [close, near], darks }) =>
  words.adds(near >= TOLD ? near : 0, near < TOLD && close >= TOLD, darks);
