// Letters on the wheel against what lies round them: WCAG 2.2, 1.4.3, 4.5 to 1.

import assert from "node:assert/strict";
import { visits } from "./support/visit.js";
import { painted, slide } from "./support/washpath.js";

const visit = visits();

const LEAST = 4.5;

/** Keeps what is written on each canvas since it was cleared: `{word, x, y, font, align, baseline, transform, ink}`. */
function keepWords() {
  globalThis.written = new Map();
  const { clearRect, fillText } = CanvasRenderingContext2D.prototype;
  CanvasRenderingContext2D.prototype.clearRect = function (...box) {
    globalThis.written.set(this.canvas.id, []);
    return clearRect.apply(this, box);
  };
  CanvasRenderingContext2D.prototype.fillText = function (word, x, y) {
    const { font, textAlign, textBaseline, fillStyle } = this;
    globalThis.written
      .get(this.canvas.id)
      ?.push({ word, x, y, font, textAlign, textBaseline, fillStyle, transform: this.getTransform() });
    return fillText.call(this, word, x, y);
  };
}

/**
 * The contrast of each word: between its ink and the pixels from half a CSS pixel to one and a half off its letters; the
 * tenth percentile, as a path may touch a corner. What is seen is the canvases, one on the other.
 */
const contrasts = (page) =>
  page.evaluate(() => {
    const layers = ["wheel-ground", "wheel-path", "wheel-labels", "wheel-mark"].map((id) =>
      document.getElementById(id),
    );
    const { width, height } = layers[0];
    const sheet = () =>
      Object.assign(document.createElement("canvas"), { width, height }).getContext("2d", { willReadFrequently: true });
    const seen = sheet();
    seen.fillStyle = getComputedStyle(document.documentElement).backgroundColor;
    seen.fillRect(0, 0, width, height);
    for (const layer of layers) seen.drawImage(layer, 0, 0);
    const scale = width / layers[0].clientWidth;
    const linear = (value) => (value / 255 <= 0.04045 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4);
    const luminance = ([r, g, b]) => 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
    const mask = sheet();
    const pen = sheet();
    const found = [];
    for (const { word, fillStyle, x, y, transform, ...style } of [...globalThis.written.values()].flat()) {
      mask.setTransform(1, 0, 0, 1, 0, 0);
      mask.clearRect(0, 0, width, height);
      mask.setTransform(transform);
      Object.assign(mask, style, { fillStyle: "#000" });
      mask.fillText(word, x, y);
      const letters = mask.getImageData(0, 0, width, height).data;
      const pixels = seen.getImageData(0, 0, width, height).data;
      pen.fillStyle = fillStyle;
      pen.fillRect(0, 0, 1, 1);
      const ink = luminance(pen.getImageData(0, 0, 1, 1).data);
      // Squared distances to letters, near their box alone.
      const spots = [];
      for (let i = 3; i < letters.length; i += 4) if (letters[i] > 0) spots.push(i >> 2);
      const around = new Map();
      const reach = Math.ceil(1.5 * scale);
      for (const spot of spots) {
        const [sx, sy] = [spot % width, Math.floor(spot / width)];
        for (let dy = -reach; dy <= reach; dy += 1) {
          for (let dx = -reach; dx <= reach; dx += 1) {
            const at = (sy + dy) * width + sx + dx;
            const off = Math.hypot(dx, dy) / scale;
            if (at >= 0 && at < width * height) around.set(at, Math.min(around.get(at) ?? Infinity, off));
          }
        }
      }
      const values = [...around]
        .filter(([, off]) => off >= 0.5 && off <= 1.5)
        .map(([at]) => {
          const beside = luminance(pixels.subarray(4 * at, 4 * at + 3));
          return (Math.max(ink, beside) + 0.05) / (Math.min(ink, beside) + 0.05);
        })
        .sort((a, b) => a - b);
      if (values.length) found.push({ word, contrast: values[Math.floor(values.length / 10)] });
    }
    return found;
  });

for (const paper of ["Bright white", "Grey", "Tan"]) {
  for (const surround of ["light", "dim"]) {
    visit(
      `letters on the wheel stand out, ${paper}, ${surround}`,
      { script: keepWords, context: { deviceScaleFactor: 2 } },
      async ({ page }) => {
        await page.getByLabel("Paper").selectOption({ label: paper });
        if (surround === "dim") await page.getByRole("button", { name: "Dim" }).click();
        // The mark of the mix at hand stands on the puddle, beside its number.
        await page.getByRole("button", { name: "Keep this mix" }).click();
        await page.evaluate(() => document.fonts.ready.then(() => {}));
        await painted(page);
        const found = await contrasts(page);
        assert.ok(found.filter(({ word }) => /^P[A-Z]/.test(word)).length >= 10, "the codes are among them");
        const weak = found
          .filter(({ contrast }) => contrast < LEAST)
          .map(({ word, contrast }) => `${word} ${contrast.toFixed(1)}`);
        assert.deepEqual(weak, []);
      },
    );
  }
}

visit("the mark of the mix at hand covers no code, wherever it is dragged", { script: keepWords }, async ({ page }) => {
  // This path passes close to the codes of three paints.
  for (const code of ["PG18", "PR254"]) await page.locator(`#tin .paint[title$=" ${code}"]`).click();
  for (let share = 25; share < 1000; share += 25) {
    await slide(page, "Ratio", share);
    await painted(page);
    const codes = (await contrasts(page)).filter(({ word }) => /^P[A-Z]/.test(word));
    assert.ok(codes.length >= 10, `${codes.length} codes`);
    const weak = codes
      .filter(({ contrast }) => contrast < LEAST)
      .map(({ word, contrast }) => `${word} ${contrast.toFixed(1)}`);
    assert.deepEqual(weak, [], `${share} of 1000`);
  }
});
