// Where links lead: to the page itself, or, if it was opened from a disk, to the copy of it that is hosted.

/** @import { Core, State } from "../state/types.js" */

import { element } from "../page/dom.js";
import { MARK, textOf } from "../state/link.js";
import * as words from "../words/host.js";

const KEY = "washpath host";
const here = location.href.split("#")[0];
const onDisk = location.protocol === "file:";
let host = onDisk ? remembered() : here;

/** Whether others can open the links. */
export const isHosted = () => host !== "";

/**
 * The link of the kit at hand.
 *
 * @param {State} state
 * @param {Core} core
 */
export const linkOf = (state, core) => (host || here) + MARK + textOf(state, core, state.kit);

/**
 * Where the page was opened from a disk, a field for the address of the hosted one; `changed` hears when there is another. Its `show` puts what is known into it.
 *
 * @param {() => void} changed
 */
export function hostField(changed) {
  const field = element("input", {
    type: "url",
    inputmode: "url",
    placeholder: "https://",
    autocomplete: "off",
    spellcheck: "false",
  });
  const said = element("p", { class: "fault-said", role: "status" });
  const node = element(
    "div",
    { class: "host", hidden: !onDisk },
    element("label", { class: "field" }, element("span", {}, words.address), field),
    said,
    element("p", { class: "quiet" }, words.onDisk),
  );
  field.addEventListener("change", () => {
    try {
      host = addressOf(field.value);
      remember();
      show();
      changed();
    } catch (error) {
      said.textContent = words.unchanged(error.message);
    }
  });
  function show() {
    field.value = host;
    said.textContent = "";
  }
  return { node, show };
}

/**
 * A page's address from what was typed or pasted, without its fragment; nothing of nothing. Anything else is thrown.
 *
 * @param {string} typed
 */
function addressOf(typed) {
  const text = typed.replace(/\p{Cf}/gu, "").trim();
  if (text === "") return "";
  const full = /^[a-z][a-z\d+.-]*:(?!\d)/i.test(text) ? text : `https://${text}`;
  const said = [...text].slice(0, 60).join("");
  // The browser would write spaces as %20: mostly words were pasted along.
  if (/\s/.test(text)) refuse(words.hasSpaces(said));
  const url = parsed(full);
  if (url && !/^https?:$/.test(url.protocol)) refuse(words.noPage(said));
  if (url && /^(localhost|.*\.localhost|127\..*|0\.0\.0\.0|\[::1?\])\.?$/.test(url.hostname))
    refuse(words.onlyHere(said));
  if (url?.username || url?.password) refuse(words.hasPassword(said));
  // The URL standard lets through what no name server knows.
  if (url && !isHost(url)) refuse(words.unknown(said));
  // A name without an ending may be a house's own, but by itself it is a word.
  if (!url || (full !== text && !url.hostname.includes("."))) refuse(words.noAddress(said));
  return url.href.split("#")[0];
}

/**
 * Whether a browser asks for it: an IPv6 address, or labels as RFC 1123 has them, and a port that is one.
 *
 * @param {URL} url
 */
function isHost({ hostname, port }) {
  const labels = hostname.replace(/\.$/, "").split(".");
  const known =
    hostname.startsWith("[") ||
    (hostname.length <= 254 && labels.every((label) => /^[a-z\d_]([a-z\d_-]{0,61}[a-z\d_])?$/.test(label)));
  return known && port !== "0";
}

function remembered() {
  try {
    return addressOf(localStorage.getItem(KEY) ?? "");
  } catch {
    return "";
  }
}

function remember() {
  try {
    localStorage.setItem(KEY, host);
  } catch {
    // It holds for this visit.
  }
}

/** @param {string} address */
function parsed(address) {
  try {
    return new URL(address);
  } catch {
    return null;
  }
}

/**
 * @param {string} reason
 * @returns {never}
 */
function refuse(reason) {
  throw new Error(reason);
}
