// Loads the page anew once a source of it changed (`serve --watch`).

const RETRY = 1000;

/** The number of changes, once it is another than this one. */
async function after(known) {
  for (;;) {
    try {
      return await (await fetch(`./changes?${known}`)).text();
    } catch {
      // The host is being started again.
      await new Promise((resolve) => setTimeout(resolve, RETRY));
    }
  }
}

const first = await after("");
while ((await after(first)) === first);
location.reload();
