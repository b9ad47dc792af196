// Keeps the page for use without a network: a copy of every file, all of one version.
//
// A page stays with the version it was opened as until it is loaded anew, whatever version is at work by then: which
// page, and which worker of a page, is of which version is noted under the browser's own number for it.

/* global VERSION, ASSETS: the build tells them; sources that are served as they are keep nothing. */

/** What this script runs as: the browser's types take it for any worker. */
const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));

// Another copy of the program may be hosted below the same origin.
const PREFIX = `washpath ${worker.registration.scope} `;
const CACHE = PREFIX + VERSION;
/** Versions by clients; no version is called so. */
const NOTES = `${PREFIX}clients`;

/** @type {(path: string) => string} */
const addressOf = (path) => new URL(path, worker.registration.scope).href;
const PAGE = addressOf("./");
const INDEX = addressOf("index.html");
/** What is answered here; the rest below the folder, and beside it, is somebody else's. */
const OURS = new Set([PAGE, INDEX, ...ASSETS.map(addressOf)]);

/** How long a note is kept of what is not open yet, in milliseconds: a page on its way is not listed. */
const ON_ITS_WAY = 60_000;
/** Notes that were read or written since this worker woke up. */
const noted = new Map();

worker.addEventListener("install", (event) => event.waitUntil(fill()));
worker.addEventListener("activate", (event) => event.waitUntil(take()));

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = request.url.split(/[?#]/)[0];
  if (request.method === "GET" && OURS.has(address))
    event.respondWith(answer(event, address === INDEX ? PAGE : address));
});

// A new version waits until the person agrees: the page never changes under their hands.
worker.addEventListener("message", (event) => {
  if (event.data === "skip-waiting") worker.skipWaiting();
});

async function fill() {
  const cache = await caches.open(CACHE);
  // "no-cache": the browser's own cache may still hold files of an older version.
  await cache.addAll(ASSETS.map((path) => new Request(path, { cache: "no-cache" })));
}

async function take() {
  // After a first visit what the page loads later comes from here too: its host may have a newer version by then.
  if ((await versions()).length === 1) {
    await worker.clients.claim();
    await Promise.all((await worker.clients.matchAll({ type: "all" })).map(({ id }) => note(id, VERSION)));
  }
  await dropUnused();
}

/** @type {(event: FetchEvent, address: string) => Promise<Response>} */
async function answer(event, address) {
  const { request, clientId, resultingClientId } = event;
  const isPage = request.mode === "navigate";
  const version = isPage ? VERSION : await versionOf(clientId);
  if (resultingClientId) event.waitUntil(note(resultingClientId, version));
  if (isPage) event.waitUntil(dropUnused());
  const kept = await caches.match(address, { cacheName: PREFIX + version });
  if (kept) return kept;
  // What is hosted is of this version at the oldest: an older page is better off without.
  return version === VERSION ? fetch(request) : Response.error();
}

/** @type {(client: string) => string} */
const noteOf = (client) => addressOf(`?client=${client}`);

/** @type {(client: string, version: string) => Promise<void>} */
async function note(client, version) {
  noted.set(client, version);
  await (await caches.open(NOTES)).put(noteOf(client), Response.json({ version, time: Date.now() }));
}

/**
 * The version that a client was opened as; of one without a note that at work now.
 *
 * @type {(client: string) => Promise<string>}
 */
async function versionOf(client) {
  if (!noted.has(client)) {
    const kept = await caches.match(noteOf(client), { cacheName: NOTES });
    if (kept) noted.set(client, (await kept.json()).version);
    else await note(client, VERSION);
  }
  return noted.get(client);
}

const versions = async () => (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== NOTES);

/** Drops versions and notes that no open page needs. */
async function dropUnused() {
  const open = new Set((await worker.clients.matchAll({ includeUncontrolled: true, type: "all" })).map(({ id }) => id));
  const notes = await caches.open(NOTES);
  const needed = new Set([CACHE]);
  for (const request of await notes.keys()) {
    const kept = await notes.match(request);
    if (!kept) continue;
    const { version, time } = await kept.json();
    if (open.has(new URL(request.url).searchParams.get("client") ?? "") || Date.now() - time < ON_ITS_WAY)
      needed.add(PREFIX + version);
    else await notes.delete(request);
  }
  await Promise.all((await versions()).filter((name) => !needed.has(name)).map((name) => caches.delete(name)));
}
