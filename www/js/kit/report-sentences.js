// The report on a kit in a painter's sentences. Pure: no page.

import { TRANSPARENT } from "../page/words.js";

/** A dark that another paint would take lower by so much is worth a sentence. */
const DEEPER = 4;
const MOST_DARKS = 3;

const percent = (part) => `${(100 * part).toFixed(0)} %`;
const listed = (words) => (words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`);
const counted = (number, one, many) => `${number} ${number === 1 ? one : many}`;

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

function reach({ reached: [close, near] }) {
  return `Reaches ${percent(near)} of real surface colours, ${percent(close)} so closely that the eye hardly sees a difference.`;
}

function gaps({ gaps }) {
  if (gaps.length === 0) return ["No gap in hue: it reaches out nearly as far as the whole shelf, all round."];
  return gaps.map(
    ({ hues, reach }) =>
      `Weak in ${listed(hues.slice(0, 3))}: at worst ${percent(reach)} as far out as the shelf goes.`,
  );
}

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
    `Its deepest dark is ${deepest.hue} at L* ${deepest.swatch.lightness.toFixed(0)}.`,
    ...missing.map(
      ({ hue, now, paint, lightness }) =>
        `${now === 100 ? `No dark ${hue} at all` : `No dark ${hue} below L* ${now.toFixed(0)}`}; ${paint.name} ${paint.code} would bring ${lightness.toFixed(0)}.`,
    ),
  ];
}

function neutrals({ neutrals }) {
  if (neutrals.length === 0) return "No two of its paints grey each other.";
  const warm = neutrals.filter(({ warm }) => warm).length;
  const lowest = Math.min(...neutrals.map(({ lightness }) => lightness));
  return `${counted(neutrals.length, "pair makes", "pairs make")} greys, down to L* ${lowest.toFixed(0)}: ${warm} lean warm, ${neutrals.length - warm} cool.`;
}

function textures(known) {
  const many = (test) => known.filter(test).length;
  return `${[
    counted(
      many(({ granulation }) => granulation >= 2),
      "granulates",
      "granulate",
    ),
    `${many(({ granulation }) => granulation !== undefined && granulation !== null && granulation < 1)} smooth`,
    `${many(({ transparency }) => transparency >= TRANSPARENT)} transparent`,
    counted(
      many(({ staining }) => staining >= 3),
      "stains",
      "stain",
    ),
    counted(
      many(({ earth }) => earth),
      "earth",
      "earths",
    ),
  ].join(", ")}.`;
}

function lasting({ leastLightfast }, shelf, known) {
  if (!leastLightfast) return "No lightfastness is known.";
  const [paint, grade] = leastLightfast;
  const unknown = known.filter(
    ({ lightfastTint, lightfastMasstone }) => lightfastTint == null && lightfastMasstone == null,
  ).length;
  return `Least lightfast: ${shelf.get(paint).name}, Blue Wool ${+grade.toFixed(1)} of 8${unknown ? `; ${unknown} not rated` : ""}.`;
}

function cautions(known) {
  const careful = known.filter(({ caution }) => caution);
  return careful.length
    ? `Handle with care: ${listed(careful.map(({ name }) => name))}. See each paint’s caution, its label and safety data sheet.`
    : "No paint in it calls for more than ordinary care.";
}

function spare({ worths, duplicates }, shelf) {
  const idle = worths.filter(({ idle }) => idle).map(({ paint }) => shelf.get(paint).name);
  return [
    idle.length
      ? `Nobody would miss ${listed(idle)}: hardly a colour, no dark and no texture is lost without ${idle.length === 1 ? "it" : "any one of them"}.`
      : null,
    ...duplicates.map(
      ({ paints, error }) =>
        `${listed(paints.map((paint) => shelf.get(paint).name))} are near-duplicates: ${error.toFixed(1)} apart on average, alone and mixed.`,
    ),
  ];
}

/** "primary, dark, complement of Burnt sienna". */
export const rolesOf = ({ roles }, shelf) =>
  [...new Set(roles.map(({ name, of }) => (of == null ? name : `greys ${shelf.get(of).name}`)))].join(", ");

/** What is lost without a paint, in words. */
export function lostWithout({ lost: [close, near], darks }) {
  const tenth = (part) => `${(100 * part).toFixed(1)} %`;
  const colours =
    Math.max(close, near) < 0.0005
      ? "no colour is lost without it"
      : `without it ${tenth(near)} of colours are out of reach, ${tenth(close)} no longer close`;
  return darks.length ? `${colours}; darkest ${listed(darks)}` : colours;
}
