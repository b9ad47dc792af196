// A kit and the shelf as tables and as a style sheet. Pure: no page.

/** @import { Core, Kit, Pair, Part, Shelf, Studio } from "../state/types.js" */

/** @typedef {string | number | null | undefined} Cell */
/** @typedef {{ name: string, code: string, key: string, kind: string }} Named */
/** @typedef {Named & { load: number, lab: number[], hex: string }} PaletteColour */

import { LOADS } from "../../pkg/facts.js";
import { paintsOf } from "../state/kit.js";
import { colours } from "../words/files.js";

const [, , [WASH], [TINT]] = LOADS;

/**
 * A cell of RFC 4180; what a spreadsheet would take for a formula stands behind a quotation mark.
 *
 * The core quotes the cells of the log alike (`text/csv.rs`), but in the worker's half: every table would wait for an
 * answer of it, and in the page's half its writer would be loaded by every visit, before the first picture.
 *
 * @param {Cell} value
 */
function cell(value) {
  if (value == null) return "";
  const text = typeof value === "string" && /^\s*[=+\-@\t\r]/.test(value) ? `'${value}` : String(value);
  return /[",;\t\r\n]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text;
}

/**
 * Rows as CSV with a byte order mark, so that a spreadsheet reads letters beyond ASCII.
 *
 * @param {Cell[][]} rows
 */
export const csvOf = (rows) => `\ufeff${rows.map((row) => `${row.map(cell).join(",")}\r\n`).join("")}`;

/** @param {number} value */
const tenth = (value) => Math.round(value * 10) / 10;

/**
 * Both ends the same: a recipe alone.
 *
 * @param {Part[]} parts
 */
const alone = (parts) => ({ ends: [parts, parts], laid: 0 });

/**
 * @param {Studio} studio
 * @param {Pair} pair
 * @param {number} share
 * @param {number} load
 */
const labAt = (studio, pair, share, load) => [...studio.lab_of(pair, share, load)];

/**
 * Every paint: its masstone and a light wash, its ratings, its caution. `studio` sees in daylight.
 *
 * @param {Shelf} shelf
 * @param {Studio} studio
 */
export function shelfTable(shelf, studio) {
  /**
   * @param {number} number
   * @param {number} load
   */
  const lab = (number, load) => labAt(studio, alone([[number, 1]]), 0, load).map(tenth);
  return [
    [
      "code",
      "name",
      "tier",
      "L*",
      "a*",
      "b*",
      "tint L*",
      "tint a*",
      "tint b*",
      "transparency",
      "staining",
      "granulation",
      "lightfastness",
      "caution",
    ],
    ...shelf.all.map(({ number, code, name, tier, transparency, staining, granulation, lightfastTint, caution }) => [
      code,
      name,
      tier,
      ...lab(number, 1),
      ...lab(number, TINT),
      ...[transparency, staining, granulation, lightfastTint].map((rating) => (rating == null ? null : tenth(rating))),
      caution,
    ]),
  ];
}

/**
 * Every pair of the kit at all parts a brush measures, in five washes; `rest` lets the page breathe between pairs.
 *
 * @param {Kit} kit
 * @param {Shelf} shelf
 * @param {Studio} studio
 * @param {Core} core
 * @param {() => Promise<unknown>} rest
 */
export async function mixTable(kit, shelf, studio, core, rest) {
  /** @type {Cell[][]} */
  const rows = [
    [
      "A",
      "code of A",
      "B",
      "code of B",
      "parts of A",
      "parts of B",
      "load",
      "L*",
      "a*",
      "b*",
      "C*",
      "h",
      "hex",
      "expected error",
    ],
  ];
  const paints = paintsOf(kit);
  for (const [i, a] of paints.entries()) {
    for (const b of paints.slice(i + 1)) {
      /** @type {Pair} */
      const pair = { ends: [[[a, 1]], [[b, 1]]], laid: 0 };
      const names = [a, b].flatMap((paint) => [shelf.paint(paint).name, shelf.paint(paint).code]);
      for (let share = studio.next_parts(0, true); share < 1; share = studio.next_parts(share, true)) {
        for (const [load] of LOADS) {
          const { parts, swatch, expected } = studio.mix(pair, share, load);
          const lab = labAt(studio, pair, share, load);
          rows.push([
            ...names,
            ...parts,
            load,
            ...lab.map(tenth),
            tenth(swatch.chroma),
            Math.round(swatch.hue),
            core.hex_of(Float32Array.from(lab)),
            tenth(expected),
          ]);
        }
      }
      await rest();
    }
  }
  return rows;
}

/**
 * The kit's paints as masstone and wash, and its puddles: `{name, code, key, kind, load, lab, hex}`.
 *
 * @param {Kit} kit
 * @param {Shelf} shelf
 * @param {Studio} studio
 * @param {Core} core
 */
export function paletteOf(kit, shelf, studio, core) {
  /**
   * @param {Part[]} parts
   * @param {number} load
   * @param {Named} of
   */
  const colour = (parts, load, of) => {
    const lab = labAt(studio, alone(parts), 0, load);
    return { ...of, load, lab: lab.map(tenth), hex: core.hex_of(Float32Array.from(lab)) };
  };
  return [
    ...paintsOf(kit).flatMap((paint) => {
      const { name, code, key } = shelf.paint(paint);
      /** @type {[string, number][]} */
      const kinds = [
        ["masstone", 1],
        ["wash", WASH],
      ];
      return kinds.map(([kind, load]) => colour([[paint, 1]], load, { name, code, key: `${key}-${kind}`, kind }));
    }),
    ...kit.puddles.map(({ parts, load }, i) =>
      colour(parts, load, {
        name: parts.map(([paint, count]) => `${count} ${shelf.paint(paint).name}`).join(" + "),
        code: "",
        key: `puddle-${i + 1}`,
        kind: "puddle",
      }),
    ),
  ];
}

/** @param {PaletteColour[]} palette */
export const paletteTable = (palette) => [
  ["name", "code", "kind", "load", "L*", "a*", "b*", "hex"],
  ...palette.map(({ name, code, kind, load, lab, hex }) => [name, code, kind, load, ...lab, hex]),
];

/**
 * The palette as custom properties of CSS.
 *
 * @param {string} title
 * @param {PaletteColour[]} palette
 */
export function paletteStyle(title, palette) {
  const taken = new Set();
  /** @param {string} key */
  const property = (key) => {
    const plain = key
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, "-")
      .replace(/^-|-$/g, "");
    for (let count = 1; ; count += 1) {
      const tried = count === 1 ? `--${plain}` : `--${plain}-${count}`;
      if (taken.has(tried)) continue;
      taken.add(tried);
      return tried;
    }
  };
  /** @param {string} text */
  const comment = (text) => `/* ${text.replace(/\*\//g, "* /")} */`;
  return `${comment(colours(title))}\n:root {\n${palette.map(({ key, name, kind, hex }) => `  ${property(key)}: ${hex}; ${comment(`${name}, ${kind}`)}`).join("\n")}\n}\n`;
}
