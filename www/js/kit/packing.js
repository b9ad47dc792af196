// Packing a paint from a list.

/** @import { Paint, Store } from "../state/types.js" */

import { notice } from "../page/dom.js";
import { isFull, pack } from "../state/pans.js";
import * as words from "../words/tin.js";
import { editKit } from "./edit.js";

/**
 * Packs a paint in a pan of its own, or says that the tin is full.
 *
 * @param {Store} store
 * @param {Pick<Paint, "number" | "name">} what
 */
export function packPaint(store, { number, name }) {
  const { kit } = store.get();
  if (isFull(kit)) return notice(words.full(kit.capacity), { seconds: 8 });
  editKit(store, (kit) => pack(kit, number), words.nowPacked(name));
}
