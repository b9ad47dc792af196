// Reference tables of this repository: CSV with a head.

import { readFileSync } from "node:fs";

/** Rows of crate/core/tests/reference/NAME as objects by the head's names. */
export function table(name) {
  const text = readFileSync(new URL(`../../../crate/core/tests/reference/${name}`, import.meta.url), "utf8");
  const [head, ...rows] = text
    .split(/\r?\n/)
    .filter((line) => line && !line.startsWith("#"))
    .map(cells);
  return rows.map((row) => Object.fromEntries(head.map((title, i) => [title, row[i] ?? ""])));
}

/** The cells of a line; a quoted one may hold commas and doubled quotes. */
const cells = (line) =>
  [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
    ([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain,
  );

/** Every link that was ever given out: `{text, title, pans}`, pans by paint numbers as the tables write them. */
export const goldenLinks = () => ["links_v1.csv", "links_v2.csv", "links_own.csv", "links_class.csv"].flatMap(table);
