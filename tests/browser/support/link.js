// Writes links by the format's description in crate/core/src/kit/link/mod.rs, apart from the program's own writer.

/** CRC-16/IBM-SDLC: polynomial 0x1021 reflected, all ones in, inverted out. */
export function crc(bytes) {
  let register = 0xffff;
  for (const byte of bytes) {
    register ^= byte;
    for (let bit = 0; bit < 8; bit += 1) register = register & 1 ? (register >> 1) ^ 0x8408 : register >> 1;
  }
  return ~register & 0xffff;
}

function varint(value) {
  const bytes = [];
  for (; value >= 0x80; value >>= 7) bytes.push((value & 0x7f) | 0x80);
  return [...bytes, value];
}

/** Bytes as a link's text, with their checksum. */
export function sealed(bytes) {
  const sum = crc(bytes);
  return Buffer.from([...bytes, sum & 0xff, sum >> 8]).toString("base64url");
}

/** A kit as a link's text; a pan is a list of one paint's number or two. */
export function linkText({ version = 1, capacity = 12, stock = 0, pans = [], title = "" }) {
  const pan = ([first, second]) =>
    second === undefined ? varint(2 * first) : [...varint(2 * first + 1), ...varint(second)];
  return sealed([version, capacity, stock, pans.length, ...pans.flatMap(pan), ...Buffer.from(title, "utf8")]);
}
