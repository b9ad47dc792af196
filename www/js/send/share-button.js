// The button that opens the dialog for sending the kit at hand.

import { byId } from "../page/dom.js";
import { shareDialog } from "./share-dialog.js";

/** Opens the dialog for sending the kit at hand. Answers how to close it. */
export function attachShare(store, core, ask) {
  const open = shareDialog(store, core, ask);
  byId("share").addEventListener("click", open);
  return () => byId("share-dialog", HTMLDialogElement).close();
}
