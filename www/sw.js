// Keeps the page for use without a network: a copy of every file, all of one version.

/* global VERSION, ASSETS: the build tells them; sources that are served as they are keep nothing. */

// Another copy of the program may be hosted below the same origin.
const PREFIX = `washpath ${self.registration.scope} `;
const CACHE = PREFIX + VERSION;

self.addEventListener("install", (event) => event.waitUntil(fill()));
self.addEventListener("activate", (event) => event.waitUntil(dropOlder()));

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const ours = new URL(request.url).origin === self.location.origin;
  if (ours && request.method === "GET") event.respondWith(answer(request));
});

// A new version waits until the person agrees: the page never changes under their hands.
self.addEventListener("message", (event) => {
  if (event.data === "skip-waiting") self.skipWaiting();
});

async function fill() {
  const cache = await caches.open(CACHE);
  // "no-cache": the browser's own cache may still hold files of an older version.
  await cache.addAll(ASSETS.map((path) => new Request(path, { cache: "no-cache" })));
}

async function dropOlder() {
  const names = await caches.keys();
  const older = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(older.map((name) => caches.delete(name)));
}

async function answer(request) {
  const cache = await caches.open(CACHE);
  // There is one page: whatever name it was opened by.
  const key = request.mode === "navigate" ? "./" : request;
  return (await cache.match(key, { ignoreSearch: true })) ?? fetch(request);
}
