// The page's own letters in an SVG that is saved: its words are then as wide anywhere as they were laid out.

import { noLetters } from "../words/print.js";

/**
 * An SVG document with the page's letters in it.
 *
 * @param {string} svg
 */
export async function withLetters(svg) {
  const rules = [...document.styleSheets].flatMap(({ cssRules }) => [...cssRules]);
  const letters = rules.find((rule) => rule instanceof CSSFontFaceRule);
  if (!letters) throw new Error(noLetters);
  const { style, parentStyleSheet } = letters;
  const address = style.getPropertyValue("src").match(/url\("(.+?)"\)/)?.[1] ?? "";
  const data = address.startsWith("data:")
    ? address
    : await dataAddress(new URL(address, parentStyleSheet?.href ?? document.baseURI));
  // Sheets are laid out without kerning.
  const sheet = `<style>@font-face { font-family: ${style.fontFamily}; font-weight: ${style.fontWeight}; src: url("${data}"); } text { font-kerning: none; }</style>`;
  return svg.replace(">", () => `>\n${sheet}`);
}

/** @param {URL} address */
async function dataAddress(address) {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(noLetters);
  const reader = new FileReader();
  reader.readAsDataURL(await answer.blob());
  await new Promise((resolve) => reader.addEventListener("load", resolve));
  return reader.result;
}
