// The shelf: every paint there is, found by name, code or hue.

import { dabOf } from "./dab.js";
import { button, byId, element, notice, say } from "./dom.js";
import { holds, isFull, pack } from "./kit.js";
import { grade } from "./words.js";

/** Paints by number, and all in hue order. */
export function createShelf(paints) {
  const byNumber = new Map(paints.map((paint) => [paint.number, paint]));
  const byKey = new Map(paints.map((paint) => [paint.key, paint]));
  return { all: paints, get: (number) => byNumber.get(number), find: (key) => byKey.get(key) };
}

/** Letters and digits only, without accents, in lower case. */
const plain = (text) => text.normalize("NFD").replace(/[^\p{L}\p{N} ]/gu, "").toLowerCase();

/** Whether every word typed stands somewhere in the paint's names. */
function matches(paint, words) {
  const text = plain([paint.code, paint.name, paint.hue, paint.family, ...paint.aliases].join(" "));
  return words.every((word) => text.includes(word));
}

/** Shows the shelf; a click chooses a paint as an end, "Pack" puts it in the kit. */
export function attachShelf(store, shelf, choose) {
  const list = byId("shelf-list");
  const find = byId("shelf-find");
  const rows = new Map();

  function row(paint) {
    const traits = [paint.hue, grade("transparency", paint.transparency), paint.granulation >= 2 ? "granulating" : null, paint.tier === "estimated" ? "estimated" : null].filter(Boolean);
    const take = button("", () => choose(paint.number), { class: "take", "aria-label": `${paint.name}, ${paint.code}: choose as an end` });
    take.append(dabOf(store.get().studio, paint.number, 34),
      element("span", { class: "name" }, `${paint.name} `, element("small", {}, paint.code), element("span", { class: "traits" }, traits.join(" · "))));
    const packed = button("Pack", () => packIt(paint), { class: "pack" });
    return { node: element("li", {}, take, packed), packed };
  }

  function packIt(paint) {
    const { kit } = store.get();
    if (isFull(kit)) return notice(`The tin holds ${kit.capacity} pans and is full. Remove a pan, or let the tin hold more.`, { seconds: 8 });
    store.set({ kit: pack(kit, paint.number) });
    say(`${paint.name} packed`);
  }

  function fill() {
    rows.clear();
    for (const paint of shelf.all) rows.set(paint.number, row(paint));
    list.replaceChildren(...[...rows.values()].map(({ node }) => node));
    filter();
    markPacked(store.get().kit);
  }

  function filter() {
    const words = plain(find.value).split(" ").filter(Boolean);
    let found = 0;
    for (const paint of shelf.all) {
      const fits = matches(paint, words);
      rows.get(paint.number).node.hidden = !fits;
      found += fits;
    }
    byId("shelf-count").textContent = found ? `${found} ${found === 1 ? "paint" : "paints"}` : `No paint is called “${find.value.trim()}”. Try a code such as PB29, or a hue.`;
  }

  function markPacked(kit) {
    for (const paint of shelf.all) {
      const { packed } = rows.get(paint.number);
      const inside = holds(kit, paint.number);
      packed.textContent = inside ? "Packed" : "Pack";
      packed.disabled = inside;
      packed.setAttribute("aria-label", inside ? `${paint.name} is packed` : `Pack ${paint.name}`);
    }
  }

  const show = byId("shelf-show");
  show.checked = store.get().showShelf;
  show.addEventListener("change", () => store.set({ showShelf: show.checked }));
  find.addEventListener("input", filter);
  store.subscribe((state, changed) => {
    if (changed.has("studio")) fill();
    else if (changed.has("kit")) markPacked(state.kit);
  });
  fill();
}
