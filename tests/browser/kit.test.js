// Editing the kit, and taking it back.

import assert from "node:assert/strict";
import { drag } from "./support/touch.js";
import { visits } from "./support/visit.js";
import { ends, kit, pans, pixels } from "./support/washpath.js";

const visit = visits();

const packFirst = async (page, name) => {
  await page.getByLabel("Find a paint").fill(name);
  await page
    .getByRole("button", { name: `Pack ${name}` })
    .first()
    .click();
};
const press = (page, name) => page.getByRole("button", { name, exact: true }).click();
const type = async (page, label, text) => {
  await page.getByLabel(label).fill(text);
  await page.getByLabel(label).press("Tab");
};

visit("a full tin takes no more until it holds more", {}, async ({ page }) => {
  await packFirst(page, "Green gold");
  assert.match(await page.locator("#notice").textContent(), /holds 12 pans and is full/);
  assert.equal((await pans(page)).length, 12);
  await type(page, "Tin holds", "14");
  assert.equal(await page.locator("#tin .gap").count(), 2);
  const ground = await pixels(page, "wheel-ground");
  await packFirst(page, "Green gold");
  assert.equal((await pans(page)).at(-1), "PY129");
  assert.notEqual(await pixels(page, "wheel-ground"), ground, "the wheel shows it");
  assert.ok(await page.getByRole("button", { name: "Green gold is packed" }).isDisabled());
});

visit("a tin is never smaller than what it holds, nor larger than 48", {}, async ({ page }) => {
  for (const [typed, holds, said] of [
    ["3", 12, "12 pans are packed. Take some out first."],
    ["0", 12, "12 pans are packed. Take some out first."],
    ["999", 12, "A tin holds 48 pans at most."],
    ["48", 48],
    ["", 48, "12 pans are packed. Take some out first."],
    ["12.6", 13],
  ]) {
    await type(page, "Tin holds", typed);
    const { capacity, pans } = await kit(page);
    assert.deepEqual([capacity, pans.length], [holds, 12], `"${typed}" typed`);
    if (said) assert.equal(await page.locator("#notice span").first().textContent(), said);
    assert.equal(await page.getByLabel("Tin holds").inputValue(), String(holds), "the field says what the tin holds");
  }
});

visit("pans are moved, split, joined and removed", {}, async ({ page }) => {
  const before = await pans(page);
  await press(page, "Edit pans");
  await press(page, "Later: Bismuth yellow");
  assert.deepEqual((await pans(page)).slice(0, 2), [before[1], before[0]]);
  assert.equal(
    await page.evaluate(() => document.activeElement.getAttribute("aria-label")),
    "Later: Bismuth yellow",
    "focus goes with the pan",
  );
  await press(page, "Earlier: Bismuth yellow");
  assert.deepEqual(await pans(page), before);
  assert.ok(await page.getByRole("button", { name: "Earlier: Bismuth yellow" }).isDisabled());

  const find = page.getByRole("combobox", { name: "Find a paint for pan 1", exact: true });
  await press(page, "Put a paint beside Bismuth yellow");
  await find.fill("green gold");
  await page.getByRole("option", { name: /Green gold PY129/ }).click();
  assert.equal((await pans(page))[0], "PY184+PY129");
  await press(page, "Bismuth yellow PY184: change");
  await find.fill("PY129");
  await find.press("Enter");
  assert.match(await page.locator("#notice").textContent(), /Green gold is in this pan already/);
  await find.fill("PO73");
  assert.match(await page.getByRole("option", { name: /PO73/ }).textContent(), /packed$/);
  await find.press("Enter");
  assert.equal((await pans(page))[0], "PO73+PY129");
  assert.match(await page.locator("#notice").textContent(), /Pyrrole orange is packed twice now, in pans 1 and 3/);
  assert.equal(await page.locator("#tin .twice").count(), 2);
  await press(page, "Green gold PY129: change");
  await press(page, "Take it out");
  assert.equal((await pans(page))[0], "PO73");

  await press(page, "Remove: Viridian");
  assert.equal((await pans(page)).length, 11);
  assert.ok(!(await pans(page)).includes("PG18"));
  assert.ok(await page.getByRole("button", { name: "Pack Viridian" }).isEnabled(), "the shelf offers it again");
});

/** The middle of the handle and of the row of a pan. */
async function handleOf(page, name) {
  const grip = page.getByRole("button", { name: `Move ${name} by dragging` });
  await grip.scrollIntoViewIfNeeded();
  const middle = ({ x, y, width, height }) => ({ x: x + width / 2, y: y + height / 2, height });
  return {
    grip: middle(await grip.boundingBox()),
    row: middle(await page.locator("#tin li", { has: grip }).boundingBox()),
  };
}

const drags = {
  async desktop(page, from, to) {
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, (from.y + to.y) / 2);
    await page.mouse.move(to.x, to.y);
    await page.mouse.up();
  },
  phone: (page, from, to) => drag(page, [from, { x: to.x, y: (from.y + to.y) / 2 }, to]),
};

for (const [size, pull] of Object.entries(drags)) {
  visit(`pans are dragged between others and onto one, ${size}`, { size }, async ({ page }) => {
    if (size === "phone") await page.locator(".tabs").getByRole("button", { name: "Kit" }).tap();
    const before = await pans(page);
    await press(page, "Edit pans");
    await handleOf(page, "Pyrrole red");
    const [first, third] = [await handleOf(page, "Bismuth yellow"), await handleOf(page, "Pyrrole orange")];
    await pull(page, first.grip, { x: third.grip.x, y: third.row.y + third.row.height * 0.45 });
    assert.deepEqual((await pans(page)).slice(0, 3), [before[1], before[2], before[0]], "between two others");
    const [now, onto] = [await handleOf(page, "Pyrrole red"), await handleOf(page, "Yellow iron oxide")];
    await pull(page, now.grip, { x: onto.grip.x, y: onto.row.y });
    assert.equal((await pans(page))[0], "PY42+PR254", "onto one");
    assert.equal((await pans(page)).length, before.length - 1);
    await press(page, "Pyrrole red PR254: change");
    await press(page, "Give each its own pan");
    assert.deepEqual((await pans(page)).slice(0, 2), ["PY42", "PR254"]);
  });
}

visit("pans are moved and filled by keys alone", {}, async ({ page }) => {
  const before = await pans(page);
  await press(page, "Edit pans");
  await page.getByRole("button", { name: "Move Bismuth yellow by dragging" }).focus();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  assert.deepEqual((await pans(page)).slice(0, 3), [before[1], before[2], before[0]]);
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.keyboard.type("gold");
  await page.keyboard.press("Escape");
  const focused = () => page.evaluate(() => document.activeElement.getAttribute("aria-label"));
  assert.equal(await focused(), "Put a paint beside Bismuth yellow");
  await page.keyboard.press("Enter");
  await page.keyboard.type("PY129");
  await page.keyboard.press("Enter");
  assert.equal((await pans(page))[1], "PY184+PY129");
  assert.equal(await focused(), "Green gold PY129: change", "focus stays on what was filled");
});

visit("an empty tin says what to do", {}, async ({ page }) => {
  await press(page, "Edit pans");
  await press(page, "Empty the tin");
  assert.match(await page.locator("#tin").textContent(), /The tin is empty/);
  assert.equal((await kit(page)).title, "North Sea harbour, October", "its title stays");
  assert.equal((await ends(page)).length, 2, "the path stays");
  await page.locator("#tin .empty").getByRole("button", { name: "Demo kit" }).click();
  assert.equal((await pans(page)).length, 12);
});

visit("a new kit leads to the shelf, or to a choice", { size: "phone" }, async ({ page }) => {
  await press(page, "Start my own kit");
  assert.ok(await page.locator("#welcome").isHidden(), "a kit of one's own needs no demo's line");
  assert.equal((await pans(page)).length, 0);
  await press(page, "Choose for me");
  await page.locator("#choose-dialog[open]").waitFor();
  await page.keyboard.press("Escape");
  await press(page, "From the shelf");
  assert.ok(await page.locator("#shelf-find").isVisible());
  await page.reload();
  await page.waitForSelector('html[data-whole="true"]');
  assert.ok(await page.locator("#welcome").isHidden(), "and stays away");
});

visit(
  "a title half typed outlives what happens meanwhile, and the click that leaves it counts",
  {},
  async ({ page }) => {
    const title = page.getByLabel("Title of the kit");
    await title.click();
    await title.press("End");
    await title.pressSequentially(", in fog");
    // As from another tab, or an answer of the worker: the tin would be made anew.
    await page
      .getByRole("slider", { name: "Load" })
      .evaluate((load) => ((load.value = 300), load.dispatchEvent(new Event("input", { bubbles: true }))));
    await page.evaluate(() => document.querySelector("#ends .swap").click());
    assert.equal(await title.inputValue(), "North Sea harbour, October, in fog");
    await press(page, "Edit pans");
    await page.locator("#tin .editor").waitFor();
    assert.equal((await kit(page)).title, "North Sea harbour, October, in fog");
  },
);

visit("another paper changes every swatch", {}, async ({ page }) => {
  const washes = () =>
    page.evaluate(() => [
      document.querySelector("#readout .wash").style.getPropertyValue("--wash"),
      ...[...document.querySelectorAll("#sheet .cell")].map((cell) => cell.style.getPropertyValue("--wash")),
    ]);
  const before = { ground: await pixels(page, "wheel-ground"), washes: await washes() };
  await page.getByLabel("Paper").selectOption({ label: "Tan" });
  const after = await washes();
  const palest = before.washes.length - 9;
  assert.ok(
    after.slice(palest).every((wash, i) => wash !== before.washes[palest + i]),
    "pale washes let the paper through",
  );
  assert.notEqual(await pixels(page, "wheel-ground"), before.ground);
  await press(page, "Undo");
  assert.deepEqual(await washes(), before.washes);
});

visit("every edit is undone and redone, by button and by keys", {}, async ({ page }) => {
  const states = [await kit(page)];
  const edits = [
    () => type(page, "Title of the kit", "Late autumn"),
    () => type(page, "Tin holds", "13"),
    () => page.getByLabel("Paper").selectOption({ label: "Cream" }),
    () => packFirst(page, "Green gold"),
    async () => {
      await press(page, "Edit pans");
      await press(page, "Remove: Viridian");
    },
  ];
  for (const edit of edits) {
    await edit();
    states.push(await kit(page));
  }
  assert.equal(new Set(states.map((state) => JSON.stringify(state))).size, 6, "each edit changed the kit");
  const steps = [
    [() => press(page, "Undo"), () => press(page, "Redo")],
    [() => page.keyboard.press("Control+z"), () => page.keyboard.press("Control+Shift+z")],
    [() => page.keyboard.press("Control+z"), () => page.keyboard.press("Control+y")],
  ];
  for (const [back, forth] of steps) {
    await page.getByRole("button", { name: "Done", exact: true }).focus();
    for (const state of states.slice(0, -1).toReversed()) {
      await back();
      assert.deepEqual(await kit(page), state);
    }
    assert.ok(await page.getByRole("button", { name: "Undo" }).isDisabled());
    for (const state of states.slice(1)) {
      await forth();
      assert.deepEqual(await kit(page), state);
    }
    assert.ok(await page.getByRole("button", { name: "Redo" }).isDisabled());
  }
  await press(page, "Undo");
  await type(page, "Title of the kit", "Another way");
  assert.ok(await page.getByRole("button", { name: "Redo" }).isDisabled(), "a new edit ends the way forth");
});

visit("in a text field the undo keys undo typing", {}, async ({ page }) => {
  await type(page, "Tin holds", "14");
  await page.getByLabel("Title of the kit").focus();
  await page.keyboard.press("Control+z");
  assert.equal((await kit(page)).capacity, 14);
});

visit("the shelf is found by code, name and hue, whatever the accents and marks", {}, async ({ page }) => {
  const found = async (text) => {
    await page.getByLabel("Find a paint").fill(text);
    return page.locator("#shelf-list li:visible .name").allTextContents();
  };
  for (const text of ["pb29", "PB 29", "ultramarine", "Ultramariné"]) {
    assert.ok(
      (await found(text)).some((name) => name.startsWith("Ultramarine blue PB29")),
      text,
    );
  }
  assert.deepEqual(await found("<b>nothing</b>"), []);
  assert.match(await page.locator("#shelf-count").textContent(), /No paint is called “<b>nothing<\/b>”/);
  const all = await found("");
  assert.match(await page.locator("#shelf-count").textContent(), new RegExp(`^${all.length}\\b.*paints`));
});
