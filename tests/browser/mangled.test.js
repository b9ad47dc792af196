// Links as mail and chat programs hand them on.

import assert from "node:assert/strict";
import { test } from "node:test";
import { linkText } from "../../target/sources/js/state/link-text.js";
import { goldenLinks } from "./support/tables.js";
import { visits } from "./support/visit.js";

const visit = visits();

/** The text broken into lines of 76 letters, as mail does. */
const lines = (text, end) => text.match(/.{1,76}/g).join(end);

/** What becomes of a fragment on its way, by what did it. */
const manglings = {
  nothing: (text) => `#kit=${text}`,
  "the full stop of its sentence": (text) => `#kit=${text}.`,
  "a bracket around it": (text) => `#kit=${text})`,
  "bracket and full stop": (text) => `#kit=${text}).`,
  "a comma": (text) => `#kit=${text},`,
  "a quotation mark": (text) => `#kit=${text}”`,
  "an angle bracket": (text) => `#kit=${text}%3E`,
  padding: (text) => `#kit=${text}==`,
  "padding, encoded": (text) => `#kit=${text}%3D%3D`,
  "line ends": (text) => `#kit=${lines(text, "\r\n")}`,
  "encoded line ends": (text) => `#kit=${lines(text, "%0D%0A")}`,
  "lines with spaces in front": (text) => `#kit=${lines(text, "%0A%20%20")}`,
  "mail of seven bits": (text) => `#kit=3D${lines(text, "=\r\n")}`,
  "a line end behind the sign": (text) => `#kit=%0A${text}`,
  "a zero-width space at its end": (text) => `#kit=${text}\u200b`,
  "zero-width spaces to break at": (text) => `#kit=${lines(text, "%E2%80%8B")}`,
  "a byte order mark": (text) => `#%EF%BB%BFkit=${text}`,
  "marks of direction": (text) => `#kit=%E2%80%8E${text}%E2%80%AC`,
  "soft hyphens": (text) => `#kit=${lines(text, "%C2%AD")}`,
  capitals: (text) => `#KIT=${text}`,
  "an encoded sign": (text) => `#kit%3D${text}`,
  "a sign encoded in small letters": (text) => `#kit%3d${text}`,
  "a sign encoded twice": (text) => `#kit%253D${text}`,
  "a campaign's parameters": (text) => `#kit=${text}&utm_source=mail&utm_medium=x`,
  "the same, encoded": (text) => `#kit=${text}%26utm_source%3Dmail`,
  "a page's own number for a click": (text) => `#kit=${text}?fbclid=IwAR0_x-y`,
  "parameters in front": (text) => `#utm_source=mail&kit=${text}`,
  "a bang in front": (text) => `#!kit=${text}`,
  "bytes that are no text": (text) => `#kit=${text}%FF`,
};

test("every link that was given out survives every mangling", () => {
  for (const { text, title } of goldenLinks()) {
    for (const [by, mangle] of Object.entries(manglings)) assert.equal(linkText(mangle(text)), text, `${title}: ${by}`);
  }
});

test("what is no link of a kit is none", () => {
  for (const hash of ["", "#", "#mix", "#kit", "#kitchen=1", "#toolkit=AQEAALm6", "#a=kit", "#%"])
    assert.equal(linkText(hash), null, hash);
  assert.equal(linkText("#kit="), "");
  assert.equal(linkText("#kit=%"), "");
});

visit("mangled links open, and a broken one says what is wrong", {}, async ({ page }) => {
  const text = "AQYCAqABnwFAw4ljbHVzZSwgY2Fmw6kgw6AgbOKAmWF1YmXItQ";
  const guest = page.getByRole("region", { name: "A kit came with this link" });
  for (const [by, mangle] of Object.entries(manglings)) {
    await page.evaluate((hash) => (location.hash = hash), mangle(text));
    await guest.getByText("Écluse").waitFor();
    await guest.getByRole("button", { name: "Keep mine" }).click();
    assert.ok(!page.url().includes("#"), by);
  }
  for (const [hash, words] of [
    [`#kit=${text.slice(0, 30)}`, /cut short/],
    [`#kit=${text.toLowerCase()}`, /changed|cut short|version/],
    ["#kit=", /cut short/],
  ]) {
    await page.evaluate((hash) => (location.hash = hash), hash);
    await page.locator("#notice").getByText("The link could not be read").waitFor();
    assert.match(await page.locator("#notice").textContent(), words, hash);
    await page.locator("#notice").getByRole("button", { name: "Close" }).click();
  }
});
