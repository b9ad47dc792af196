// The shelf as a list: every paint there is, found by name, code, hue or what it is like.

/** @import { Kit, Paint, Shelf, Store, Studio } from "../state/types.js" */

/** @typedef {ReturnType<typeof rowOf>} Row */

import { GRANULATES } from "../../pkg/facts.js";
import { dabInSight, paintLine } from "../page/dab.js";
import { button, byId, element } from "../page/dom.js";
import { holds } from "../state/pans.js";
import { estimated, grade, granulating } from "../words/ratings.js";
import * as words from "../words/shelf.js";
import * as tin from "../words/tin.js";
import { farness, fits, has, namesOf } from "./find.js";
import { packPaint } from "./packing.js";
import { createSieve } from "./sieve.js";
import { toggleOwned } from "./substitutes.js";

/**
 * Shows the shelf; a click chooses a paint as an end, "Pack" puts it in the kit.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {(paint: number) => void} choose
 */
export function attachShelf(store, shelf, choose) {
  const list = byId("shelf-list");
  const find = byId("shelf-find", HTMLInputElement);
  const sieve = createSieve(byId("shelf-sift"), show);
  /** @type {Row[]} */
  let rows = [];

  function fill() {
    rows = shelf.all.map((paint) => rowOf(paint, store, choose));
    show();
    markPacked(store.get().kit);
    markOwned(store.get().owned);
  }

  function show() {
    const { owned } = store.get();
    const found = rows.filter(
      ({ paint, names }) =>
        fits(names, find.value) && has({ ...paint, owned: owned.includes(paint.number) }, sieve.wanted),
    );
    /** @param {Row} row */
    const far = (row) => farness(row.paint, find.value);
    found.sort((a, b) => far(a) - far(b) || sieve.compare(a.paint, b.paint));
    list.replaceChildren(...found.map(({ node }) => node));
    byId("shelf-count").textContent = countOf(found.length);
  }

  /** @param {number} found */
  function countOf(found) {
    if (found > 0) return words.count(found, shelf.all.length);
    const typed = find.value.trim();
    return sieve.wanted.size ? words.noneIsAll : words.noneIsCalled(typed);
  }

  /** @param {Kit} kit */
  function markPacked(kit) {
    for (const { packed, paint } of rows) {
      const inside = holds(kit, paint.number);
      packed.textContent = inside ? tin.packed : tin.pack;
      packed.disabled = inside;
      packed.setAttribute("aria-label", inside ? tin.isPacked(paint.name) : tin.packIt(paint.name));
    }
  }

  /** @param {number[]} owned */
  function markOwned(owned) {
    for (const { own, paint } of rows) own.setAttribute("aria-pressed", String(owned.includes(paint.number)));
    if (sieve.wanted.has("owned")) show();
  }

  const onWheel = byId("shelf-show", HTMLInputElement);
  onWheel.checked = store.get().showShelf;
  onWheel.addEventListener("change", () => store.set({ showShelf: onWheel.checked }));
  find.addEventListener("input", show);
  store.subscribe((state, changed) => {
    if (changed.has("studio")) fill();
    else if (changed.has("kit")) markPacked(state.kit);
    if (changed.has("owned")) markOwned(state.owned);
  });
  fill();
}

/**
 * A paint's row: its node, the two buttons that are marked later, and what the paint is found and put in order by.
 *
 * @param {Paint} paint
 * @param {Store} store
 * @param {(paint: number) => void} choose
 */
function rowOf(paint, store, choose) {
  const { studio } = store.get();
  const packed = button(tin.pack, () => packPaint(store, paint), { class: "pack" });
  const own = button(words.own, () => store.set({ owned: toggleOwned(store.get().owned, paint.number) }), {
    class: "pack",
    "aria-label": words.ownIt(paint),
  });
  return {
    node: element("li", {}, takeOf(paint, studio, choose), own, packed),
    own,
    packed,
    names: namesOf(paint),
    paint: { ...paint, masstone: studio.swatch([[paint.number, 1]], 1) },
  };
}

/**
 * The button that takes a paint as an end, with its dab and what it is like.
 *
 * @param {Paint} paint
 * @param {Studio} studio
 * @param {(paint: number) => void} choose
 */
function takeOf(paint, studio, choose) {
  const traits = [
    paint.hue,
    grade("transparency", paint.transparency),
    (paint.granulation ?? 0) >= GRANULATES ? granulating : null,
    paint.tier === "estimated" ? estimated : null,
  ].filter(Boolean);
  const take = button("", () => choose(paint.number), { class: "take" });
  take.append(dabInSight(studio, paint.number, 34), paintLine(paint, traits.join(" · ")));
  return take;
}
