// Sending the kit: as a link, as a QR code, to a class.

import { number } from "./form.js";

/** @type {(reason: string) => string} */
export const noLink = (reason) => `This kit cannot go into a link: ${reason}. A file holds it.`;
export const someKit = "A kit of watercolours";
export const copied = "Link copied.";
export const notCopied = "The browser did not let us copy. The link is selected: copy it by hand.";
export const onDevice = "This link opens only on this device. A file opens wherever this page is.";
/** @type {(length: number) => string} */
export const length = (length) => `${length} characters. Whoever opens it sees your kit beside their own.`;
/** @type {(length: number) => string} */
export const tooLong = (length) =>
  `${number(length)} characters: mail and chat programs may cut a link as long as this, and then it cannot be read. A file arrives complete.`;

/** @type {(why: string) => string} */
export const noCode = (why) => `No QR code: ${why}.`;
export const diskHasNone = "a phone cannot open a page on your disk";
export const longHasNone = "the link is too long for a code that a camera can read";
export const code = "Point a phone’s camera at this code to open the kit.";

/** @type {(reason: string) => string} */
export const classUnchanged = (reason) => `${reason}. The link is as it was.`;
