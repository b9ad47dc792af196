// Codes of paints shown together: where several have one code, each with a word that tells it from the others. Pure: no page.

/** @import { Paint } from "../state/types.js" */
/** @typedef {Pick<Paint, "number" | "name" | "code">} Named */

/**
 * Words of a name, the telling ones: "shade" tells nothing.
 *
 * @param {Named} what
 */
const wordsOf = ({ name }) =>
  name
    .toLowerCase()
    .split(/[ ,]+/)
    .filter((word) => word !== "shade");

/**
 * "PB29", or "PBr7 sienna" beside "PBr7 umber", for each paint by its number.
 *
 * @param {Named[]} paints
 */
export const codesOf = (paints) => new Map(paints.map((paint) => [paint.number, codeAmong(paint, paints)]));

/**
 * @param {Named} paint
 * @param {Named[]} paints
 */
function codeAmong(paint, paints) {
  const namesakes = paints.filter(({ number, code }) => code === paint.code && number !== paint.number).map(wordsOf);
  const words = wordsOf(paint);
  // Nothing to tell apart, or the others have all its words and more: they say the rest.
  if (namesakes.length === 0 || namesakes.every((other) => words.every((word) => other.includes(word))))
    return paint.code;
  const telling = words.findLast((word) => !namesakes.some((other) => other.includes(word)));
  return `${paint.code} ${telling ?? words.join(" ")}`;
}
