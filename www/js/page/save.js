// A file for the painter to keep.

import { saved } from "../words/page.js";
import { element, say } from "./dom.js";

/**
 * A file's name without its ending: after the kit, and what it is.
 *
 * @param {string} title
 * @param {string} what
 */
export const fileName = (title, what) =>
  `${title} ${what}`
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-|-$/g, "")
    .toLowerCase();

/**
 * Hands a text or bytes to the browser as a file.
 *
 * @param {BlobPart} content
 * @param {string} name
 * @param {string} type
 */
export function save(content, name, type) {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = element("a", { href: address, download: name });
  link.click();
  say(saved);
  // The browser reads it in its own time.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
