// Starts the page that is one file: its modules and its core lie in it as text, packed by pack/text.rs and gzip.
// A module needs an address, and a name for others to import it by: an import map of `data:` addresses gives both.
// The packer puts in LENGTH, in bytes, and FIRST, the name of the first module.
{
  const { textContent } = document.getElementById("packed");
  const digit = (i) => {
    const code = textContent.charCodeAt(i);
    return code - (code > 60 ? 36 : 35);
  };
  const bytes = new Uint8Array(LENGTH);
  for (let i = 0, held = 0, bits = 0, filled = 0; i < textContent.length; i += 2) {
    held = (held << 13) | (91 * digit(i) + digit(i + 1));
    for (bits += 13; bits >= 8 && filled < bytes.length; bytes[filled++] = held >> (bits -= 8));
  }

  const { readable, writable } = new DecompressionStream("gzip");
  new Response(bytes).body.pipeTo(writable);
  new Response(readable).arrayBuffer().then((unpacked) => {
    const [length] = new Uint32Array(unpacked, 0, 1);
    const modules = JSON.parse(new TextDecoder().decode(new Uint8Array(unpacked, 4, length)));
    globalThis.packedCore = unpacked.slice(4 + length);
    const imports = {};
    for (const name in modules) imports[name] = `data:text/javascript;charset=utf-8,${encodeURIComponent(modules[name])}`;
    const map = document.createElement("script");
    map.type = "importmap";
    map.textContent = JSON.stringify({ imports });
    document.head.append(map);
    return import(FIRST);
  });
}
