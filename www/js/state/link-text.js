// A link's text as it comes out of an address: mail and chat programs add to links, break them and encode them again.

/** Runs of bytes in percent signs, as an address writes what it may not hold. */
const ENCODED = /(?:%[\da-f]{2})+/gi;
/** Line ends, spaces, and what nobody sees: controls, zero-width and direction marks. */
const UNSEEN = /[\s\p{C}]/gu;

/**
 * The text of a kit's link in an address's fragment, or nothing where there is none; whether it is whole, its checksum says.
 *
 * @type {(hash: string) => string | null}
 */
export function linkText(hash) {
  const plain = decoded(hash).replace(UNSEEN, "");
  // Other programs' parameters may stand in front or behind.
  const value = plain.match(/(?:^|[#!/?&])kit=([^#?&]*)/i)?.[1];
  if (value === undefined) return null;
  // Mail of seven bits writes "=" as "=3D", and breaks lines behind one "="; every text begins with an A.
  const text = value.replace(/^3D(?=A)/, "").replaceAll("=", "");
  return text.match(/^[\w-]*/)?.[0] ?? "";
}

/**
 * Without percent signs, even where they were encoded again.
 *
 * @type {(text: string) => string}
 */
function decoded(text) {
  for (let turn = 0; turn < 3 && text.includes("%"); turn += 1) {
    text = text.replace(ENCODED, (run) => {
      try {
        return decodeURIComponent(run);
      } catch {
        return "";
      }
    });
  }
  return text;
}
