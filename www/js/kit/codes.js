// Codes of paints shown together: where several have one code, each with a word that tells it from the others. Pure: no page.

/** Words of a name, the telling ones: "shade" tells nothing. */
const wordsOf = ({ name }) =>
  name
    .toLowerCase()
    .split(/[ ,]+/)
    .filter((word) => word !== "shade");

/** "PB29", or "PBr7 sienna" beside "PBr7 umber", for each paint by its number. */
export const codesOf = (paints) => new Map(paints.map((paint) => [paint.number, codeAmong(paint, paints)]));

function codeAmong(paint, paints) {
  const namesakes = paints.filter(({ number, code }) => code === paint.code && number !== paint.number).map(wordsOf);
  const words = wordsOf(paint);
  // Nothing to tell apart, or the others have all its words and more: they say the rest.
  if (namesakes.length === 0 || namesakes.every((other) => words.every((word) => other.includes(word))))
    return paint.code;
  const telling = words.findLast((word) => !namesakes.some((other) => other.includes(word)));
  return `${paint.code} ${telling ?? words.join(" ")}`;
}
