// Parts of the page that fold up.

/** @type {(id: string) => string} */
export const noFold = (id) => `“${id}” is in nothing that folds`;
