// Light, paper, glazes, the ribbon, pins and reaches: the wheel looked at in other ways.

import assert from "node:assert/strict";
import { looksKept } from "./support/kept.js";
import { visits } from "./support/visit.js";
import { painted, pixels, readout, slide } from "./support/washpath.js";

const visit = visits();

const press = (page, name) => page.getByRole("button", { name, exact: true }).click();
const way = (page, i) => page.locator("#readout .way").nth(i);

visit("another light changes the mix, the sheet and the wheel, and stays", {}, async ({ page }) => {
  const state = async () => [
    await pixels(page, "wheel-path"),
    (await readout(page)).numbers,
    await page.locator("#sheet .cell").first().getAttribute("style"),
  ];
  const daylight = await state();
  await page.getByLabel("Light", { exact: true }).selectOption({ label: "Tungsten lamp" });
  const tungsten = await state();
  tungsten.forEach((part, i) => assert.notDeepEqual(part, daylight[i]));
  await page.reload();
  await page.waitForSelector('html[data-whole="true"]');
  assert.equal(
    await page.getByLabel("Light", { exact: true }).evaluate((list) => list.selectedOptions[0].text),
    "Tungsten lamp",
  );
  assert.deepEqual((await readout(page)).numbers, tungsten[1]);
});

visit("glazes stand beside the mix, tell how they differ, and are chosen", {}, async ({ page }) => {
  for (const name of ["Light red PR101", "Phthalo blue, green shade PB15:3"])
    await page.locator(`#tin .paint[title="${name}"]`).click();
  const words = await page.locator("#readout .way small").allTextContents();
  assert.equal(words.length, 3);
  assert.ok(words[1] !== words[2], `the order of layers matters here: ${words}`);
  const mixed = { ...(await readout(page)), layer: await pixels(page, "wheel-path") };
  await way(page, 1).click();
  assert.equal(await way(page, 1).getAttribute("aria-pressed"), "true");
  const glazed = await readout(page);
  assert.equal(glazed.parts, mixed.parts, "the same paint");
  assert.notDeepEqual(glazed.numbers, mixed.numbers);
  assert.notEqual(await pixels(page, "wheel-path"), mixed.layer, "the path of glazes is drawn");
  assert.match(await page.locator("#sheet caption").textContent(), /^Glazes of Light red \(A\) over /);
  // Swapped ends keep the upper paint above.
  await press(page, "Swap A and B");
  assert.equal(await way(page, 2).getAttribute("aria-pressed"), "true");
  assert.deepEqual((await readout(page)).numbers, glazed.numbers);
  assert.ok(await way(page, 0).evaluate((node) => (node.focus(), document.activeElement === node)));
  await page.keyboard.press("Enter");
  assert.ok(await way(page, 0).evaluate((node) => node === document.activeElement), "a choice keeps focus");
});

visit("wet paint is darker than dry, and the choice is kept", {}, async ({ page }) => {
  const dry = await readout(page);
  await press(page, "Wet");
  const wet = await readout(page);
  assert.ok(Number(wet.numbers["Value L*"]) < Number(dry.numbers["Value L*"]) - 2);
  await looksKept(page, '"wet":true');
  await page.reload();
  await page.waitForSelector('html[data-whole="true"]');
  assert.deepEqual((await readout(page)).numbers, wet.numbers);
  await press(page, "Wet");
  assert.deepEqual((await readout(page)).numbers, dry.numbers);
});

visit("the ribbon shows every load", {}, async ({ page }) => {
  const inked = () =>
    page.evaluate(() => {
      const canvas = document.getElementById("wheel-path");
      const { data } = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height);
      return data.filter((value, i) => i % 4 === 3 && value > 250).length;
    });
  const path = await inked();
  await press(page, "All loads");
  await painted(page);
  assert.ok((await inked()) > path * 1.05, "more of the wheel is painted");
});

visit("a pinned path stays while another is drawn, until pins are cleared", {}, async ({ page }) => {
  const clear = page.getByRole("button", { name: "Clear pins" });
  assert.ok(await clear.isHidden());
  await press(page, "Pin path");
  assert.ok(await clear.isVisible());
  for (const name of ["Bismuth yellow PY184", "Viridian PG18"])
    await page.locator(`#tin .paint[title="${name}"]`).click();
  const both = await pixels(page, "wheel-path");
  await clear.click();
  assert.notEqual(await pixels(page, "wheel-path"), both);
  assert.ok(await clear.isHidden());
});

visit("the reach follows the kit, and a pinned reach stays to compare", {}, async ({ page }) => {
  const bare = await pixels(page, "wheel-ground");
  await press(page, "Reach");
  const reach = await pixels(page, "wheel-ground");
  assert.notEqual(reach, bare);
  await press(page, "Pin reach");
  await press(page, "Edit pans");
  await press(page, "Remove: Viridian");
  const compared = await pixels(page, "wheel-ground");
  assert.notEqual(compared, reach);
  await press(page, "Pin reach");
  assert.notEqual(await pixels(page, "wheel-ground"), compared, "without the pin the old outline is gone");
});

visit("a paper of one's own is read, refused in words, used, undone and shared", {}, async ({ page }) => {
  const list = page.locator('[data-focus="paper"]');
  const before = await readout(page);
  await list.selectOption({ label: "My own …" });
  const colour = page.getByLabel("Colour: #f2ead8");
  await colour.fill("mauve");
  assert.ok(await page.locator("#paper-use").isDisabled());
  assert.notEqual(await page.locator("#paper-said").textContent(), "");
  await colour.fill("#101010");
  assert.match(await page.locator("#paper-said").textContent(), /darker/);
  await colour.fill("lab(75 8 24)");
  assert.match(await page.locator("#paper-said").textContent(), /L\* 75, a\* 8, b\* 24/);
  await press(page, "Paint on it");
  assert.equal(await list.evaluate((node) => node.selectedOptions[0].text), "My own");
  const own = await readout(page);
  assert.notDeepEqual(own.numbers, before.numbers);
  await page.reload();
  await page.waitForSelector('html[data-whole="true"]');
  assert.deepEqual((await readout(page)).numbers, own.numbers);
  await list.selectOption({ label: "Bright white" });
  assert.deepEqual((await readout(page)).numbers, before.numbers);
  await press(page, "Undo");
  assert.deepEqual((await readout(page)).numbers, own.numbers);
});

visit("Enter in the field for a paper's colour uses it", {}, async ({ page }) => {
  const list = page.locator('[data-focus="paper"]');
  await list.selectOption({ label: "My own …" });
  await page.keyboard.type("lab(75 8 24)");
  await page.keyboard.press("Enter");
  assert.equal(await list.evaluate((node) => node.selectedOptions[0].text), "My own");
});

visit("a cancelled question changes nothing", {}, async ({ page }) => {
  const list = page.locator('[data-focus="paper"]');
  await list.selectOption({ label: "My own …" });
  await page.keyboard.press("Escape");
  assert.equal(await list.evaluate((node) => node.selectedOptions[0].text), "Bright white");
});

visit("the held slider stays at whole parts; keys pass them by", {}, async ({ page }) => {
  const track = await page.getByRole("slider", { name: "Ratio" }).boundingBox();
  await page.mouse.move(track.x + track.width * 0.3, track.y + track.height / 2);
  await page.mouse.down();
  const seen = new Set();
  for (let part = 0.3; part < 0.7; part += 0.004) {
    await page.mouse.move(track.x + track.width * part, track.y + track.height / 2);
    seen.add((await readout(page)).ratio);
  }
  await page.mouse.up();
  for (const ratio of ["4 : 1", "2 : 1", "1 : 1", "1 : 2"])
    assert.ok(seen.has(ratio), `${ratio} among ${[...seen].join(", ")}`);
  await page.getByRole("slider", { name: "Ratio" }).focus();
  await slide(page, "Ratio", 500);
  for (let i = 0; i < 30; i += 1) await page.keyboard.press("ArrowRight");
  assert.equal(await page.getByRole("slider", { name: "Ratio" }).inputValue(), "530");
});

visit(
  "a wide display is asked for wide colours",
  {
    script:
      "const old = matchMedia; matchMedia = (query) => (query.includes('color-gamut') ? { matches: true, addEventListener() {} } : old(query));",
  },
  async ({ page }) => {
    await page.locator('#tin .paint[title="Phthalo blue, green shade PB15:3"]').click();
    await slide(page, "Ratio", 0);
    await slide(page, "Load", 300);
    assert.match(
      await page.locator("#readout .wash").evaluate((node) => node.style.getPropertyValue("--wash")),
      /^color\(display-p3/,
    );
    assert.equal(
      await page.evaluate(
        () => document.getElementById("wheel-path").getContext("2d").getContextAttributes().colorSpace,
      ),
      "display-p3",
    );
  },
);

for (const size of ["desktop", "tablet", "phone"]) {
  visit(`the verbs of the wheel stay where they are when others join them, ${size}`, { size }, async ({ page }) => {
    const names = ["All loads", "Pin path", "Reach"];
    const places = async () => [
      ...(await Promise.all(names.map((name) => page.getByRole("button", { name, exact: true }).boundingBox()))),
      await page.locator("#wheel-path").boundingBox(),
      await page.locator("#ends").boundingBox(),
    ];
    const before = await places();
    await press(page, "Pin path");
    await press(page, "Reach");
    assert.ok(await page.getByRole("button", { name: "Clear pins" }).isVisible());
    assert.ok(await page.getByRole("button", { name: "Pin reach" }).isVisible());
    assert.deepEqual(await places(), before);
  });
}

for (const size of ["tablet", "phone"]) {
  visit(`the mix at hand stays in view while the wheel does, ${size}`, { size }, async ({ page }) => {
    const inView = () =>
      page.evaluate(() => {
        const bar = document.getElementById("wheel-mix").getBoundingClientRect();
        const hit = document.elementFromPoint(bar.left + bar.width / 2, bar.top + bar.height / 2);
        return hit?.closest("#wheel-mix") !== null;
      });
    const window = page.viewportSize();
    // As tall as it is, and too low for the whole wheel.
    for (const height of [window.height, Math.round(window.width * 0.9)]) {
      await page.setViewportSize({ ...window, height });
      await painted(page);
      assert.ok(await inView(), `in a window ${height} px high`);
      assert.match(await page.locator("#wheel-mix").textContent(), /^1:1strong wash/);
    }
  });
}
