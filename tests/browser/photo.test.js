// A photo: opened, refused, balanced, sampled, gathered to a place, repainted.

import assert from "node:assert/strict";
import { PNG } from "pngjs";
import { visits } from "./support/visit.js";
import { painted, sharedLink } from "./support/washpath.js";

const visit = visits();

const press = (page, name) => page.getByRole("button", { name, exact: true }).click();

/** A picture of three stripes: paper in warm light, sea, rust. */
function stripes({ width = 90, height = 60, alpha = 255 } = {}) {
  const picture = new PNG({ width, height });
  const colours = [
    [250, 232, 196],
    [60, 98, 118],
    [150, 74, 40],
  ];
  for (let i = 0; i < width * height; i += 1) {
    const colour = colours[Math.floor(((i % width) * 3) / width)];
    picture.data.set([...colour, alpha], 4 * i);
  }
  return PNG.sync.write(picture);
}

const put = (page, buffer, name = "photo.png", mimeType = "image/png") =>
  page.locator("#photo-file").setInputFiles({ name, mimeType, buffer });
const said = (page) => page.locator("#photo > p").textContent();

async function open(page, buffer = stripes()) {
  await page.locator(".switch").getByRole("button", { name: "Match" }).click();
  await put(page, buffer);
  await page.locator("#photo .picture").waitFor();
}

/** Clicks the picture at parts of its width and height. */
async function at(page, x, y) {
  const box = await page.locator("#photo .picture").boundingBox();
  await page.locator("#photo .picture").click({ position: { x: x * box.width, y: y * box.height } });
}

const target = (page) => page.locator("#target-said").textContent();

visit("a click takes the colour of a disc", {}, async ({ page }) => {
  await open(page);
  await at(page, 0.83, 0.5);
  // sRGB 150, 74, 40 by colour-science 0.4.7: L* 40.5, a* 29.2, b* 34.2.
  assert.match(await target(page), /L\* 40, a\* 29, b\* 34/);
  await page.locator("#recipes li").first().waitFor();
});

for (const size of ["desktop", "tablet", "phone"]) {
  visit(`a sampled photo stays where it is, its answer beside it, ${size}`, { size }, async ({ page }) => {
    if (size === "phone") {
      await page.locator(".tabs").getByRole("button", { name: "Match" }).click();
      await put(page, stripes());
      await page.locator("#photo .picture").waitFor();
    } else await open(page);
    await page.locator("#photo .picture").scrollIntoViewIfNeeded();
    const place = () => page.locator("#photo .picture").boundingBox();
    const before = await place();
    await at(page, 0.83, 0.5);
    const answer = page.locator("#photo .answer li");
    await answer.waitFor();
    assert.deepEqual(await place(), before);
    const { y, height } = await answer.boundingBox();
    assert.ok(y + height - before.y < page.viewportSize().height, "both fit the window");
    const rust = await answer.textContent();
    assert.equal(rust, await page.locator("#recipes li").first().textContent());
    await at(page, 0.5, 0.5);
    await page.waitForFunction((rust) => {
      const answer = document.querySelector("#photo .answer li");
      return answer && answer.textContent !== rust;
    }, rust);
    assert.deepEqual(await place(), before, "nor does another colour move it");
  });

  visit(`a photo is enlarged and sampled there, ${size}`, { size }, async ({ page }) => {
    if (size === "phone") {
      await page.locator(".tabs").getByRole("button", { name: "Match" }).click();
      await put(page, stripes());
    } else await open(page);
    await page.locator("#photo .picture").waitFor();
    const small = await page.locator("#photo .picture").boundingBox();
    await press(page, "Enlarge");
    const large = await page.locator("dialog[open] .picture").boundingBox();
    if (size !== "phone") assert.ok(large.width > 1.3 * small.width, `${large.width} from ${small.width}`);
    assert.ok(large.height <= page.viewportSize().height && large.width <= page.viewportSize().width);
    assert.ok(Math.abs(large.width / large.height - 1.5) < 0.02, "as wide to high as it is");
    await page.locator("dialog[open] .picture").click({ position: { x: 0.83 * large.width, y: 0.5 * large.height } });
    await page.locator("dialog[open] .answer li").waitFor();
    assert.match(await target(page), /L\* 40, a\* 29, b\* 34/);
    await page.keyboard.press("Escape");
    await page.locator("#photo .picture").waitFor();
    await press(page, "Enlarge");
    await page.locator("dialog[open] .answer .take").click();
    assert.ok(await page.locator("#mix").isVisible(), "its recipe is on the path");
    assert.equal(await page.locator("dialog[open]").count(), 0);
  });
}

visit("white paper clicked turns neutral, and the balance is taken back", {}, async ({ page }) => {
  await open(page);
  await press(page, "This is white paper");
  await at(page, 0.15, 0.5);
  await at(page, 0.15, 0.5);
  assert.match(await target(page), /L\* 96, a\* -?[01], b\* -?[01]/);
  await press(page, "As it was");
  await at(page, 0.15, 0.5);
  assert.match(await target(page), /b\* 2\d/);
});

visit("what is no photo is refused in words, and the photo before it stays", {}, async ({ page }) => {
  await open(page);
  const faults = [
    [Buffer.from("not a picture"), "notes.txt", "text/plain", /cannot read this file as an image/],
    [Buffer.alloc(0), "empty.png", "image/png", /empty/],
    [stripes().subarray(0, 60), "cut.png", "image/png", /cannot read this file|could not/i],
  ];
  for (const [bytes, name, type, words] of faults) {
    await put(page, bytes, name, type);
    await page.waitForFunction(
      (source) => new RegExp(source, "i").test(document.querySelector("#photo > p").textContent),
      words.source,
    );
    assert.match(await said(page), /still here/);
  }
  await at(page, 0.83, 0.5);
  assert.match(await target(page), /L\* 40/);
});

visit(
  "a picture of a hundred megapixels and more is refused or scaled, and the page lives on",
  {},
  async ({ page }) => {
    await page.locator(".switch").getByRole("button", { name: "Match" }).click();
    // One colour: the file is small, its picture is not.
    const picture = new PNG({ width: 14_000, height: 11_000, colorType: 2, inputColorType: 2, inputHasAlpha: false });
    picture.data = Buffer.alloc(3 * 14_000 * 11_000, 90);
    await put(
      page,
      PNG.sync.write(picture, { colorType: 2, inputColorType: 2, inputHasAlpha: false, deflateLevel: 1 }),
    );
    await page.waitForFunction(
      () => /megapixels|Click a spot|cannot read/.test(document.querySelector("#photo > p").textContent),
      null,
      { timeout: 60_000 },
    );
    assert.match(await said(page), /154 megapixels/);
  },
);

visit("a photo that lies on its side is turned upright", {}, async ({ page }) => {
  const jpeg = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(64, 32);
    canvas.getContext("2d").fillRect(0, 0, 64, 32);
    return [...new Uint8Array(await (await canvas.convertToBlob({ type: "image/jpeg" })).arrayBuffer())];
  });
  // Exif 2.3: APP1 with one entry, Orientation (0x0112) = 6, turned a quarter clockwise to be seen.
  const tiff = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0];
  const exif = [...Buffer.from("Exif"), 0, 0, ...tiff];
  const marked = Buffer.from([...jpeg.slice(0, 2), 0xff, 0xe1, 0, exif.length + 2, ...exif, ...jpeg.slice(2)]);
  await page.locator(".switch").getByRole("button", { name: "Match" }).click();
  await put(page, marked, "turned.jpg", "image/jpeg");
  await page.locator("#photo .picture").waitFor();
  assert.deepEqual(await page.locator("#photo .picture").evaluate(({ width, height }) => [width, height]), [32, 64]);
});

visit("a pasted picture is opened", {}, async ({ page }) => {
  await page.locator(".switch").getByRole("button", { name: "Match" }).click();
  await page.evaluate(
    (bytes) => {
      const files = new DataTransfer();
      files.items.add(new File([Uint8Array.from(bytes)], "pasted.png", { type: "image/png" }));
      dispatchEvent(new ClipboardEvent("paste", { clipboardData: files }));
    },
    [...stripes()],
  );
  await page.locator("#photo .picture").waitFor();
  await at(page, 0.83, 0.5);
  assert.match(await target(page), /L\* 40/);
});

visit(
  "of two photos opened quickly the later is shown, whichever is ready first",
  {
    script: () => {
      const decode = createImageBitmap;
      const held = new Promise((resolve) => (globalThis.letGo = resolve));
      let asked = 0;
      globalThis.createImageBitmap = async (...words) => {
        asked += 1;
        if (asked > 1) return decode(...words);
        await held;
        const opened = await decode(...words);
        // A task later what waited for it has had it.
        setTimeout(() => (globalThis.isOpened = true));
        return opened;
      };
    },
  },
  async ({ page }) => {
    await page.locator(".switch").getByRole("button", { name: "Match" }).click();
    await put(page, stripes({ width: 30 }));
    await put(page, stripes({ width: 60 }));
    const width = () => page.locator("#photo .picture").evaluate((canvas) => canvas.width);
    await page.locator("#photo .picture").waitFor();
    assert.equal(await width(), 60);
    await page.evaluate(() => globalThis.letGo());
    await page.waitForFunction(() => globalThis.isOpened);
    await painted(page);
    assert.equal(await width(), 60, "the first came too late");
    await press(page, "Put away");
    assert.ok(await page.locator("#photo .picture").isHidden());
  },
);

visit("no focus on a file field slides the page away", {}, async ({ page }) => {
  for (const part of ["Match", "Swatches"]) {
    await page.locator(".switch").getByRole("button", { name: part }).click();
    const fields = page.locator(".work input[type=file]:visible, .work input[type=file].unseen");
    assert.ok((await fields.count()) > 0);
    for (const field of await fields.all()) {
      await field.evaluate((node) => node.focus());
      const { slid, id } = await page.evaluate(() => ({
        slid: document.scrollingElement.scrollTop,
        id: document.activeElement.id,
      }));
      assert.equal(slid, 0, `${id} slides the page by ${slid} px`);
    }
  }
  await page.locator(".switch").getByRole("button", { name: "Match" }).click();
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.locator("label[for=photo-file]").click(),
  ]);
  await chooser.setFiles({ name: "photo.png", mimeType: "image/png", buffer: stripes() });
  await page.locator("#photo .picture").waitFor();
  assert.equal(await page.evaluate(() => document.scrollingElement.scrollTop), 0);
});

visit("transparent pixels give no colour", {}, async ({ page }) => {
  await open(page, stripes({ alpha: 0 }));
  await at(page, 0.5, 0.5);
  assert.match(await said(page), /transparent/);
});

visit("the picture is used by keyboard", {}, async ({ page }) => {
  await open(page);
  await page.locator("#photo .picture").focus();
  for (let i = 0; i < 5; i += 1) await page.keyboard.press("Shift+ArrowRight");
  await page.keyboard.press("Enter");
  assert.match(await target(page), /L\* 40/);
});

visit(
  "a place is gathered, weighed, reached colour by colour, kept and shared",
  {},
  async ({ page, visitor, address }) => {
    await open(page);
    await press(page, "Find them in the photo");
    const rows = page.locator("#place .twin");
    await rows.first().waitFor();
    assert.equal(await rows.count(), 3, "three stripes");
    assert.match(await page.locator("#place").textContent(), /Reaches \d of 3 colours, \d+\s% of the place/);
    const weights = page.locator('#place .rows input[type="number"]');
    assert.deepEqual(await weights.evaluateAll((all) => all.map((input) => input.value)), ["33", "33", "33"]);
    await weights.first().fill("60");
    await weights.first().press("Enter");
    await page.waitForFunction(() => document.querySelector('#place .rows input[type="number"]')?.value === "60");
    await page.getByLabel("Name of the place").fill("Breakwater");
    await page.getByLabel("Name of the place").press("Enter");
    await press(page, "Share");
    const link = await sharedLink(page);
    const other = await visitor.browser().newContext();
    const guest = await other.newPage();
    await guest.goto(address + link.slice(link.indexOf("#")));
    await press(guest, "Pack the shared kit");
    await guest.locator(".switch").getByRole("button", { name: "Match" }).click();
    await guest.locator("#place .twin").first().waitFor();
    assert.equal(await guest.getByLabel("Name of the place").inputValue(), "Breakwater");
    assert.equal(await guest.locator("#place .twin").count(), 3);
    await other.close();
    await page.keyboard.press("Escape");
    await page.locator("#place .take").first().click();
    assert.ok(await page.locator("#mix").isVisible(), "its recipe is on the path");
    await page.getByRole("button", { name: "Undo" }).click();
  },
);

visit("colours are added and taken off by hand", {}, async ({ page }) => {
  await page.locator(".switch").getByRole("button", { name: "Match" }).click();
  await page.locator("#target-text").fill("lab(40 10 -30)");
  await press(page, "Add the colour to match");
  await page.locator("#place .twin").first().waitFor();
  await page.locator("#target-text").fill("lab(70 10 40)");
  await press(page, "Add the colour to match");
  await page.waitForFunction(() => document.querySelectorAll("#place .twin").length === 2);
  await page.locator("#place .drop").first().click();
  await page.waitForFunction(() => document.querySelectorAll("#place .twin").length === 1);
  await press(page, "Remove this place");
  await page.waitForFunction(() => document.querySelectorAll("#place .twin").length === 0);
  await press(page, "Undo");
  await page.locator("#place .twin").first().waitFor();
});

visit("a kit is chosen for a place", {}, async ({ page }) => {
  await open(page);
  await press(page, "Find them in the photo");
  await press(page, "Choose a kit for this place");
  assert.match(await page.locator("#choose-what").textContent(), /the colours of “Place 1”/);
  await page.locator("#choose-form").evaluate((form) => {
    form.elements.namedItem("size").value = "3";
    form.elements.namedItem("triad").checked = false;
  });
  await press(page, "Choose");
  await page.locator("#choose-outcome .main").waitFor({ timeout: 60_000 });
  assert.match(await page.locator("#choose-outcome").textContent(), /Reaches \d+\s% of the place/);
});

visit("the photo is repainted with the kit, and in greys", {}, async ({ page }) => {
  await open(page);
  await page.getByLabel("Steps of value").selectOption("3");
  await press(page, "Repaint with this kit");
  const pictures = page.locator("#study canvas");
  await pictures.first().waitFor({ timeout: 30_000 });
  assert.equal(await pictures.count(), 3);
  const colours = await pictures.evaluateAll((all) =>
    all.map((canvas) => {
      const { data } = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height);
      const seen = new Set();
      for (let i = 0; i < data.length; i += 4) seen.add(data.slice(i, i + 3).join(" "));
      return [...seen];
    }),
  );
  assert.equal(colours[0].length, 3);
  assert.ok(colours[1].length <= 3);
  for (const grey of colours[2]) assert.equal(new Set(grey.split(" ")).size, 1, grey);
  const shown = await pictures.nth(2).evaluateHandle((canvas) => canvas);
  await page.getByLabel("Steps of value").selectOption("0");
  await page.waitForFunction((canvas) => !canvas.isConnected, shown);
  assert.equal(await pictures.count(), 3, "another number is painted at once");
  await press(page, "Put away");
  assert.ok(await page.locator("#study").isHidden());
});
