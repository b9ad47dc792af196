// The button that opens the dialog for sending the kit at hand.

/** @import { Ask, Core, Store } from "../state/types.js" */

import { byId } from "../page/dom.js";
import { shareDialog } from "./send-dialog.js";

/**
 * Opens the dialog for sending the kit at hand. Answers how to close it.
 *
 * @param {Store} store
 * @param {Core} core
 * @param {Ask} ask
 */
export function attachShare(store, core, ask) {
  const open = shareDialog(store, core, ask);
  byId("share").addEventListener("click", open);
  return () => byId("share-dialog", HTMLDialogElement).close();
}
