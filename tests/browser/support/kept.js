// What the page keeps in the browser's storage: an entry for each kit, own paint, record and mark, and one for looks.

const PREFIX = "washpath/";

/** Every entry by its key, as it is written. */
export const texts = (page) =>
  page.evaluate(
    (prefix) =>
      Object.fromEntries(
        Object.entries(localStorage)
          .filter(([key]) => key.startsWith(prefix))
          .map(([key, text]) => [key.slice(prefix.length), text]),
      ),
    PREFIX,
  );

/** What is kept of a kind, such as `record`, by key; what was thrown away is left out. */
export async function kept(page, kind) {
  const versions = Object.entries(await texts(page))
    .filter(([key]) => key.startsWith(`${kind}/`))
    .map(([key, text]) => [key, JSON.parse(text).value]);
  return Object.fromEntries(versions.filter(([, value]) => value !== null));
}

/** Once the hand has rested, how the page is looked at is kept too: until its entry holds `sign`. */
export const looksKept = (page, sign) =>
  page.waitForFunction(([key, sign]) => localStorage.getItem(key)?.includes(sign), [`${PREFIX}looks`, sign]);

/** Writes entries and takes away those that are null, as another tab or a fault of the disk would. */
export const put = (page, entries) =>
  page.evaluate(
    ([prefix, entries]) => {
      for (const [key, text] of Object.entries(entries)) {
        if (text === null) localStorage.removeItem(prefix + key);
        else localStorage.setItem(prefix + key, text);
      }
    },
    [PREFIX, entries],
  );
