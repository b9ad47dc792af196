// Parts of the page that fold up.

import { noFold } from "../words/fold.js";

/**
 * What folds a part of the page up.
 *
 * @param {Element} part
 */
export function detailsAround(part) {
  const details = part.closest("details");
  if (!details) throw new Error(noFold(part.id));
  return details;
}
