// Why a kit file, or a part of it, cannot be read.

export const tooLong = "it is longer than 4 MB, which no kit file is";
export const noJson = "it is not JSON, or was cut short on its way";
export const noKitFile = "it is not a kit file, as it does not begin with “washpath” and a version";
/** @type {(version: number, read: number) => string} */
export const laterVersion = (version, read) =>
  `it is of version ${version}, and this page reads version ${read}: open it with a newer page`;

/** @type {(what: string, reason: string) => string} */
export const fault = (what, reason) => `${what}: ${reason}`;
/** @type {(faults: number) => string} */
export const more = (faults) => `and ${faults} more`;
export const unknownKey = "is not known and was left out";
export const noList = "is not a list";
/** @type {(beyond: number, most: number) => string} */
export const beyond = (beyond, most) => `${beyond} beyond ${most} are left out`;
/** @type {(most: number) => string} */
export const cut = (most) => `is cut to ${most} characters`;
/** @type {(paint: string) => string} */
export const noPaint = (paint) => `there is no paint ${paint}`;
/** @type {(paint: string) => string} */
export const paintLeft = (paint) => `${paint} is left out`;
/** @type {(most: number) => string} */
export const noParts = (most) => `its parts are not a list of up to ${most}`;
export const noPart = "a part is a paint and a count";
export const sameName = "a paint of this name stands before it";
/** @type {(reason: string) => string} */
export const noFilm = (reason) => `no film shows its swatches (${reason})`;
export const emptyMixture = "a mixture of nothing";
export const noTitle = "its title is not text";
export const noPan = "a pan is a list of one paint or two";
/** @type {(paper: string) => string} */
export const noPaper = (paper) => `there is no paper ${paper}`;
export const noObject = "is not an object";
/** @type {(text: string) => string} */
export const quoted = (text) => `“${text}”`;
export const noText = "(not text)";
