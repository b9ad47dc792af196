// How numbers, dates, plurals, lists and names stand in a sentence of this language.

const LANGUAGE = "en-GB";

const kinds = new Intl.PluralRules(LANGUAGE);
/** @type {{ [digits: string]: Intl.NumberFormat }} */
const writers = {};

/**
 * The form of a word or sentence that goes with a count.
 *
 * @type {<F>(count: number, forms: Partial<Record<Intl.LDMLPluralRule, F>> & { other: F }) => F}
 */
export const plural = (count, forms) => forms[kinds.select(count)] ?? forms.other;

/**
 * A number with so many digits behind its point, or from the least to the most.
 *
 * @type {(value: number, most?: number, least?: number) => string}
 */
export function number(value, most = 0, least = most) {
  writers[`${least} ${most}`] ??= new Intl.NumberFormat(LANGUAGE, {
    minimumFractionDigits: least,
    maximumFractionDigits: most,
    signDisplay: "negative",
  });
  return writers[`${least} ${most}`].format(value);
}

/**
 * A part of 1 in percent, which no line break parts from its sign.
 *
 * @type {(part: number, digits?: number) => string}
 */
export const percent = (part, digits = 0) => `${number(100 * part, digits)}\u00a0%`;

/**
 * "a, b and c".
 *
 * @type {(words: string[]) => string}
 */
export const listed = (words) => new Intl.ListFormat(LANGUAGE).format(words);

/**
 * "4 October 2024".
 *
 * @type {(date: Date, timeZone?: string) => string}
 */
export const longDay = (date, timeZone) => date.toLocaleDateString(LANGUAGE, { dateStyle: "long", timeZone });

/** @type {(text: string) => string} */
export const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * A reason, as an error gives it, as a sentence.
 *
 * @type {(reason: string) => string}
 */
export const sentence = (reason) => `${capital(reason)}.`;

/** Letters that are written from right to left: Hebrew, Arabic and their kin. */
const LEFTWARD = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1eeff}]/u;

/**
 * A name as it stands among other words: one written from right to left does not turn those round.
 *
 * @type {(name: string) => string}
 */
export const isolated = (name) => (LEFTWARD.test(name) ? `\u2068${name}\u2069` : name);
