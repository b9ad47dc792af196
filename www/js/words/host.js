// Where links lead, and why what was typed is no address they could lead to.

export const address = "Address where the page is hosted";
export const onDisk =
  "You opened this page from your disk, where nobody else can. With the address of a hosted copy, links lead there and have a QR code.";
/** @type {(reason: string) => string} */
export const unchanged = (reason) => `${reason}. Links lead where they did.`;

// Why what was typed is no address of a page that others can open.

/** @type {(typed: string) => string} */
export const hasSpaces = (typed) => `an address has no spaces: “${typed}”`;
/** @type {(typed: string) => string} */
export const noPage = (typed) => `“${typed}” is not the address of a page, which begins with https://`;
/** @type {(typed: string) => string} */
export const onlyHere = (typed) => `the address “${typed}” works only on this device`;
/** @type {(typed: string) => string} */
export const hasPassword = (typed) => `a name or password would go along in every link: “${typed}”`;
/** @type {(typed: string) => string} */
export const unknown = (typed) => `no browser can open “${typed}”`;
/** @type {(typed: string) => string} */
export const noAddress = (typed) => `“${typed}” is not an address like https://school.example/washpath.html`;
