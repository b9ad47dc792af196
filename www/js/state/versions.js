// Versions of one kept item, as several tabs write them: which of two is the later, and whether one knew of the other.
// Pure: no page.
//
// A version is `{at, by, seen, value}`: when and by which tab it was written, for every tab the last of its versions that
// this one came after, and what is kept, or null where it was thrown away.

/** @import { Version } from "./types.js" */

import { noVersion } from "../words/state.js";

/** Most tabs a version remembers; of one that is forgotten a change may be kept twice, never lost. */
const MOST_SEEN = 6;

/**
 * The next version of an item, by this tab: later than every version it follows, even where clocks disagree.
 *
 * @type {(before: Version | undefined, value: any, by: { tab: string, now: number }) => Version}
 */
export function following(before, value, { tab, now }) {
  const seen = before ? { ...before.seen, [before.by]: before.at } : {};
  const last = Object.entries(seen)
    .filter(([by]) => by !== tab)
    .sort(([, a], [, b]) => b - a)
    .slice(0, MOST_SEEN);
  return {
    at: Math.max(now, before ? Math.min(before.at + 1, Number.MAX_SAFE_INTEGER) : 0),
    by: tab,
    seen: Object.fromEntries(last),
    value,
  };
}

/** @type {(a: Version, b: Version) => boolean} */
const isAfter = (a, b) => a.at > b.at || (a.at === b.at && a.by > b.by);

/**
 * Whether `version` was written by one who knew `other`.
 *
 * @type {(version: Version, other: Version) => boolean}
 */
const knew = (version, other) =>
  version.by === other.by ? version.at >= other.at : (version.seen[other.by] ?? -Infinity) >= other.at;

/**
 * Two versions of an item made one: `{winner, loser, isNew}`. `loser` is the other one where neither knew of the other and
 * both keep something else, so that it has to be kept as well. `isNew` says that the winner is neither of the two as it stood.
 *
 * @type {(mine: Version, theirs: Version) => { winner: Version, loser: Version | null, isNew: boolean }}
 */
export function joined(mine, theirs) {
  if (knew(theirs, mine)) return { winner: theirs, loser: null, isNew: false };
  if (knew(mine, theirs)) return { winner: mine, loser: null, isNew: false };
  const [later, earlier] = isAfter(theirs, mine) ? [theirs, mine] : [mine, theirs];
  // What was changed in one tab while another threw it away stays.
  const winner = later.value === null ? earlier : later;
  const loser = winner === later ? earlier : later;
  const seen = { ...loser.seen, ...winner.seen, [loser.by]: loser.at };
  const isLost = loser.value !== null && JSON.stringify(loser.value) !== JSON.stringify(winner.value);
  return { winner: { ...winner, at: later.at, seen }, loser: isLost ? loser : null, isNew: true };
}

/** @type {(value: unknown) => boolean} */
const isCount = (value) => typeof value === "number" && Number.isSafeInteger(value) && value >= 0;
/** @type {(value: unknown) => boolean} */
const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);

/**
 * A version as it was written. Throws where it is none.
 *
 * @type {(text: string) => Version}
 */
export function readVersion(text) {
  const version = JSON.parse(text);
  const isOne =
    isObject(version) &&
    isCount(version.at) &&
    typeof version.by === "string" &&
    isObject(version.seen) &&
    Object.values(version.seen).every(isCount) &&
    version.value !== undefined;
  if (!isOne) throw new Error(noVersion);
  return version;
}
