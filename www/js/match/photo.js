// A photo, from disk, camera or clipboard: shown, white-balanced, sampled. It never leaves the browser.

/** @import { Circle } from "./picture.js" */
/** @import { Core, Store } from "../state/types.js" */

import { all, button, byId, element, say } from "../page/dom.js";
import { targetOf } from "../state/target.js";
import { sentence } from "../words/form.js";
import { close as closeWord } from "../words/page.js";
import * as words from "../words/photo.js";
import { pixelsOf } from "./photo-file.js";
import { createPicture } from "./picture.js";

/**
 * Lightness L* of what a click is said to be.
 *
 * @type {{ [mode: string]: number }}
 */
const REFERENCES = { white: 96, grey: 50 };

/**
 * Shows the photo, and `answer` beside it. `onphoto` hears of each new picture: pixels as RGBA, width, height; or nothing.
 *
 * @param {Store} store
 * @param {Core} core
 * @param {HTMLElement} answer
 * @param {(pixels: ImageData | null) => void} onphoto
 */
export function attachPhoto(store, core, answer, onphoto) {
  /**
   * As it was opened. Everything is balanced from it, so that corrections do not add up.
   *
   * @type {ImageData | null}
   */
  let original = null;
  /**
   * As it is shown.
   *
   * @type {ImageData | null}
   */
  let photo = null;
  /** What was asked for last: a photo that opens later than one chosen after it comes too late. */
  let turn = 0;
  const picture = createPicture(use);
  const modes = createModes();
  const said = element("p", { class: "quiet", role: "status" }, words.invited);
  const undo = button(words.asItWas, asItWas, { hidden: true });
  const close = button(words.putAway, () => put(null), { hidden: true });
  const work = element("div", { class: "photo-work" }, picture.canvas, answer, modes.node, picture.sizeField);
  const large = createLarge(work);
  const enlarge = button(words.enlarge, large.open, { hidden: true });
  byId("photo").replaceChildren(
    element("div", { class: "title-row" }, element("h3", {}, words.title), ...fileField(open)),
    said,
    work,
    element("div", { class: "verbs" }, enlarge, undo, close),
  );

  /** @param {Blob} blob */
  async function open(blob) {
    turn += 1;
    const own = turn;
    said.textContent = words.opening;
    try {
      const opened = await pixelsOf(blob);
      if (own === turn) put(opened);
    } catch (error) {
      if (own === turn) said.textContent = photo ? words.earlierStays(error.message) : error.message;
    }
  }

  /** @param {ImageData | null} opened */
  function put(opened) {
    turn += 1;
    original = opened;
    if (!opened) large.close();
    for (const part of [modes.node, answer, enlarge, close]) part.hidden = !opened;
    said.textContent = opened ? words.opened : words.invited;
    show(opened);
  }

  /** @param {ImageData | null} pixels */
  function show(pixels) {
    photo = pixels;
    undo.hidden = photo === original;
    modes.choose("sample");
    picture.show(photo);
    onphoto(photo);
  }

  /** @param {Circle} circle */
  function use(circle) {
    try {
      if (modes.current() === "sample") sample(circle);
      else balance(circle, REFERENCES[modes.current()]);
    } catch (error) {
      said.textContent = sentence(error.message);
    }
  }

  /** @param {Circle} circle */
  function sample({ x, y, radius }) {
    if (!photo) return;
    store.set({ target: targetOf(core.sample(photo.data, photo.width, x, y, radius), "photo") });
    picture.mark({ x, y, radius });
  }

  /**
   * @param {Circle} circle
   * @param {number} lightness
   */
  function balance({ x, y, radius }, lightness) {
    if (!original) return;
    const { data, width, height } = original;
    const bytes = core.white_balance(data, width, x, y, radius, lightness);
    show(new ImageData(new Uint8ClampedArray(bytes), width, height));
    said.textContent = words.balanced;
    say(words.balanceSet);
  }

  function asItWas() {
    show(original);
    say(words.balanceBack);
  }

  addEventListener("paste", (event) => {
    const image = [...(event.clipboardData?.files ?? [])].find(({ type }) => type.startsWith("image/"));
    if (image) open(image);
  });
}

/**
 * A dialog that takes `work`, the photo and what is done with it, to the size of the window and back to its place.
 *
 * @param {HTMLElement} work
 */
function createLarge(work) {
  const place = element("div", {});
  const dialog = element(
    "dialog",
    { class: "large", "aria-label": words.title, onclose: () => place.replaceWith(work) },
    element("form", { method: "dialog", class: "verbs" }, element("button", {}, closeWord)),
  );
  document.body.append(dialog);
  // A recipe that is taken shows in the mix, behind the dialog.
  work.addEventListener(
    "click",
    ({ target }) => target instanceof Element && target.closest(".take") && dialog.close(),
  );
  return {
    open() {
      work.replaceWith(place);
      dialog.prepend(work);
      dialog.showModal();
    },
    close: () => dialog.close(),
  };
}

/**
 * The field for a file, behind the label that is shown as its button.
 *
 * @param {(file: Blob) => void} open
 */
function fileField(open) {
  const file = element("input", {
    type: "file",
    accept: "image/*",
    class: "unseen",
    id: "photo-file",
    onchange: () => {
      const chosen = file.files?.[0];
      // So that the same can be chosen again.
      file.value = "";
      if (chosen) open(chosen);
    },
  });
  return [element("label", { for: "photo-file", class: "button" }, words.open), file];
}

/** What a click on the photo does: a group of buttons of which one is pressed. */
function createModes() {
  /** @type {string} */
  let mode;
  const node = element(
    "div",
    { class: "choices", role: "group", "aria-label": words.click, hidden: true },
    ...Object.entries(words.modes).map(([key, word]) => button(word, () => choose(key), { "data-mode": key })),
  );
  choose("sample");

  /** @param {string} key */
  function choose(key) {
    mode = key;
    for (const each of all(node, "button")) each.setAttribute("aria-pressed", String(each.dataset.mode === key));
  }

  return { node, choose, current: () => mode };
}
