// Numbers in a painter's words.

/** Washes by name, thickest first. */
export const LOADS = [
  [1, "masstone", "1"],
  [0.5, "strong wash", "½"],
  [0.25, "medium wash", "¼"],
  [0.125, "light wash", "⅛"],
  [0.0625, "pale wash", "1⁄16"],
];

/** The name of the nearest wash. */
export function loadName(load) {
  const far = ([stop]) => Math.abs(Math.log2(stop / load));
  return LOADS.reduce((best, stop) => (far(stop) < far(best) ? stop : best))[1];
}

export const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);

export const count = (parts) => `${parts} ${parts === 1 ? "part" : "parts"}`;

/** Letters that are written from right to left: Hebrew, Arabic and their kin. */
const LEFTWARD = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1eeff}]/u;

/** A name as it stands among other words: one written from right to left does not turn those round. */
export const isolated = (name) => (LEFTWARD.test(name) ? `\u2068${name}\u2069` : name);

/** "2 parts Ultramarine blue, 1 part Burnt sienna"; a paint alone by its name. */
export function recipe(parts, shelf) {
  if (parts.length === 1) return isolated(shelf.get(parts[0][0]).name);
  return parts.map(([paint, parts]) => `${count(parts)} ${isolated(shelf.get(paint).name)}`).join(", ");
}

/** What the crossing is, as one plain sentence. */
export function crossingSentence({ kind, lean, mix }, [first, second]) {
  const value = Math.round(mix.swatch.lightness);
  const [a, b] = mix.parts;
  const at = `at ${a}:${b}, L* ${value}`;
  switch (kind) {
    case "pure":
      return `Crosses neutral ${at}: a pure grey.`;
    case "near":
      return `Nearly neutral ${at}, leaning ${lean}.`;
    case "dull":
      return `Passes neutral by: dullest ${at}, still ${lean} at C* ${Math.round(mix.swatch.chroma)}.`;
    default:
      return `No mix of these is greyer than ${mix.share < 0.5 ? first : second} alone.`;
  }
}

const GRADES = {
  transparency: ["very opaque", "opaque", "semi-opaque", "semi-transparent", "transparent"],
  staining: ["lifts well", "lifts", "stains a little", "stains", "stains strongly"],
  granulation: ["smooth", "hardly granulates", "granulates a little", "granulates", "granulates strongly"],
};

/** Rating from which a paint is called transparent, as the core has it. */
export const TRANSPARENT = 3;

/** A rating of 0 to 4 as a word, or nothing where it was not measured. */
export const grade = (property, rating) =>
  rating == null
    ? null
    : GRADES[property][property === "transparency" && rating >= TRANSPARENT ? 4 : Math.min(Math.round(rating), 4)];

/** How much a volume of paint does in a mix, where it is far from the average paint's. */
export function strengthOf(strength) {
  if (strength >= 1.75) return "strong in mixes";
  return strength <= 0.6 ? "weak in mixes" : null;
}
