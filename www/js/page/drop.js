// Files dropped anywhere on the page: each goes where its kind is opened, and none takes the page's place.

import * as words from "../words/files.js";
import { all, byId, first, notice } from "./dom.js";
import { holding, holdsFiles } from "./early.js";

/**
 * What can be dropped: by type or name, the field it is handed to, and the part of the page it is in.
 *
 * @type {{ is: (file: File) => boolean, field: string, part?: string }[]}
 */
const KINDS = [
  {
    is: ({ type, name }) => type.startsWith("image/") || /\.(avif|bmp|gif|heic|jpe?g|png|tiff?|webp)$/i.test(name),
    field: "photo-file",
    part: "match",
  },
  { is: ({ name }) => /\.json$/i.test(name), field: "file-open" },
  { is: ({ name }) => /\.(csv|tsv)$/i.test(name), field: "log-file", part: "swatches" },
  { is: ({ name }) => /\.(cgats|it8|txt)$/i.test(name), field: "file-seen", part: "swatches" },
];

/** Takes what is dropped from now on. */
export function attachDrop() {
  document.addEventListener("dragover", (event) => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    if (event.dataTransfer) event.dataTransfer.dropEffect = isBusy() ? "none" : "copy";
  });
  document.addEventListener("drop", (event) => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    if (!isBusy()) take([...(event.dataTransfer?.files ?? [])]);
  });
}

/** Whether a dialog waits for its answer; the one for sharing takes kit files itself. */
const isBusy = () => document.querySelector("dialog[open]:not(#share-dialog)") !== null;

/** @param {File[]} files */
async function take([file, ...others]) {
  const kind = KINDS.find(({ is }) => is(file));
  if (!kind) return notice(words.cannotOpen(file.name), { seconds: 12 });
  if (kind.part) show(kind.part);
  else await showSharing();
  const field = byId(kind.field, HTMLInputElement);
  field.files = holding([file]).files;
  field.dispatchEvent(new Event("change", { bubbles: true }));
  if (others.length) notice(words.oneOpened(file.name), { seconds: 8 });
}

/** @param {string} part */
function show(part) {
  byId("share-dialog", HTMLDialogElement).close();
  for (const way of all(document, `:is(.switch, .tabs) [data-show="${part}"]`)) if (way.offsetParent) way.click();
}

/** The dialog for sharing is fetched when it is first asked for. */
async function showSharing() {
  const dialog = byId("share-dialog", HTMLDialogElement);
  if (!dialog.open) {
    const opened = new Promise((/** @type {(nothing?: void) => void} */ resolve) =>
      new MutationObserver((_, watch) => {
        if (!dialog.open) return;
        watch.disconnect();
        resolve();
      }).observe(dialog, { attributeFilter: ["open"] }),
    );
    byId("share").click();
    await opened;
  }
  first(document, '[data-show="share-by-file"]').click();
}
