// Keeps the hosted page for use without a network; a new version waits until the person agrees, in each tab by itself.

import * as words from "../words/offline.js";
import { byId, notice } from "./dom.js";

export async function attachOffline() {
  // A page from a file is offline already.
  if (!location.protocol.startsWith("http") || !navigator.serviceWorker) return;
  const registration = await navigator.serviceWorker.register("sw.js");
  /** @param {ServiceWorker | null} worker */
  const watch = (worker) =>
    worker?.addEventListener("statechange", () => {
      // On a first visit nothing is at work that it would replace.
      if (worker.state === "installed" && registration.active) offer(worker);
    });
  navigator.serviceWorker.ready.then(sayReady);
  watch(registration.installing);
  if (registration.waiting) offer(registration.waiting);
  registration.addEventListener("updatefound", () => watch(registration.installing));
}

/** @param {ServiceWorker} worker */
function offer(worker) {
  notice(words.newVersion, {
    actions: [
      [
        words.useIt,
        () => {
          // Another tab may have taken it into use; this one stayed with its own.
          if (worker.state !== "installed") return location.reload();
          worker.addEventListener("statechange", () => worker.state === "activated" && location.reload());
          worker.postMessage("skip-waiting");
        },
      ],
    ],
  });
}

function sayReady() {
  byId("offline").textContent = words.ready;
}
