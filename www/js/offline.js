// Keeps the hosted page for use without a network; a new version waits until the person agrees.

import { byId, notice } from "./dom.js";

export async function attachOffline() {
  // A page from a file is offline already.
  if (!location.protocol.startsWith("http") || !navigator.serviceWorker) return;
  const first = !navigator.serviceWorker.controller;
  const registration = await navigator.serviceWorker.register("sw.js");
  const watch = (worker) => worker?.addEventListener("statechange", () => {
    if (worker.state === "installed" && !first) offer(worker);
  });
  navigator.serviceWorker.ready.then(sayReady);
  watch(registration.installing);
  if (registration.waiting) offer(registration.waiting);
  registration.addEventListener("updatefound", () => watch(registration.installing));
}

function offer(worker) {
  notice("A new version is ready.", {
    actions: [["Use it now", () => {
      navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
      worker.postMessage("skip-waiting");
    }]],
  });
}

function sayReady() {
  byId("offline").textContent = "works offline";
}
