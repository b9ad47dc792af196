// A photo, from disk, camera or clipboard: shown, white-balanced, sampled. It never leaves the browser.

import { button, byId, element, say } from "../page/dom.js";
import { capital } from "../page/words.js";
import { targetOf } from "../state/target.js";

/** Longest side at which a photo is worked on. */
const SIDE = 1024;
/** Larger photos are refused: decoding one takes gigabytes. */
const MOST_PIXELS = 150e6;
const MOST_BYTES = 120e6;

/** Shows the photo. `onphoto` hears of each new picture: pixels as RGBA, width, height; or nothing. */
export function attachPhoto(store, core, onphoto) {
  const frame = byId("photo");
  let original = null;
  let picture = null;
  let mode = "sample";
  /** What was asked for last: a photo that opens later than one chosen after it comes too late. */
  let turn = 0;

  const file = element("input", {
    type: "file",
    accept: "image/*",
    class: "unseen",
    id: "photo-file",
    onchange: () => {
      const [chosen] = file.files;
      // So that the same can be chosen again.
      file.value = "";
      if (chosen) open(chosen);
    },
  });
  const choose = element("label", { for: "photo-file", class: "button" }, "Open a photo");
  const canvas = element("canvas", {
    class: "picture",
    tabindex: 0,
    role: "img",
    "aria-label": "The photo: click to sample a colour",
    hidden: true,
  });
  const said = element(
    "p",
    { class: "quiet", role: "status" },
    "From disk or camera, or paste one. It stays in this browser.",
  );
  const size = element("input", { type: "range", min: 1, max: 40, value: 6, "aria-label": "Size of the sample" });
  const modes = element(
    "div",
    { class: "choices", role: "group", "aria-label": "What a click does", hidden: true },
    ...[
      ["sample", "Sample a colour"],
      ["white", "This is white paper"],
      ["grey", "This is mid grey"],
    ].map(([key, word]) =>
      button(word, () => setMode(key), { "aria-pressed": String(key === mode), "data-mode": key }),
    ),
  );
  const sized = element("label", { class: "field", hidden: true }, element("span", {}, "Size of the sample"), size);
  const undo = button(
    "As it was",
    () => {
      balance(null);
      say("White balance taken back");
    },
    { hidden: true },
  );
  const close = button("Put away", () => put(null), { hidden: true });
  frame.replaceChildren(
    element("div", { class: "title-row" }, element("h3", {}, "Photo"), choose, file),
    said,
    canvas,
    modes,
    sized,
    element("div", { class: "verbs" }, undo, close),
  );

  function setMode(key) {
    mode = key;
    for (const each of modes.children) each.setAttribute("aria-pressed", String(each.dataset.mode === key));
  }

  async function open(blob) {
    turn += 1;
    const own = turn;
    said.textContent = "Opening …";
    try {
      const opened = await decode(blob);
      if (own === turn) put(opened);
    } catch (error) {
      if (own === turn) said.textContent = `${error.message} ${picture ? "The photo before it is still here." : ""}`;
    }
  }

  function put(next) {
    turn += 1;
    original = next;
    picture = next;
    for (const part of [canvas, modes, sized, close]) part.hidden = !next;
    undo.hidden = true;
    setMode("sample");
    said.textContent = next
      ? "Click a place to match its colour. First say what is white paper or grey there, if the light was coloured."
      : "From disk or camera, or paste one. It stays in this browser.";
    draw();
    onphoto(picture);
  }

  function draw(mark) {
    if (!picture) return;
    canvas.width = picture.width;
    canvas.height = picture.height;
    const context = canvas.getContext("2d");
    context.putImageData(picture, 0, 0);
    if (!mark) return;
    for (const [width, colour] of [
      [4, "#fff"],
      [1.5, "#000"],
    ]) {
      context.beginPath();
      context.arc(mark.x, mark.y, mark.radius, 0, 2 * Math.PI);
      context.lineWidth = width * (picture.width / canvas.clientWidth);
      context.strokeStyle = colour;
      context.stroke();
    }
  }

  function at(event) {
    const box = canvas.getBoundingClientRect();
    const scale = picture.width / box.width;
    return {
      x: (event.clientX - box.left) * scale,
      y: (event.clientY - box.top) * scale,
      radius: Number(size.value) * scale,
    };
  }

  canvas.addEventListener("click", (event) => picture && use(at(event)));
  let cursor = null;
  canvas.addEventListener("keydown", (event) => {
    const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (!picture || (!step && event.key !== "Enter")) return;
    event.preventDefault();
    cursor ??= { x: picture.width / 2, y: picture.height / 2 };
    const far = picture.width / (event.shiftKey ? 16 : 80);
    if (step)
      cursor = {
        x: clamp(cursor.x + step[0] * far, picture.width),
        y: clamp(cursor.y + step[1] * far, picture.height),
      };
    const mark = { ...cursor, radius: (Number(size.value) * picture.width) / canvas.clientWidth };
    if (step) draw(mark);
    else use(mark);
  });

  function use(mark) {
    try {
      if (mode === "sample") {
        store.set({ target: targetOf(core.sample(picture.data, picture.width, mark.x, mark.y, mark.radius), "photo") });
        draw(mark);
      } else {
        balance({ mark, grey: mode === "grey" });
        say("White balance set");
      }
    } catch (error) {
      said.textContent = `${capital(error.message)}.`;
    }
  }

  /** Everything is balanced from the original, so that corrections do not add up. */
  function balance(reference) {
    if (!reference) picture = original;
    else {
      const { x, y, radius } = reference.mark;
      const bytes = core.white_balance(original.data, original.width, x, y, radius, reference.grey ? 50 : 96);
      picture = new ImageData(new Uint8ClampedArray(bytes), original.width, original.height);
    }
    undo.hidden = !reference;
    setMode("sample");
    draw();
    onphoto(picture);
    if (reference) said.textContent = "Balanced. Click a place to match its colour.";
  }

  addEventListener("paste", (event) => {
    const image = [...(event.clipboardData?.files ?? [])].find(({ type }) => type.startsWith("image/"));
    if (image) open(image);
  });
}

/** Pixels of an image file, upright, at most SIDE long; errors say what is wrong with it. */
async function decode(blob) {
  if (blob.size === 0) throw new Error("This file is empty.");
  if (blob.size > MOST_BYTES) throw new Error(`This file is larger than ${MOST_BYTES / 1e6} MB.`);
  const address = URL.createObjectURL(blob);
  try {
    const image = new Image();
    image.src = address;
    await new Promise((resolve, reject) => {
      image.onload = resolve;
      image.onerror = () => reject(new Error("This is no image that the browser can read."));
    });
    const { naturalWidth: width, naturalHeight: height } = image;
    if (width * height > MOST_PIXELS)
      throw new Error(
        `This photo has ${Math.round((width * height) / 1e6)} megapixels; ${MOST_PIXELS / 1e6} is the most.`,
      );
    const scale = Math.min(1, SIDE / Math.max(width, height, 1));
    const [resizeWidth, resizeHeight] = [width, height].map((side) => Math.max(1, Math.round(side * scale)));
    // The browser decodes off the page's thread, turns it upright and scales it.
    const bitmap = await createImageBitmap(blob, { resizeWidth, resizeHeight, resizeQuality: "high" });
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
    const context = canvas.getContext("2d", { willReadFrequently: true });
    context.drawImage(bitmap, 0, 0);
    bitmap.close();
    return context.getImageData(0, 0, canvas.width, canvas.height);
  } finally {
    URL.revokeObjectURL(address);
  }
}

const clamp = (value, most) => Math.min(Math.max(value, 0), most - 1);
