// Starts the page that is one file: style sheet, body, modules and core lie in it as text, packed by pack/text.rs and LZMA.
// A module needs an address, and a name for others to import it by: an import map of `data:` addresses gives both.
// The packer puts in PACKED and UNPACKED, in bytes, and FIRST, the name of the first module.
{
  const { textContent } = document.getElementById("packed");

  /** Bytes of the text: 13 bits in two letters. */
  const read = () => {
    const digit = (i) => {
      const code = textContent.charCodeAt(i);
      return code - (code > 60 ? 36 : 35);
    };
    const bytes = new Uint8Array(PACKED);
    for (let i = 0, held = 0, bits = 0, filled = 0; i < textContent.length; i += 2) {
      held = (held << 13) | (91 * digit(i) + digit(i + 1));
      for (bits += 13; bits >= 8 && filled < bytes.length; bytes[filled++] = held >> (bits -= 8));
    }
    return bytes;
  };

  /** LZMA without a header, lc 3, lp 0, pb 0; names and steps are those of Igor Pavlov's "LZMA specification", 2015. */
  const unpack = (bytes) => {
    const out = new Uint8Array(UNPACKED);
    const [MATCH, REP, REP_G0, REP_G1, REP_G2, REP_LONG] = [0, 12, 24, 36, 48, 60];
    const [SLOT, SPECIAL, ALIGN, LENGTH, REP_LENGTH, LITERAL] = [72, 328, 456, 472, 746, 1020];
    const chances = new Uint16Array(LITERAL + 0x300 * 8).fill(1024);
    // In an array, as every step writes them: numbers past 31 bits would each be an object of their own.
    const now = Uint32Array.of(0xffffffff, new DataView(bytes.buffer).getUint32(1));
    const [RANGE, CODE] = [0, 1];
    let at = 5;

    const fill = () => {
      if (now[RANGE] >= 0x1000000) return;
      now[RANGE] <<= 8;
      now[CODE] = (now[CODE] << 8) | bytes[at++];
    };
    const bit = (i) => {
      const bound = (now[RANGE] >>> 11) * chances[i];
      const one = now[CODE] >= bound;
      if (one) {
        now[RANGE] -= bound;
        now[CODE] -= bound;
        chances[i] -= chances[i] >> 5;
      } else {
        now[RANGE] = bound;
        chances[i] += (2048 - chances[i]) >> 5;
      }
      fill();
      return one ? 1 : 0;
    };
    /** A number of so many bits, highest first, with a one before it. */
    const tree = (base, bits) => {
      let found = 1;
      for (; bits > 0; bits -= 1) found = (found << 1) | bit(base + found);
      return found;
    };
    const reversed = (base, bits) => {
      let [found, place] = [0, 1];
      for (let i = 0; i < bits; i += 1) {
        const one = bit(base + place);
        place = (place << 1) | one;
        found |= one << i;
      }
      return found;
    };
    const even = (bits) => {
      let found = 0;
      for (; bits > 0; bits -= 1) {
        now[RANGE] >>>= 1;
        const one = now[CODE] >= now[RANGE];
        if (one) now[CODE] -= now[RANGE];
        found = (found << 1) | (one ? 1 : 0);
        fill();
      }
      return found;
    };
    const length = (base) => {
      if (!bit(base)) return tree(base + 2, 3) - 8 + 2;
      return bit(base + 1) ? tree(base + 18, 8) - 256 + 18 : tree(base + 10, 3) - 8 + 10;
    };

    let state = 0;
    let [rep0, rep1, rep2, rep3] = [0, 0, 0, 0];
    for (let n = 0; n < out.length; ) {
      if (!bit(MATCH + state)) {
        const base = LITERAL + 0x300 * ((n ? out[n - 1] : 0) >> 5);
        let letter = 1;
        if (state >= 7) {
          for (let match = out[n - rep0 - 1]; letter < 0x100; match <<= 1) {
            const expected = (match >> 7) & 1;
            const one = bit(base + 0x100 * (1 + expected) + letter);
            letter = (letter << 1) | one;
            if (one !== expected) break;
          }
        }
        while (letter < 0x100) letter = (letter << 1) | bit(base + letter);
        out[n++] = letter;
        state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
        continue;
      }
      let count = 1;
      if (!bit(REP + state)) {
        [rep1, rep2, rep3] = [rep0, rep1, rep2];
        count = length(LENGTH);
        state = state < 7 ? 7 : 10;
        const slot = tree(SLOT + 64 * Math.min(count - 2, 3), 6) - 64;
        const bits = (slot >> 1) - 1;
        rep0 = slot < 4 ? slot : (2 | (slot & 1)) << bits;
        if (slot >= 14) rep0 += (even(bits - 4) << 4) + reversed(ALIGN, 4);
        else if (slot >= 4) rep0 += reversed(SPECIAL + rep0 - slot, bits);
      } else {
        let short = false;
        if (!bit(REP_G0 + state)) short = !bit(REP_LONG + state);
        else if (!bit(REP_G1 + state)) [rep0, rep1] = [rep1, rep0];
        else if (!bit(REP_G2 + state)) [rep0, rep1, rep2] = [rep2, rep0, rep1];
        else [rep0, rep1, rep2, rep3] = [rep3, rep0, rep1, rep2];
        if (!short) count = length(REP_LENGTH);
        state = short ? (state < 7 ? 9 : 11) : state < 7 ? 8 : 11;
      }
      for (; count > 0; count -= 1, n += 1) out[n] = out[n - rep0 - 1];
    }
    return out.buffer;
  };

  const unpacked = unpack(read());
  const [size] = new Uint32Array(unpacked, 0, 1);
  const { style, body, modules } = JSON.parse(new TextDecoder().decode(new Uint8Array(unpacked, 4, size)));
  document.getElementById("veil").textContent = style;
  // Laid out once: the first module shows it when the core is there, and by then its letters are.
  document.body.hidden = true;
  document.body.innerHTML = body;
  document.fonts.load('1em "Source Sans 3"');
  globalThis.packedCore = unpacked.slice(4 + size);
  const imports = {};
  for (const name in modules) imports[name] = `data:text/javascript;charset=utf-8,${encodeURIComponent(modules[name])}`;
  const map = document.createElement("script");
  map.type = "importmap";
  map.textContent = JSON.stringify({ imports });
  document.head.append(map);
  import(FIRST).catch((error) => {
    document.body.hidden = false;
    throw error;
  });
}
