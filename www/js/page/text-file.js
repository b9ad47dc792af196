// Text of files that other programs wrote: UTF-8, UTF-16 with its mark, else what Windows programs of the West write.

import * as words from "../words/files.js";

/** @type {[string, number[]][]} */
const MARKS = [
  ["utf-16le", [0xff, 0xfe]],
  ["utf-16be", [0xfe, 0xff]],
];

/**
 * `{text, said}`: what a file says, and a sentence on how it was read where it is no UTF-8.
 *
 * @param {Blob} file
 */
export async function readText(file) {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const marked = MARKS.find(([, mark]) => mark.every((byte, i) => bytes[i] === byte));
  if (marked) return { text: new TextDecoder(marked[0]).decode(bytes), said: words.utf16 };
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes), said: "" };
  } catch {
    return {
      text: new TextDecoder("windows-1252").decode(bytes),
      said: words.windows1252,
    };
  }
}
