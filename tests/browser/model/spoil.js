// Ways in which a JSON text gets spoilt: cut short, or with something else in one of its places.

/** Stands for a number beyond all range, which JSON can hold and no writer writes. */
const HUGE = "1e999 stands here";

const VALUES = [null, true, -1, 0.5, 9, 65_535, 2 ** 53, 1e300, HUGE, "", "x", "12", [], [null], {}, { length: 3 }];

const isObject = (value) => typeof value === "object" && value !== null;

/** Every place of a value as a list of keys. Of a long list of things of one kind the first stands for all. */
export function places(value, at = []) {
  if (!isObject(value)) return [at];
  const kinds = new Set(Object.values(value).map((item) => (Array.isArray(item) ? "list" : typeof item)));
  const keys = Array.isArray(value) && value.length > 2 && kinds.size === 1 ? [0] : Object.keys(value);
  return [at, ...keys.flatMap((key) => places(value[key], [...at, key]))];
}

/** The value with something else in a place. */
function withAt(value, [key, ...rest], change) {
  if (key === undefined) return change(value);
  const copy = Array.isArray(value) ? [...value] : { ...value };
  copy[key] = withAt(value[key], rest, change);
  return copy;
}

const write = (value) => JSON.stringify(value).replaceAll(JSON.stringify(HUGE), "1e999");

/** Spoilt forms of a text as `{how, at, text}`; `at` is the place, or nothing where the text itself is cut. */
export function spoilt(text) {
  const cut = [
    "",
    "{",
    "null",
    "7",
    "[]",
    text.slice(0, text.length / 2),
    text.slice(0, -1),
    `${text}}`,
    text.replace(/[a-z]/, "\u0000"),
  ];
  const whole = JSON.parse(text);
  return [
    ...cut.map((text, i) => ({ how: `cut ${i}`, at: null, text })),
    ...places(whole).flatMap((at) => inPlace(whole, at)),
  ];
}

function inPlace(whole, at) {
  const ways = VALUES.map((value) => [JSON.stringify(value), () => value]);
  const now = at.reduce((value, key) => value[key], whole);
  if (typeof now === "string")
    ways.push(
      ["short", (text) => text.slice(0, -1)],
      ["long", (text) => text.repeat(1 + 5000 / (1 + text.length))],
      ["other", (text) => `${text.slice(0, -1)}~`],
    );
  if (typeof now === "number") ways.push(["text", String], ["more", (number) => number + 1]);
  if (Array.isArray(now))
    ways.push(["twice", (list) => [...list, ...list]], ["one more", (list) => [...list, list.at(-1)]]);
  return ways
    .map(([how, change]) => ({ how: `${at.join(".") || "all"}: ${how}`, at, text: write(withAt(whole, at, change)) }))
    .filter(({ text }) => text !== write(whole));
}
