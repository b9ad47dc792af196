// A path that a recipe stands on.

/** @import { End, Part } from "./types.js" */

/**
 * Ends and share at which a recipe stands on a path: its last paint is B, what is before it A.
 *
 * @type {(parts: Part[]) => { ends: End[], share: number }}
 */
export function pathOf(parts) {
  if (parts.length === 1) return { ends: [{ parts }, { parts }], share: 0 };
  const [a, b] = [parts.slice(0, -1), parts.slice(-1)];
  /** @type {(side: Part[]) => number} */
  const volume = (side) => side.reduce((sum, [, count]) => sum + count, 0);
  return { ends: [{ parts: a }, { parts: [[b[0][0], 1]] }], share: volume(b) / volume(parts) };
}
