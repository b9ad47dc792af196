// Free of what axe-core can find, named for a screen reader, calm for whoever asks.

import assert from "node:assert/strict";
import { assertAccessible } from "./support/axe.js";
import { linkText } from "./support/link.js";
import { photo, show } from "./support/show.js";
import { visits } from "./support/visit.js";

const visit = visits();

const press = (page, name) => page.getByRole("button", { name, exact: true }).click();
const guest = `#kit=${linkText({ title: "Guest", pans: [[1], [72, 74]] })}`;
const damaged = "#kit=AQwAA";

/** In forced colours the contrast is the person's own, and axe computes it from the page's. */
const views = {
  "at first": [{}],
  "while editing": [{}, (page) => press(page, "Edit pans")],
  "with an empty tin": [
    {},
    async (page) => {
      await press(page, "Edit pans");
      await press(page, "Empty the tin");
    },
  ],
  "while sharing": [{}, (page) => press(page, "Share")],
  "while helping": [{}, (page) => press(page, "Help")],
  "with a guest": [{ hash: guest }],
  "with a notice": [{ hash: damaged }],
  "in dim surround": [{}, (page) => press(page, "Dim")],
  "in dim surround, editing, with a guest": [
    { hash: guest },
    async (page) => {
      await press(page, "Dim");
      await press(page, "Edit pans");
    },
  ],
  "in forced colours": [{ context: { forcedColors: "active" }, without: ["color-contrast"] }],
  "where nothing is found": [{}, (page) => page.getByLabel("Find a paint").fill("xyz")],
  "on a tablet": [{ size: "tablet" }],
  "on a phone, mix": [{ size: "phone" }],
  "on a phone, kit": [{ size: "phone" }, (page) => page.locator(".tabs").getByRole("button", { name: "Kit" }).tap()],
  "on a phone, shelf": [
    { size: "phone" },
    (page) => page.locator(".tabs").getByRole("button", { name: "Shelf" }).tap(),
  ],
};
for (const [name, [options, act = async () => {}]] of Object.entries(views)) {
  visit(`axe-core finds nothing ${name}`, options, async ({ page }) => {
    await act(page);
    await assertAccessible(page, options.without);
  });
}

/** What takes some steps to reach; on a phone each part has the window to itself. */
const further = {
  "while printing": async (page) => {
    await press(page, "Print");
    await page.locator("#print-proof svg").waitFor();
  },
  "with a paint of one's own": async (page) => {
    await show(page, "Swatches");
    await press(page, "New from swatches");
    await page.getByText("What it is like").click();
  },
  "with records": async (page) => {
    await show(page, "Swatches");
    await page.locator("#record .typed input[type=text]").fill("lab(36 4 -6)");
    await press(page, "Record it");
    await page.locator("#lesson .figures").waitFor();
    await page.locator("#plan .take").first().waitFor();
  },
  "with recipes, a photo and a place": async (page) => {
    await show(page, "Match");
    await page.locator("#target-text").fill("lab(45 -12 10)");
    await page.locator("#recipes li").first().waitFor();
    await page.locator("#photo-file").setInputFiles(photo);
    await page.locator("#photo .picture").waitFor();
    await press(page, "Find them in the photo");
    await page.locator("#place li").first().waitFor();
  },
  "with the report and its folds open": async (page) => {
    await show(page, "Report");
    await page.locator("#report-said li").first().waitFor();
    for (const fold of await page.locator("#report summary").all()) await fold.click();
    await page.locator("#next .rows li").first().waitFor();
  },
  "while kits are compared": async (page) => {
    await show(page, "Kit");
    await press(page, "Copy");
    await press(page, "Compare");
    await page.locator("#compare-body table").waitFor();
  },
  "with a chosen kit": async (page) => {
    await show(page, "Report");
    await press(page, "Choose a kit for me");
    await page.locator("#choose-form [name=size]").fill("3");
    await press(page, "Choose");
    await page.locator("#choose-outcome .main").waitFor({ timeout: 60_000 });
  },
  "with a sheet of one's own": (page) => page.getByLabel("Paper").selectOption({ label: "My own …" }),
};
for (const [name, act] of Object.entries(further)) {
  for (const size of ["desktop", "phone"]) {
    visit(`axe-core finds nothing ${name}, ${size}`, { size }, async ({ page }) => {
      if (size === "phone" && name.includes("sheet")) await show(page, "Kit");
      await act(page);
      await assertAccessible(page);
    });
  }
}
visit("axe-core finds nothing while helping, phone", { size: "phone" }, async ({ page }) => {
  await press(page, "Help");
  await assertAccessible(page);
});

visit("a screen reader is given the parts of the page by name", {}, async ({ page }) => {
  // What is not scrolled to is filled after a while.
  await page.locator("#partners h4").first().waitFor({ state: "attached" });
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
    /button "Burnt sienna, PBr7 sienna, is B"/,
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
    const moving = await page.evaluate(
      () =>
        [...document.querySelectorAll("*")].filter((node) => {
          const { transitionDuration, animationName } = getComputedStyle(node);
          return animationName !== "none" || transitionDuration.split(",").some((time) => parseFloat(time) > 0);
        }).length,
    );
    assert.equal(moving, 0, `${moving} elements move`);
  });
}

visit(
  "a dark scheme gives the dim surround, and the choice stays",
  { context: { colorScheme: "dark" } },
  async ({ page }) => {
    const surround = () =>
      page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor.match(/\d+/g).map(Number));
    const dim = await surround();
    assert.ok(
      dim.every((value) => value === dim[0] && value < 80),
      `neutral and dark: ${dim}`,
    );
    await press(page, "Dim");
    const light = await surround();
    assert.ok(
      light.every((value) => value === light[0] && value > 190),
      `neutral and light: ${light}`,
    );
  },
);

visit("nothing but paint and the paper it lies on is coloured", {}, async ({ page }) => {
  for (const surround of ["light", "dim"]) {
    if (surround === "dim") await press(page, "Dim");
    const coloured = await page.evaluate(() =>
      [...document.querySelectorAll("body, body *")]
        .filter((node) => !node.matches(".wash, .cell, .chip, .pan, .sheet table, .chips li"))
        .flatMap((node) => {
          const style = getComputedStyle(node);
          return ["color", "backgroundColor", "borderTopColor", "outlineColor"]
            .filter((key) => {
              const [r, g, b, alpha = 1] = style[key].match(/[\d.]+/g).map(Number);
              return alpha > 0 && Math.max(r, g, b) - Math.min(r, g, b) > 0;
            })
            .map((key) => `${node.tagName.toLowerCase()}.${node.className} ${key} ${style[key]}`);
        }),
    );
    assert.deepEqual(coloured.slice(0, 5), [], surround);
  }
});
