// Sends the kit at hand: as a link, as a QR code, to a class.

import { briefOf } from "../mix/brief.js";
import { byId } from "../page/dom.js";
import { hostField, isHosted, linkOf } from "./host.js";

/** Longest link that mail and chat programs may be trusted with. */
const LONGEST_SAFE = 2000;

/** The dialog with the link of the kit at hand and its QR code. Answers how to open it. */
export function shareDialog(store, core, ask) {
  const dialog = byId("share-dialog");
  const field = byId("share-link");
  const code = byId("share-code");
  const send = byId("share-send");
  const note = byId("class-note");
  const tasks = byId("class-tasks");
  const ways = [...byId("share-ways").children];
  const hosting = hostField(toLink);
  byId("share-long").after(hosting.node);
  const show = (name) => {
    for (const way of ways) {
      way.setAttribute("aria-pressed", String(way.dataset.show === name));
      byId(way.dataset.show).hidden = way.dataset.show !== name;
    }
    byId("share-copy").hidden = name !== "share-by-link";
    send.hidden = !navigator.share || name !== "share-by-link" || !isHosted();
  };
  for (const way of ways) way.addEventListener("click", () => show(way.dataset.show));

  function open() {
    const { brief } = store.get().kit;
    note.value = brief?.note ?? "";
    tasks.value = brief?.tasks.join("\n") ?? "";
    byId("class").open = Boolean(brief);
    byId("class-said").textContent = "";
    byId("file-preview").replaceChildren();
    hosting.show();
    toLink();
    dialog.showModal();
    field.select();
  }

  function toLink() {
    show("share-by-link");
    showLink();
  }

  function showLink() {
    try {
      field.value = linkOf(store.get(), core);
    } catch (error) {
      field.value = "";
      return tell(`This kit cannot go into a link: ${error.message}. A file holds it.`, true);
    }
    const { length } = field.value;
    if (!isHosted()) tell("This link opens on this device alone. A file opens wherever the page is.", true);
    else if (length <= LONGEST_SAFE)
      tell(`${length} characters. Whoever opens it sees your kit beside their own.`, false);
    else
      tell(
        `${length.toLocaleString("en")} characters: mail and chat programs may cut a link as long as this, and then it cannot be read. A file arrives whole.`,
        true,
      );
    showCode(field.value);
  }

  function tell(text, offersFile) {
    byId("share-said").textContent = text;
    byId("share-long").hidden = !offersFile;
  }

  for (const typed of [note, tasks]) {
    typed.addEventListener("change", () => {
      try {
        const { kit } = store.get();
        store.set({ kit: { ...kit, brief: briefOf(note.value, tasks.value) } });
        byId("class-said").textContent = "";
        showLink();
      } catch (error) {
        byId("class-said").textContent = `${error.message}. The link is as it was.`;
      }
    });
  }
  send.addEventListener("click", () => {
    const { title } = store.get().kit;
    // Whoever closes the list of ways to send has changed their mind: that is no fault.
    navigator.share({ title: title || "A kit of watercolours", url: field.value }).catch(() => {});
  });

  async function showCode(link) {
    const caption = byId("share-code-said");
    code.hidden = true;
    caption.textContent = "";
    if (!isHosted()) {
      caption.textContent = "No QR code: a telephone cannot open a page on your disk.";
      return;
    }
    if (link.length > LONGEST_SAFE) {
      caption.textContent = "No QR code: it would be too fine for a camera.";
      return;
    }
    try {
      const svg = await ask("qr", { link });
      code.src = `data:image/svg+xml,${encodeURIComponent(svg)}`;
      code.hidden = false;
      caption.textContent = "A telephone’s camera opens the kit from this code.";
    } catch (error) {
      caption.textContent = `No QR code: ${error.message}.`;
    }
  }

  byId("share-copy").addEventListener("click", async () => {
    byId("share-said").textContent = (await copied(field))
      ? "Link copied."
      : "The browser did not let us copy. The link is selected: copy it by hand.";
  });
  return open;
}

async function copied(field) {
  try {
    await navigator.clipboard.writeText(field.value);
    return true;
  } catch {
    field.focus();
    field.select();
    return false;
  }
}
