// Starts the page that is one file. Its core, its script and its worker's script lie in it as gzip, in base64; the core
// compiles while it unpacks, once for the page and its worker (`www/js/core.js`, `www/js/adviser.js`).

const unpacked = (id, type) => {
  const letters = atob(document.getElementById(id).textContent);
  const bytes = new Uint8Array(letters.length);
  for (let i = 0; i < bytes.length; i += 1) bytes[i] = letters.charCodeAt(i);
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(stream, { headers: { "content-type": type } });
};

// The first picture first (`www/js/looks.js`).
await globalThis.pictured;
globalThis.packed = { core: WebAssembly.compileStreaming(unpacked("packed-core", "application/wasm")), worker: unpacked("packed-worker", "text/javascript").blob() };
// Whoever asks hears of a failure.
globalThis.packed.core.catch(() => {});
// The page's policy knows this text by its hash.
const script = document.createElement("script");
script.type = "module";
script.textContent = await unpacked("packed-script", "text/javascript").text();
document.head.append(script);
