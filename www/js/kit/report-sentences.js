// The report on a kit in a painter's sentences. Pure: no page.

import { TRANSPARENT } from "../../pkg/facts.js";
import { percent } from "../page/words.js";

/** A dark that another paint would take lower by so much is worth a sentence. */
const DEEPER = 4;
const MOST_DARKS = 3;

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
  if (gaps.length === 0) return ["No hue is missing: all round it reaches nearly as far as the whole shelf."];
  return gaps.map(
    ({ hues, reach }) =>
      `Weak in ${listed(hues.slice(0, 3))}: there it reaches as little as ${percent(reach)} of the chroma of the whole shelf.`,
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
        `${now === 100 ? `It has no dark ${hue}` : `Its darkest ${hue} is L* ${now.toFixed(0)}`}; ${paint.name} ${paint.code} would take it to ${lightness.toFixed(0)}.`,
    ),
  ];
}

function neutrals({ neutrals }) {
  if (neutrals.length === 0) return "No two of its paints mix to a grey.";
  const warm = neutrals.filter(({ warm }) => warm).length;
  const lowest = Math.min(...neutrals.map(({ lightness }) => lightness));
  return `${counted(neutrals.length, "pair makes", "pairs make")} greys, down to L* ${lowest.toFixed(0)}: ${warm} warm, ${neutrals.length - warm} cool.`;
}

function textures(known) {
  const many = (test) => known.filter(test).length;
  return `${[
    counted(
      many(({ granulation }) => granulation >= 2),
      "paint granulates",
      "paints granulate",
    ),
    counted(
      many(({ granulation }) => granulation !== undefined && granulation !== null && granulation < 1),
      "is smooth",
      "are smooth",
    ),
    counted(
      many(({ transparency }) => transparency >= TRANSPARENT),
      "is transparent",
      "are transparent",
    ),
    counted(
      many(({ staining }) => staining >= 3),
      "stains",
      "stain",
    ),
    counted(
      many(({ earth }) => earth),
      "is an earth",
      "are earths",
    ),
  ].join(", ")}.`;
}

function lasting({ leastLightfast }, shelf, known) {
  if (!leastLightfast) return "The lightfastness of its paints is not known.";
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
    : "None of its paints calls for more than ordinary care.";
}

function spare({ worths, duplicates }, shelf) {
  const idle = worths.filter(({ idle }) => idle).map(({ paint }) => shelf.get(paint).name);
  return [
    idle.length
      ? `You could leave out ${idle.length === 1 ? idle[0] : `any one of ${listed(idle)}`}: hardly a colour, no dark and no texture would be lost.`
      : null,
    ...duplicates.map(
      ({ paints, error }) =>
        `${listed(paints.map((paint) => shelf.get(paint).name))} are near-duplicates: on average they differ by CIEDE2000\u00a0${error.toFixed(1)}, alone and mixed.`,
    ),
  ];
}

/** "primary, dark, greys 3 others". */
export function rolesOf({ roles }) {
  const greyed = new Set(roles.filter(({ of }) => of != null).map(({ of }) => of)).size;
  const names = new Set(roles.filter(({ of }) => of == null).map(({ name }) => name));
  return [...names, greyed && `greys ${counted(greyed, "other", "others")}`].filter(Boolean).join(", ");
}

/** A part of all colours that is worth a figure of one digit. */
const TOLD = 0.0005;

/** What a paint adds to the others, in a few words. */
export function addedBy({ lost: [close, near], darks }) {
  const dark = darks.length > 2 ? `the darkest of ${darks.length} hues` : `the darkest ${listed(darks)}`;
  const added = [
    near >= TOLD && percent(near, 1),
    near < TOLD && close >= TOLD && "closer matches",
    darks.length > 0 && dark,
  ].filter(Boolean);
  return `adds ${listed(added) || "nothing"}`;
}
