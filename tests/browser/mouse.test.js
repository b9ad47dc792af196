// Two paints, their path, its mixes: by mouse, in the single file.

import assert from "node:assert/strict";
import { visits } from "./support/visit.js";
import { dabs, ends, markAt, painted, pans, pixels, readout, shareOf, slide } from "./support/washpath.js";

const visit = visits();

const pointAt = (page, { x, y }) => page.mouse.click(x, y);

visit("a first visit shows the demo kit and one drawn path", {}, async ({ page }) => {
  assert.equal(await page.getByLabel("Title of the kit").inputValue(), "North Sea harbour, October");
  const packed = await pans(page);
  assert.equal(packed.length, 12);
  assert.equal(packed.filter((pan) => pan.includes("+")).length, 2, "two pans are split");
  assert.deepEqual(
    (await ends(page)).map((end) => end.split(" ").at(-1)),
    ["PB29", "PBr7"],
  );
  assert.match((await readout(page)).crossing, /at \d+:\d+/);
  const inked = await page.evaluate(() => {
    const canvas = document.getElementById("wheel-path");
    const { data } = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height);
    return data.filter((value, i) => i % 4 === 3 && value > 0).length;
  });
  assert.ok(inked > 1000, `the path's layer has ${inked} painted pixels`);
});

visit("two clicks on dabs show the path between them", {}, async ({ page }) => {
  const spots = await dabs(page);
  const names = Object.keys(spots);
  assert.ok(names.length >= 13, `the pointer is told of ${names.length} of the kit's 14 paints`);
  const [a, b] = [names.find((name) => name.endsWith("PY184")), names.find((name) => name.endsWith("PV19"))];
  const before = { layer: await pixels(page, "wheel-path"), ...(await readout(page)) };
  await pointAt(page, spots[a]);
  assert.equal((await ends(page))[0], a);
  await pointAt(page, spots[b]);
  assert.deepEqual(await ends(page), [a, b]);
  const after = await readout(page);
  assert.notEqual(await pixels(page, "wheel-path"), before.layer, "another path is drawn");
  assert.notEqual(after.words, before.words);
  assert.notEqual(after.crossing, before.crossing);
  assert.ok(after.parts.includes(a.slice(0, a.lastIndexOf(" "))), after.parts);
  await slide(page, "Ratio", 0);
  assert.equal((await readout(page)).parts, a.slice(0, a.lastIndexOf(" ")), "all A is A alone");
});

visit("dragging along the path runs through the ratios one way", {}, async ({ page }) => {
  const stops = [];
  for (const value of [250, 350, 450, 550, 650, 750]) stops.push(await markAt(page, value));
  await slide(page, "Ratio", 500);
  const chosen = await ends(page);
  await page.mouse.move(stops[0].x, stops[0].y);
  await page.mouse.down();
  const shares = [];
  for (const stop of stops) {
    await page.mouse.move(stop.x, stop.y, { steps: 4 });
    await painted(page);
    shares.push(shareOf((await readout(page)).ratio));
  }
  await page.mouse.up();
  assert.deepEqual(
    shares,
    [...shares].sort((a, b) => a - b),
  );
  assert.ok(new Set(shares).size >= 4 && shares.at(-1) - shares[0] > 0.2, `the ratio follows: ${shares}`);
  assert.deepEqual(await ends(page), chosen, "a drag chooses no paint");
  await page.mouse.move(stops[0].x, stops[0].y);
  assert.equal(shareOf((await readout(page)).ratio), shares.at(-1), "nothing follows once the button is up");
});

visit("a thinner load is lighter", {}, async ({ page }) => {
  const lightness = [];
  for (const value of [500, 400, 300, 200, 100]) {
    await slide(page, "Load", value);
    lightness.push(Number((await readout(page)).numbers["Value L*"]));
  }
  assert.deepEqual(
    lightness,
    [...lightness].sort((a, b) => a - b),
  );
  assert.ok(lightness.at(-1) - lightness[0] > 20, `from L* ${lightness[0]} to ${lightness.at(-1)}`);
  assert.match((await readout(page)).load, /pale wash/);
});

visit("a cell of the sheet is the mix that is read out", {}, async ({ page }) => {
  for (const [column, load] of [
    ["2:1", "light wash"],
    ["A", "masstone"],
    ["1:8", "pale wash"],
  ]) {
    const cell = page.locator(`#sheet .cell[aria-label^="${column}, ${load}:"]`);
    await cell.click();
    const { words, ratio, load: read } = await readout(page);
    assert.equal(await cell.getAttribute("aria-label"), `${column}, ${load}: ${words}`);
    assert.equal(ratio, { "2:1": "2 : 1", A: "1 : 0", "1:8": "1 : 8" }[column]);
    assert.ok(read.includes(load), read);
    assert.equal(await cell.getAttribute("aria-pressed"), "true");
    assert.equal(await page.locator('#sheet [aria-pressed="true"]').count(), 1);
    const colours = await page.evaluate(() =>
      ["#readout .wash", '#sheet [aria-pressed="true"]'].map((selector) =>
        getComputedStyle(document.querySelector(selector)).getPropertyValue("--wash"),
      ),
    );
    assert.match(colours[0], /^#/);
    assert.equal(colours[0], colours[1], "one colour in the sheet and above it");
  }
});

visit("swapping the ends keeps the mix", {}, async ({ page }) => {
  await slide(page, "Ratio", 300);
  const before = { ends: await ends(page), ...(await readout(page)) };
  await page.getByRole("button", { name: "Swap A and B" }).click();
  const after = { ends: await ends(page), ...(await readout(page)) };
  assert.deepEqual(after.ends, before.ends.toReversed());
  assert.equal(after.words, before.words);
  assert.deepEqual(after.numbers, before.numbers);
  assert.equal(after.ratio, before.ratio.split(" : ").toReversed().join(" : "));
});

visit("choosing an end is undone and redone, with the mix then shown", {}, async ({ page }) => {
  await slide(page, "Ratio", 300);
  const before = { ends: await ends(page), ...(await readout(page)) };
  await page.locator("#tin .paint").first().click();
  const after = await ends(page);
  assert.notDeepEqual(after, before.ends);
  await slide(page, "Ratio", 700);
  await page.getByRole("button", { name: "Undo" }).click();
  assert.deepEqual({ ends: await ends(page), ...(await readout(page)) }, before);
  await page.getByRole("button", { name: "Redo" }).click();
  assert.deepEqual(await ends(page), after);
  assert.ok(await page.getByRole("button", { name: "Redo" }).isDisabled());
});

visit("the crossing is where its sentence says", {}, async ({ page }) => {
  const spots = await dabs(page);
  const names = Object.keys(spots);
  const of = (code) => names.find((name) => name.endsWith(` ${code}`));
  for (const pair of [
    [of("PB29"), of("PO73")],
    [of("PG18"), of("PR254")],
    [of("PY184"), of("PV19")],
  ]) {
    for (const name of pair) await page.locator(`#tin .paint[title="${name}"]`).click();
    const { crossing } = await readout(page);
    if (crossing.startsWith("No mix")) continue;
    await page.getByRole("button", { name: "Go there" }).click();
    const { ratio, numbers } = await readout(page);
    const said = (pattern) => crossing.match(pattern)?.[1];
    assert.equal(ratio, said(/at (\d+:\d+)/)?.replace(":", " : "), crossing);
    // Of a grey the value is told, of the dullest mix its chroma.
    const [value, chromaSaid] = [said(/L\*\s(\d+)/), said(/C\*\s(\d+)/)];
    assert.ok(value || chromaSaid, crossing);
    if (value) assert.equal(numbers["Value L*"], value, crossing);
    if (chromaSaid) assert.equal(numbers["Chroma C*"], chromaSaid, crossing);
    const chroma = Number(numbers["Chroma C*"]);
    // Bounds of pure and near, from the measured tables the design names.
    if (crossing.includes("pure grey")) assert.ok(chroma <= 2, `${crossing} C* ${chroma}`);
    if (crossing.startsWith("Almost")) assert.ok(chroma <= 5, `${crossing} C* ${chroma}`);
    const greyest = await greyestOfSlider(page);
    assert.ok(chroma <= greyest + 1, `${crossing}: C* ${chroma}, yet the slider finds ${greyest}`);
  }
});

/** The least C* the ratio slider reads out between the ends. */
const greyestOfSlider = (page) =>
  page.evaluate(() => {
    const slider = document.querySelector('input[aria-label="Ratio"]');
    const chromas = [];
    for (let value = 50; value < 1000; value += 10) {
      slider.value = String(value);
      slider.dispatchEvent(new Event("input", { bubbles: true }));
      const name = [...document.querySelectorAll("#readout dt")].find((dt) => dt.textContent === "Chroma C*");
      chromas.push(Number(name.nextElementSibling.textContent));
    }
    return Math.min(...chromas);
  });
