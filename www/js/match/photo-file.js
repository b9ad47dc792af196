// Reading an image file.

import * as words from "../words/photo.js";

/** Longest side at which a photo is worked on. */
const SIDE = 1024;
/** Larger photos are refused: decoding one takes gigabytes. */
const MOST_PIXELS = 150e6;
const MOST_BYTES = 120e6;

/**
 * Pixels of an image file, upright, at most SIDE long; errors say what is wrong with it.
 *
 * @param {Blob} blob
 */
export async function pixelsOf(blob) {
  if (blob.size === 0) throw new Error(words.emptyFile);
  if (blob.size > MOST_BYTES) throw new Error(words.tooLarge(MOST_BYTES));
  const { width, height } = await sizeOf(blob);
  if (width * height > MOST_PIXELS) throw new Error(words.tooManyPixels(width * height, MOST_PIXELS));
  const scale = Math.min(1, SIDE / Math.max(width, height, 1));
  const [resizeWidth, resizeHeight] = [width, height].map((side) => Math.max(1, Math.round(side * scale)));
  // The browser decodes off the page's thread, turns it upright and scales it.
  const bitmap = await createImageBitmap(blob, { resizeWidth, resizeHeight, resizeQuality: "high" });
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  const context = canvas.getContext("2d", { willReadFrequently: true });
  if (!context) throw new Error(words.noRoom);
  context.drawImage(bitmap, 0, 0);
  bitmap.close();
  return context.getImageData(0, 0, canvas.width, canvas.height);
}

/**
 * Width and height of an image, upright, before its pixels are decoded.
 *
 * @param {Blob} blob
 */
async function sizeOf(blob) {
  const address = URL.createObjectURL(blob);
  try {
    const image = new Image();
    image.src = address;
    await new Promise((resolve, reject) => {
      image.onload = resolve;
      image.onerror = () => reject(new Error(words.noImage));
    });
    return { width: image.naturalWidth, height: image.naturalHeight };
  } finally {
    URL.revokeObjectURL(address);
  }
}
