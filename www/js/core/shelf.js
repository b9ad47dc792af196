// The shelf: every paint there is.

/** @import { Paint, Shelf } from "../state/types.js" */

import { gonePaint } from "../words/terms.js";

/**
 * Paints by number and by key, and all in the table's order.
 *
 * @type {(paints: Paint[]) => Shelf}
 */
export function createShelf(paints) {
  /** @type {Map<number, Paint>} */
  let byNumber;
  /** @type {Map<string, Paint>} */
  let byKey;
  /** @type {Shelf} */
  const shelf = {
    all: paints,
    get: (number) => byNumber.get(number),
    paint(number) {
      const found = byNumber.get(number);
      if (!found) throw new Error(gonePaint);
      return found;
    },
    find: (key) => byKey.get(key),
    /** Other paints, as those of the painter's own come and go. */
    fill(paints) {
      shelf.all = paints;
      byNumber = new Map(paints.map((paint) => [paint.number, paint]));
      byKey = new Map(paints.map((paint) => [paint.key, paint]));
    },
  };
  shelf.fill(paints);
  return shelf;
}
