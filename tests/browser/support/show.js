// Parts of the page shown in windows of every size, and a photo to open there.

import { PNG } from "pngjs";

/** Shows a part by whichever row of buttons this window has: beside the wheel, below the tin, or the tabs. */
export async function show(page, name) {
  const buttons = page.locator(".switch, .tabs").getByRole("button").filter({ visible: true });
  // A phone has the report below the kit, and a desktop shows the kit always.
  for (const word of [name, "Kit"]) {
    const found = buttons.filter({ hasText: new RegExp(`^${word}$`) });
    if (await found.count()) return found.first().click();
  }
}

const picture = new PNG({ width: 60, height: 40 });
for (let i = 0; i < 60 * 40; i += 1)
  picture.data.set(
    [
      [250, 246, 238],
      [60, 98, 118],
      [150, 74, 40],
    ][Math.floor((i % 60) / 20)].concat(255),
    4 * i,
  );

/** Stripes of paper, sea and rust, as a file to be chosen. */
export const photo = { name: "photo.png", mimeType: "image/png", buffer: PNG.sync.write(picture) };
