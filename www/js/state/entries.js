// Entries of storage as one tab knows them: the text of each, the version it is, and what other tabs wrote unheard.

/** @import { Known, Tell, Version } from "./types.js" */
/** @typedef {ReturnType<typeof createEntries>} Entries */

import * as device from "./device.js";
import { newId } from "./ids.js";
import { following, joined, readVersion } from "./versions.js";

/** @type {(a: unknown, b: unknown) => boolean} */
const sameValue = (a, b) => JSON.stringify(a) === JSON.stringify(b);

/**
 * Entries whose texts and versions were read at the start. `tell(fault)` hears once why nothing can be written: `denied` or `full`.
 *
 * @param {Pick<Known, "versions" | "texts">} known
 * @param {Tell} tell
 */
export function createEntries({ versions, texts }, tell) {
  const tab = newId();
  /**
   * What other tabs wrote and this one found only when it came to write.
   *
   * @type {[string, string][]}
   */
  let unheard = [];
  /** @type {string | null} */
  let told = null;

  /**
   * Writes a text; answers whether it is kept.
   *
   * @type {(key: string, text: string) => boolean}
   */
  function write(key, text) {
    if (texts.get(key) === text) return true;
    const fault = device.write(key, text);
    if (fault && fault !== told) tell(fault);
    told = fault;
    if (fault) return false;
    texts.set(key, text);
    return true;
  }

  /**
   * Writes the next version of an item, unless another tab wrote one unheard: that is taken in first. Answers whether it is kept.
   *
   * @type {(key: string, value: any) => boolean}
   */
  function put(key, value) {
    const before = versions.get(key);
    if (before && sameValue(before.value, value)) return true;
    const mine = following(before, value, { tab, now: Date.now() });
    const there = device.read(key);
    const isUnheard = there !== null && there !== texts.get(key);
    if (!isUnheard && !write(key, JSON.stringify(mine))) return false;
    versions.set(key, mine);
    if (isUnheard) unheard.push([key, there]);
    return true;
  }

  /**
   * Takes in what another tab wrote. Answers `changed`, the version that stands now where it keeps something else than before, and `loser`, one that has to be kept beside it.
   *
   * @type {(key: string, text: string) => { changed?: Version | null, loser?: Version | null }}
   */
  function join(key, text) {
    texts.set(key, text);
    let theirs;
    try {
      theirs = readVersion(text);
    } catch {
      return {}; // Not of this version of the page: it stays where it is.
    }
    const mine = versions.get(key);
    if (!mine) {
      versions.set(key, theirs);
      return { changed: theirs };
    }
    const { winner, loser } = joined(mine, theirs);
    versions.set(key, winner);
    if (winner !== theirs) write(key, JSON.stringify(winner));
    return { changed: sameValue(winner.value, mine.value) ? null : winner, loser };
  }

  /** What was found unheard, once. */
  function takeUnheard() {
    const taken = unheard;
    unheard = [];
    return taken;
  }

  return {
    write,
    put,
    join,
    takeUnheard,
    has: (/** @type {string} */ key) => versions.has(key),
    isHeard: (/** @type {string} */ key, /** @type {string} */ text) => texts.get(key) === text,
  };
}
