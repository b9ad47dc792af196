// What stays between visits, and the page without it.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { kept, looksKept, put, texts } from "./support/kept.js";
import { drawn } from "./support/launch.js";
import { linkText } from "./support/link.js";
import { visits } from "./support/visit.js";
import { ends, kit, readout, slide } from "./support/washpath.js";

const visit = visits();

async function rename(page, name) {
  await page.getByLabel("Title of the kit").fill(name);
  await page.getByLabel("Title of the kit").press("Enter");
}

const everything = async (page) => ({
  kit: await kit(page),
  ends: await ends(page),
  readout: await readout(page),
  dim: await page.getByRole("button", { name: "Dim" }).getAttribute("aria-pressed"),
  shelf: await page.getByLabel("Show the shelf on the wheel").isChecked(),
});

visit("a reload keeps kit, ends, mix and settings", {}, async ({ page }) => {
  const first = await everything(page);
  await page.locator("#tin .paint").first().click();
  await slide(page, "Load", 300);
  await page.getByRole("button", { name: "Dim" }).click();
  await page.getByLabel("Show the shelf on the wheel").check();
  await page.getByLabel("Paper").selectOption({ label: "Cream" });
  await rename(page, "Æbleskov, σήμερα");
  await page.locator("#sheet .cell").nth(12).click();
  const before = await everything(page);
  for (const part of Object.keys(first)) assert.notDeepEqual(before[part], first[part], part);
  await page.reload();
  await drawn(page);
  assert.deepEqual(await everything(page), before, "closed at once");
  await slide(page, "Load", 200);
  const { readout: after } = await everything(page);
  await looksKept(page, '"load":0.125');
  // A browser that breaks down tells no page that it goes.
  await page.evaluate(() => addEventListener("pagehide", (event) => event.stopImmediatePropagation(), true));
  await page.reload();
  await drawn(page);
  assert.deepEqual(await everything(page), { ...before, readout: after });
});

const deny = () => {
  for (const verb of ["getItem", "setItem", "removeItem"]) {
    Storage.prototype[verb] = () => {
      throw new DOMException("denied", "SecurityError");
    };
  }
};
const denyAll = () =>
  Object.defineProperty(window, "localStorage", {
    get() {
      throw new DOMException("denied", "SecurityError");
    },
  });

for (const [how, script] of [
  ["its verbs fail", deny],
  ["it may not even be named", denyAll],
]) {
  visit(`the page works where storage is denied: ${how}`, { script }, async ({ page }) => {
    assert.equal((await kit(page)).pans.length, 12);
    await page.locator("#tin .paint").first().click();
    assert.match((await ends(page))[0], /PY184$/);
    await page.locator("#notice").waitFor();
    assert.match(await page.locator("#notice").textContent(), /does not let the page keep anything/);
    await page.locator("#notice").getByRole("button", { name: "Close" }).click();
    // A kit is written at once.
    await rename(page, "Not kept");
    assert.equal((await kit(page)).title, "Not kept");
    assert.ok(await page.locator("#notice").isHidden(), "it is said once");
  });
}

visit("a full store is said, and what could not be kept is kept once there is room", {}, async ({ page }) => {
  await rename(page, "Safe");
  const safe = await texts(page);
  await page.evaluate(() => {
    const { setItem } = Storage.prototype;
    Storage.prototype.setItem = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
    globalThis.makeRoom = () => (Storage.prototype.setItem = setItem);
  });
  await rename(page, "Unsafe");
  await page.locator("#notice").waitFor();
  assert.match(await page.locator("#notice").textContent(), /no room left/);
  assert.deepEqual(
    await kept(page, "kit"),
    Object.fromEntries(
      Object.entries(safe)
        .filter(([key]) => key.startsWith("kit/"))
        .map(([key, text]) => [key, JSON.parse(text).value]),
    ),
    "what is kept stays",
  );
  await page.evaluate(() => globalThis.makeRoom());
  await slide(page, "Load", 300);
  await looksKept(page, '"load":0.25');
  await page.evaluate(() => addEventListener("pagehide", (event) => event.stopImmediatePropagation(), true));
  await page.reload();
  await drawn(page);
  assert.equal((await kit(page)).title, "Unsafe");
});

visit(
  "what is damaged is named and handed out, stays where it is, and is thrown away by a word",
  {},
  async ({ page }) => {
    await rename(page, "Quay");
    await page.getByRole("button", { name: "Copy", exact: true }).click();
    const good = await texts(page);
    const [copy] = Object.keys(await kept(page, "kit")).filter((key) => key !== "kit/demo");
    for (const text of [good[copy].slice(0, 40), good[copy].replace(/"value":"....../, '"value":"AQzzzz')]) {
      await put(page, { [copy]: text });
      await page.reload();
      await drawn(page);
      assert.equal((await kit(page)).title, "Quay");
      assert.match(await page.locator("#notice").textContent(), /one kit could not be read\. Everything else is here/);
      const [file] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", { name: "Save what could not be read" }).click(),
      ]);
      assert.ok((await readFile(await file.path(), "utf8")).includes(text), "the file holds it");
      await rename(page, `Quay`);
      assert.equal((await texts(page))[copy], text, "it stays where it is");
    }
    await page.reload();
    await drawn(page);
    await page.getByRole("button", { name: "Throw it away" }).click();
    assert.equal((await texts(page))[copy], undefined);
    await page.reload();
    await drawn(page);
    assert.ok(await page.locator("#notice").isHidden());
    assert.equal((await kit(page)).title, "Quay");
  },
);

/** How the page kept everything before each thing had an entry of its own, newest first. */
const former = async (page, ...texts) => {
  await page.evaluate((texts) => {
    localStorage.clear();
    ["washpath", "washpath before"].forEach((key, i) => texts[i] && localStorage.setItem(key, texts[i]));
  }, texts);
  await page.reload();
  await drawn(page);
};
/** A kit of ultramarine alone, called Quay. */
const QUAY = `{"kit":"${linkText({ title: "Quay", pans: [[1]] })}","ends":[1,72],"load":0.25,"dim":true}`;

visit("what a former version of the page kept is read, and then kept piece by piece", {}, async ({ page }) => {
  await former(page, QUAY);
  assert.equal((await kit(page)).title, "Quay");
  assert.deepEqual(await ends(page), ["Ultramarine blue PB29", "Burnt sienna PBr7"]);
  assert.equal(await page.getByRole("button", { name: "Dim" }).getAttribute("aria-pressed"), "true");
  assert.deepEqual(await page.evaluate(() => ["washpath", "washpath before"].map((key) => localStorage.getItem(key))), [
    null,
    null,
  ]);
  await page.reload();
  await drawn(page);
  assert.equal((await kit(page)).title, "Quay");
  assert.ok((await page.locator("#kits option").count()) < 2, "and comes in once");
});

visit(
  "a damaged store of a former version brings the one before it, and the damage is handed out",
  {},
  async ({ page }) => {
    for (const text of [QUAY.slice(0, 40), QUAY.replace(/"kit":"....../, '"kit":"AQzzzz')]) {
      await former(page, text, QUAY);
      assert.equal((await kit(page)).title, "Quay");
      assert.match(await page.locator("#notice").textContent(), /could not be read/);
      const [file] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", { name: "Save what could not be read" }).click(),
      ]);
      assert.ok((await readFile(await file.path(), "utf8")).includes(text.match(/AQ\w+/)[0]));
      await rename(page, "Quay, later");
      assert.equal(await page.evaluate(() => localStorage.getItem("washpath")), text, "it stays where it is");
    }
  },
);

visit("closing the page at once loses nothing", {}, async ({ page }) => {
  await rename(page, "Written late");
  await page.reload();
  await drawn(page);
  assert.equal((await kit(page)).title, "Written late");
});

/** Another tab of the same visitor. */
async function another(visitor, address) {
  const other = await visitor.newPage();
  await other.goto(address);
  await drawn(other);
  return other;
}

const kits = (page) => page.locator("#kits option").allTextContents();

visit(
  "two tabs stay in step: what one changes the other shows at once, and says so to a screen reader alone",
  {},
  async ({ page, visitor, address }) => {
    const other = await another(visitor, address);
    await rename(other, "Of the other tab");
    await page.waitForFunction(() => document.querySelector("#tin .title").value === "Of the other tab");
    assert.match(await page.locator("#said").textContent(), /“?Of the other tab”? was changed in another tab/);
    assert.ok(await page.locator("#notice").isHidden());
    assert.ok(await page.getByRole("button", { name: "Undo" }).isDisabled(), "it is the other tab's to take back");
    await rename(page, "Of this tab");
    await other.waitForFunction(() => document.querySelector("#tin .title").value === "Of this tab");
    for (const tab of [page, other]) {
      await tab.reload();
      await drawn(tab);
      assert.equal((await kit(tab)).title, "Of this tab");
      assert.deepEqual(await kits(tab), [], "one kit, and nothing beside it");
    }
  },
);

/** Lets a tab hold back what it hears of others while `isHolding`. Before the page's own listeners, as these are called in turn. */
const holdBack = () => {
  const waiting = [];
  const hold = (event) => {
    if (!globalThis.isHolding) return;
    event.stopImmediatePropagation();
    if (event.type === "storage") waiting.push(event);
  };
  addEventListener("storage", hold);
  // A tab that comes to the front looks what was written meanwhile.
  document.addEventListener("visibilitychange", hold);
  globalThis.listen = () => {
    globalThis.isHolding = false;
    for (const event of waiting) dispatchEvent(new StorageEvent("storage", event));
  };
};
visit("two tabs at once: neither's kit is lost", { script: holdBack }, async ({ page, visitor, address }) => {
  const other = await another(visitor, address);
  // Neither hears of the other until both have changed the same kit.
  for (const tab of [page, other]) await tab.evaluate(() => (globalThis.isHolding = true));
  await rename(page, "Of this tab");
  await rename(other, "Of the other tab");
  assert.match(
    await other.locator("#notice").textContent(),
    /“Of this tab” was changed in two tabs at once\. Both are kept, side by side/,
  );
  for (const tab of [page, other]) await tab.evaluate(() => globalThis.listen());
  const both = ["Of the other tab", "Of this tab, other tab"];
  for (const tab of [page, other]) {
    await tab.locator("#kits option", { hasText: "Of this tab, other tab" }).waitFor({ state: "attached" });
    assert.deepEqual(await kits(tab), both);
  }
  for (const tab of [page, other]) {
    await tab.reload();
    await drawn(tab);
    assert.deepEqual(await kits(tab), both, "as it is kept");
  }
});

visit("a record of another tab's own paint comes in with its paint", {}, async ({ page, visitor, address }) => {
  const other = await another(visitor, address);
  await other.locator(".switch").getByRole("button", { name: "Swatches" }).click();
  await other.getByRole("button", { name: "New from the mix at hand" }).click();
  await other.locator("#own-form [name=name]").fill("Harbour grey");
  await other.getByRole("button", { name: "Put it on my shelf" }).click();
  await other.locator("#mine .take").click();
  await other.locator("#record .typed input[type=text]").fill("lab(40 2 -6)");
  await other.getByRole("button", { name: "Record it" }).click();
  await page.locator(".switch").getByRole("button", { name: "Swatches" }).click();
  await page.locator("#log tbody tr").waitFor();
  assert.match(await page.locator("#mine").textContent(), /Harbour grey/);
  await rename(page, "Of this tab");
  assert.deepEqual(
    [await kept(page, "own"), await kept(page, "record")].map((items) => Object.keys(items).length),
    [1, 1],
  );
});

visit("when the core breaks the page says so and starts again from what is kept", {}, async ({ page, log }) => {
  await page.evaluate(() =>
    setTimeout(() => {
      throw new WebAssembly.RuntimeError("unreachable");
    }),
  );
  await page.locator("#notice").getByRole("button", { name: "Start again" }).click();
  await drawn(page);
  assert.match(log.complaints.join(), /unreachable/);
  log.complaints.length = 0;
});

const garbage = {
  "no JSON": "{",
  "no object": "7",
  nothing: "null",
  "a list": "[1,2]",
  "a kit that is none": '{"kit":{"pans":7}}',
  "a damaged kit and unknown paints": '{"kit":"AQwAA","ends":[99999,"x"],"share":"NaN","load":-3}',
  "wrong kinds throughout": '{"kit":12,"ends":{"0":1},"share":{},"load":null,"showShelf":"yes","dim":"no"}',
  "too few ends": '{"ends":[]}',
  "numbers beyond their ranges": '{"share":1e9,"load":1e-9,"ends":[1,72]}',
};
visit("storage of a former version that holds something else is passed over", {}, async ({ page }) => {
  for (const [what, text] of Object.entries(garbage)) {
    await former(page, text);
    assert.equal((await kit(page)).title, "North Sea harbour, October", what);
    await page.locator("#tin .paint").first().click();
    await page.locator("#tin .paint").last().click();
    const { ratio, numbers } = await readout(page);
    assert.match(ratio, /^\d+ : \d+$/, what);
    assert.match(numbers["Value L*"], /^\d+$/, what);
  }
});
