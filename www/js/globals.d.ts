// What the build and the first picture leave for the modules.

/** In the one file: the core, compiled already, and the script of its worker. */
declare var packed: { core: Promise<WebAssembly.Module>; worker: Promise<Blob> } | undefined;

/** Kept once the first picture shows. */
declare var pictured: Promise<void>;

/** For the offline worker: the site's version, told by all its bytes. */
declare const VERSION: string;

/** For the offline worker: addresses of all files that the page may ask for. */
declare const ASSETS: string[];
