// Reading an image file.

/** Longest side at which a photo is worked on. */
const SIDE = 1024;
/** Larger photos are refused: decoding one takes gigabytes. */
const MOST_PIXELS = 150e6;
const MOST_BYTES = 120e6;

/** Pixels of an image file, upright, at most SIDE long; errors say what is wrong with it. */
export async function pixelsOf(blob) {
  if (blob.size === 0) throw new Error("This file is empty.");
  if (blob.size > MOST_BYTES) throw new Error(`This file is larger than ${MOST_BYTES / 1e6} MB.`);
  const { width, height } = await sizeOf(blob);
  if (width * height > MOST_PIXELS)
    throw new Error(
      `This photo has ${Math.round((width * height) / 1e6)} megapixels, and at most ${MOST_PIXELS / 1e6} can be opened.`,
    );
  const scale = Math.min(1, SIDE / Math.max(width, height, 1));
  const [resizeWidth, resizeHeight] = [width, height].map((side) => Math.max(1, Math.round(side * scale)));
  // The browser decodes off the page's thread, turns it upright and scales it.
  const bitmap = await createImageBitmap(blob, { resizeWidth, resizeHeight, resizeQuality: "high" });
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  const context = canvas.getContext("2d", { willReadFrequently: true });
  if (!context) throw new Error("The browser has no room for this photo.");
  context.drawImage(bitmap, 0, 0);
  bitmap.close();
  return context.getImageData(0, 0, canvas.width, canvas.height);
}

/** Width and height of an image, upright, before its pixels are decoded. */
async function sizeOf(blob) {
  const address = URL.createObjectURL(blob);
  try {
    const image = new Image();
    image.src = address;
    await new Promise((resolve, reject) => {
      image.onload = resolve;
      image.onerror = () => reject(new Error("The browser cannot read this file as an image."));
    });
    return { width: image.naturalWidth, height: image.naturalHeight };
  } finally {
    URL.revokeObjectURL(address);
  }
}
