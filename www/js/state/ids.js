// Lasting names of kits, records and own paints: 48 bits as twelve hexadecimal digits. Pure: no page.

const BYTES = 6;

/** A name that nothing else bears. */
export const newId = () => hex(crypto.getRandomValues(new Uint8Array(BYTES)));

/** @type {(text: unknown) => boolean} */
export const isId = (text) => typeof text === "string" && /^[0-9a-f]{12}$/.test(text);

/**
 * The same name for the same text: FNV-1a of 64 bits over its UTF-8, the lower 48 kept.
 *
 * @type {(text: string) => string}
 */
export function idOf(text) {
  let hash = 0xcbf29ce484222325n;
  for (const byte of new TextEncoder().encode(text)) hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
  return BigInt.asUintN(8 * BYTES, hash)
    .toString(16)
    .padStart(2 * BYTES, "0");
}

/** @type {(bytes: Uint8Array) => string} */
const hex = (bytes) => Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
