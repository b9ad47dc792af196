// Kits that come by a link: shown beside one's own, never instead of it unless asked.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { drawn, open } from "./support/launch.js";
import { crc, linkText, sealed } from "./support/link.js";
import { visits } from "./support/visit.js";
import { kit, pans, sharedLink } from "./support/washpath.js";

const visit = visits();

/** Ultramarine, and burnt sienna beside raw umber, on cream paper. */
const small = { title: "Two pans", capacity: 3, stock: 2, pans: [[1], [72, 74]] };
const smallShown = { title: "Two pans", paper: "Cream", capacity: 3, pans: ["PB29", "PBr7+PBr7"] };
const hash = `#kit=${linkText(small)}`;

const guest = (page) => page.getByRole("region", { name: "A kit came with this link" });

test("the tests' own writer agrees with the reference table", () => {
  // The check value published for CRC-16/IBM-SDLC; `Crc16IbmSdlc` of crccheck 1.3 gives the same.
  assert.equal(crc(Buffer.from("123456789")), 0x906e);
  const table = readFileSync(new URL("../../crate/core/tests/reference/links_v1.csv", import.meta.url), "utf8");
  assert.ok(table.includes(`\n${linkText({})},`));
  const demo = [[35], [32], [45], [48], [57], [60], [72, 74], [59], [1], [3], [7, 71], [15]];
  assert.ok(table.includes(`\n${linkText({ title: "North Sea harbour, October", pans: demo })},`));
});

visit("a shared link shows the same kit to another visitor, who decides", {}, async ({ page, visitor, address }) => {
  const title = page.getByLabel("Title of the kit");
  await title.fill("Sent “over” & <out>");
  await title.press("Enter");
  const sent = await kit(page);
  await page.getByRole("button", { name: "Share" }).click();
  const link = await sharedLink(page);
  assert.ok(link.startsWith(`${address}#kit=`), link);
  assert.match(link.split("#kit=")[1], /^[\w-]+$/);

  const other = await visitor.browser().newContext();
  try {
    const { page: theirs, log } = await open(other, address + hash);
    await theirs.getByRole("button", { name: "Pack the shared kit" }).click();
    const own = await kit(theirs);
    assert.deepEqual(own, smallShown);
    await theirs.goto(link);
    await guest(theirs).waitFor();
    assert.deepEqual(await kit(theirs), own, "their own kit is as it was");
    assert.match(await guest(theirs).textContent(), /Sent “over” & <out>/);
    assert.match(await guest(theirs).textContent(), /Two pans/);
    assert.ok(!theirs.url().includes("#"), "the address lets go of the link");
    await guest(theirs).getByRole("button", { name: "Pack the shared kit" }).click();
    assert.deepEqual(await kit(theirs), sent);
    assert.ok(await guest(theirs).isHidden());
    await theirs.locator("#notice").getByRole("button", { name: "Undo" }).click();
    assert.deepEqual(await kit(theirs), own);
    assert.deepEqual(log.complaints, []);
  } finally {
    await other.close();
  }
});

visit("a kit that is turned down leaves no trace", { hash }, async ({ page }) => {
  const own = await kit(page);
  assert.equal(own.pans.length, 12);
  await guest(page).getByRole("button", { name: "Keep mine" }).click();
  assert.deepEqual(await kit(page), own);
  assert.ok(await guest(page).isHidden());
  assert.ok(await page.getByRole("button", { name: "Undo" }).isDisabled());
  await page.reload();
  await drawn(page);
  assert.ok(await guest(page).isHidden(), "a reload does not ask again");
});

visit("a paint of the guest can be tried before deciding", { hash }, async ({ page }) => {
  await guest(page)
    .getByRole("button", { name: /^Raw umber/ })
    .first()
    .click();
  assert.match(await page.locator("#ends .end").first().textContent(), /Raw umber/);
  assert.equal((await pans(page)).length, 12);
});

visit("a link to the kit at hand only says so", {}, async ({ page, address }) => {
  await page.getByRole("button", { name: "Share" }).click();
  const link = await sharedLink(page);
  await page.keyboard.press("Escape");
  await page.goto(`${address}#${link.split("#")[1]}`);
  await page.waitForFunction(() => !document.getElementById("notice").hidden);
  assert.match(await page.locator("#notice").textContent(), /the kit you already have/);
  assert.ok(await guest(page).isHidden());
});

const good = linkText(small);
const damaged = {
  "of a later version": [linkText({ ...small, version: 200 }), /version 200/],
  "cut short": [good.slice(0, -3), /damaged/],
  "cut to one letter": ["A", /damaged/],
  empty: ["", /damaged/],
  "with one letter changed": [good.slice(0, 6) + (good[6] === "x" ? "y" : "x") + good.slice(7), /damaged/],
  "with letters no link has": [`${good.slice(0, 6)}%3Cscript%3E${good.slice(6)}`, /damaged/],
  "naming an unknown paint": [linkText({ ...small, pans: [[1], [4000]] }), /no paint/],
  "naming no paper": [linkText({ ...small, stock: 9 }), /paper/],
  "with more pans than the tin holds": [linkText({ ...small, capacity: 1 }), /do not fit/],
  "with a tin of nothing": [linkText({ capacity: 0 }), /holds 1 to 48/],
  "with a title beyond its limit": [linkText({ ...small, title: "x".repeat(61) }), /title/],
  "with a title that is no text": [sealed([1, 3, 0, 0, 0xff, 0xfe]), /title/],
  "written in a longer way": [sealed([1, 3, 0, 1, 0x82, 0x00]), /damaged/],
  "of endless length": ["A".repeat(200_000), /damaged/],
};
visit("a damaged link changes nothing and says why", {}, async ({ page, address }) => {
  const own = await kit(page);
  const line = page.locator("#notice span");
  for (const [how, [text, said]] of Object.entries(damaged)) {
    await page.evaluate(() => document.getElementById("notice").replaceChildren());
    await page.goto(`${address}#kit=${text}`);
    await line.waitFor();
    assert.match(await line.textContent(), said, how);
    assert.match(await line.textContent(), /Your kit is as it was/, how);
    assert.ok(await guest(page).isHidden(), how);
    assert.deepEqual(await kit(page), own, how);
  }
  assert.ok(await page.getByRole("button", { name: "Undo" }).isDisabled());
});

visit("a damaged link on a first visit leaves the demo", { hash: `#kit=${good.slice(0, -3)}` }, async ({ page }) => {
  assert.match(await page.locator("#notice span").textContent(), /damaged/);
  assert.equal((await kit(page)).title, "North Sea harbour, October");
});

visit(
  "a hostile title stays text",
  { hash: `#kit=${linkText({ ...small, title: "<img src=x onerror=alert(1)>" })}` },
  async ({ page }) => {
    assert.match(await guest(page).textContent(), /<img src=x onerror=alert\(1\)>/);
    assert.equal(await page.locator("img:not(#share-code), #guest script").count(), 0);
    await guest(page).getByRole("button", { name: "Pack the shared kit" }).click();
    assert.equal((await kit(page)).title, "<img src=x onerror=alert(1)>");
    assert.equal(await page.locator("img:not(#share-code)").count(), 0);
  },
);
