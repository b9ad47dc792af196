// Sends the kit at hand: as a link, as a QR code, to a class.

/** @import { Ask, Core, Store } from "../state/types.js" */

import { all, byId } from "../page/dom.js";
import * as words from "../words/send.js";
import { attachClassFields } from "./class-fields.js";
import { hostField, isHosted, linkOf } from "./host.js";

/** Longest link that mail and chat programs may be trusted with. */
const LONGEST_SAFE = 2000;

/**
 * The dialog with the link of the kit at hand and its QR code. Answers how to open it.
 *
 * @param {Store} store
 * @param {Core} core
 * @param {Ask} ask
 */
export function shareDialog(store, core, ask) {
  const field = byId("share-link", HTMLTextAreaElement);
  const hosting = hostField(toLink);
  byId("share-long").after(hosting.node);
  const showWay = attachWays();
  const showClass = attachClassFields(store, showLink);

  function open() {
    showClass();
    byId("file-preview").replaceChildren();
    hosting.show();
    toLink();
    byId("share-dialog", HTMLDialogElement).showModal();
    field.select();
  }

  function toLink() {
    showWay("share-by-link");
    showLink();
  }

  function showLink() {
    try {
      field.value = linkOf(store.get(), core);
    } catch (error) {
      field.value = "";
      return tell(words.noLink(error.message), true);
    }
    tellLength(field.value);
    showCode(field.value, ask);
  }

  byId("share-send").addEventListener("click", () => {
    const { title } = store.get().kit;
    // Whoever closes the list of ways to send has changed their mind: that is no fault.
    navigator.share({ title: title || words.someKit, url: field.value }).catch(() => {});
  });
  byId("share-copy").addEventListener("click", async () => {
    byId("share-said").textContent = (await copied(field)) ? words.copied : words.notCopied;
  });
  return open;
}

/** Link, class and file take turns in the dialog. Answers a verb that shows one. */
function attachWays() {
  const ways = all(byId("share-ways"), "[data-show]");
  /** @param {string} name */
  const show = (name) => {
    const isLink = name === "share-by-link";
    for (const way of ways) {
      const { show: shown = "" } = way.dataset;
      way.setAttribute("aria-pressed", String(shown === name));
      byId(shown).hidden = shown !== name;
    }
    byId("share-copy").hidden = !isLink;
    byId("share-send").hidden = !navigator.share || !isLink || !isHosted();
  };
  for (const way of ways) way.addEventListener("click", () => show(way.dataset.show ?? ""));
  return show;
}

/**
 * Says how far a link carries, and offers a file where that is not far enough.
 *
 * @param {string} what
 */
function tellLength({ length }) {
  if (!isHosted()) return tell(words.onDevice, true);
  if (length <= LONGEST_SAFE) return tell(words.length(length), false);
  tell(words.tooLong(length), true);
}

/**
 * @param {string} text
 * @param {boolean} offersFile
 */
function tell(text, offersFile) {
  byId("share-said").textContent = text;
  byId("share-long").hidden = !offersFile;
}

/**
 * Shows the QR code of a link, or says why there is none.
 *
 * @param {string} link
 * @param {Ask} ask
 */
async function showCode(link, ask) {
  const code = byId("share-code", HTMLImageElement);
  const caption = byId("share-code-said");
  /** @param {string} why */
  const none = (why) => (caption.textContent = words.noCode(why));
  code.hidden = true;
  caption.textContent = "";
  if (!isHosted()) return none(words.diskHasNone);
  if (link.length > LONGEST_SAFE) return none(words.longHasNone);
  try {
    const svg = await ask("qr", { link });
    code.src = `data:image/svg+xml,${encodeURIComponent(svg)}`;
    code.hidden = false;
    caption.textContent = words.code;
  } catch (error) {
    none(error.message);
  }
}

/** @param {HTMLTextAreaElement} field */
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
