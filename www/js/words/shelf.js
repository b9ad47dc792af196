// The shelf, and finding a paint on it.

/** @type {(found: number, all: number) => string} */
export const count = (found, all) => `${found} of ${all} paints`;
export const noneIsAll = "No paint is all of this. Ask for less.";
/** @type {(typed: string) => string} */
export const noneIsCalled = (typed) => `No paint is called “${typed}”. Try a code such as PB29, or a hue.`;
export const own = "Own";
/** @type {(paint: { name: string, code: string }) => string} */
export const ownIt = ({ name, code }) => `Own ${name}, ${code}`;

export const order = "In order of";
export const only = "Only paints that are …";

/** What paints can be asked to be. */
export const traits = {
  transparent: "Transparent",
  opaque: "Opaque",
  granulating: "Granulating",
  smooth: "Smooth",
  lifting: "Lifts",
  lightfast: "Lightfast",
  mild: "No caution",
  owned: "Mine",
  measured: "Measured",
};

/** What the shelf can be put in order by. */
export const orders = {
  hue: "Hue",
  name: "Name",
  code: "Code",
  value: "Darkest first",
  chroma: "Brightest first",
  transparency: "Most transparent",
  granulation: "Most granulating",
  lightfast: "Most lightfast",
};
