// Free of what axe-core can find, named for a screen reader, calm for whoever asks.

import assert from "node:assert/strict";
import { assertAccessible } from "./support/axe.js";
import { linkText } from "./support/link.js";
import { visits } from "./support/visit.js";

const visit = visits();

const press = (page, name) => page.getByRole("button", { name, exact: true }).click();
const guest = `#kit=${linkText({ title: "Guest", pans: [[1], [72, 74]] })}`;
const damaged = "#kit=AQwAA";

/** In forced colours the contrast is the person's own, and axe computes it from the page's. */
const views = {
  "at first": [{}],
  "while editing": [{}, (page) => press(page, "Edit pans")],
  "with an empty tin": [{}, async (page) => {
    await press(page, "Edit pans");
    await press(page, "Empty the tin");
  }],
  "while sharing": [{}, (page) => press(page, "Share")],
  "while helping": [{}, (page) => press(page, "Help")],
  "with a guest": [{ hash: guest }],
  "with a notice": [{ hash: damaged }],
  "in dim surround": [{}, (page) => press(page, "Dim")],
  "in dim surround, editing, with a guest": [{ hash: guest }, async (page) => {
    await press(page, "Dim");
    await press(page, "Edit pans");
  }],
  "in forced colours": [{ context: { forcedColors: "active" }, without: ["color-contrast"] }],
  "where nothing is found": [{}, (page) => page.getByLabel("Find a paint").fill("xyz")],
  "on a tablet": [{ size: "tablet" }],
  "on a phone, mix": [{ size: "phone" }],
  "on a phone, kit": [{ size: "phone" }, (page) => page.locator(".tabs").getByRole("button", { name: "Kit" }).tap()],
  "on a phone, shelf": [{ size: "phone" }, (page) => page.locator(".tabs").getByRole("button", { name: "Shelf" }).tap()],
};
for (const [name, [options, act = async () => {}]] of Object.entries(views)) {
  visit(`axe-core finds nothing ${name}`, options, async ({ page }) => {
    await act(page);
    await assertAccessible(page, options.without);
  });
}

visit("a screen reader is given the parts of the page by name", {}, async ({ page }) => {
  const tree = await page.locator("body").ariaSnapshot();
  const roles = [
    /link "Skip to the mix"/,
    /banner:/,
    /heading "Washpath" \[level=1\]/,
    /button "Undo" \[disabled\]/,
    /main:/,
    /region "Hue wheel"/,
    /application "Hue wheel of the kit"/,
    /region "Mix"/,
    /button "A\W+Ultramarine blue\W+PB29\b.*" \[pressed\]/,
    /slider "Ratio"/,
    /slider "Load"/,
    /table "Mixes of Ultramarine blue \(A\) and Burnt sienna \(B\)"/,
    /columnheader "2:1"/,
    /region "Kit"/,
    /textbox "Title of the kit"/,
    /list "Pans"/,
    /button "Burnt sienna, PBr7, is B"/,
    /combobox "Light"/,
    /button "All loads"/,
    /group "Mixed or glazed"/,
    /button "A over B /,
    /heading "Puddles"/,
    /combobox "Whose partners"/,
    /button "Report"/,
    /button "Match"/,
    /region "Shelf"/,
    /searchbox "Find a paint"/,
    /button "Pack Green gold"/,
  ];
  for (const role of roles) assert.match(tree, role);
  assert.ok(!/- (button|slider|textbox|combobox)(:| *\n)/.test(tree), "nothing is without a name");
});

visit("sliders say what they stand for", {}, async ({ page }) => {
  const spoken = (name) => page.getByRole("slider", { name }).getAttribute("aria-valuetext");
  await page.locator('#sheet .cell[aria-label^="2:1, light wash"]').click();
  assert.equal(await spoken("Ratio"), "2 parts Ultramarine blue, 1 part Burnt sienna");
  assert.equal(await spoken("Load"), "light wash");
});

for (const wish of ["no-preference", "reduce"]) {
  visit(`nothing moves by itself, motion ${wish}`, { context: { reducedMotion: wish } }, async ({ page }) => {
    const moving = await page.evaluate(() =>
      [...document.querySelectorAll("*")].filter((node) => {
        const { transitionDuration, animationName } = getComputedStyle(node);
        return animationName !== "none" || transitionDuration.split(",").some((time) => parseFloat(time) > 0);
      }).length,
    );
    assert.equal(moving, 0, `${moving} elements move`);
  });
}

visit("a dark scheme gives the dim surround, and the choice stays", { context: { colorScheme: "dark" } }, async ({ page }) => {
  const surround = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor.match(/\d+/g).map(Number));
  const dim = await surround();
  assert.ok(dim.every((value) => value === dim[0] && value < 80), `neutral and dark: ${dim}`);
  await press(page, "Dim");
  const light = await surround();
  assert.ok(light.every((value) => value === light[0] && value > 190), `neutral and light: ${light}`);
});

visit("nothing but paint is coloured", {}, async ({ page }) => {
  for (const surround of ["light", "dim"]) {
    if (surround === "dim") await press(page, "Dim");
    const coloured = await page.evaluate(() =>
      [...document.querySelectorAll("body, body *")].filter((node) => !node.matches(".wash, .cell, .chip")).flatMap((node) => {
        const style = getComputedStyle(node);
        return ["color", "backgroundColor", "borderTopColor", "outlineColor"].filter((key) => {
          const [r, g, b, alpha = 1] = style[key].match(/[\d.]+/g).map(Number);
          return alpha > 0 && Math.max(r, g, b) - Math.min(r, g, b) > 0;
        }).map((key) => `${node.tagName.toLowerCase()}.${node.className} ${key} ${style[key]}`);
      }),
    );
    assert.deepEqual(coloured.slice(0, 5), [], surround);
  }
});
