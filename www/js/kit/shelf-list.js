// The shelf as a list: every paint there is, found by name, code, hue or what it is like.

import { dabInSight } from "../page/dab.js";
import { button, byId, element } from "../page/dom.js";
import { grade } from "../page/words.js";
import { holds } from "../state/kit.js";
import { fits, has, namesOf, ORDERS, TRAITS } from "./find.js";
import { toggleOwned } from "./owned.js";
import { packPaint } from "./packing.js";

/** Shows the shelf; a click chooses a paint as an end, "Pack" puts it in the kit. */
export function attachShelf(store, shelf, choose) {
  const list = byId("shelf-list");
  const find = byId("shelf-find");
  let names = new Map();
  const wanted = new Set();
  const rows = new Map();

  const order = element(
    "select",
    { id: "shelf-order", onchange: show },
    ...ORDERS.map(({ key, label }) => element("option", { value: key }, label)),
  );
  const traits = TRAITS.map(({ key, label }) => {
    const box = element("input", {
      type: "checkbox",
      onchange: () => {
        if (box.checked) wanted.add(key);
        else wanted.delete(key);
        show();
      },
    });
    return element("label", { class: "tick" }, box, ` ${label}`);
  });
  byId("shelf-sift").replaceChildren(
    element("label", { class: "field" }, element("span", {}, "In order of"), order),
    element(
      "details",
      {},
      element("summary", {}, "Only paints that are …"),
      element("div", { class: "traits-asked" }, ...traits),
    ),
  );

  function row(paint) {
    const words = [
      paint.hue,
      grade("transparency", paint.transparency),
      paint.granulation >= 2 ? "granulating" : null,
      paint.tier === "estimated" ? "estimated" : null,
    ].filter(Boolean);
    const take = button("", () => choose(paint.number), { class: "take" });
    take.append(
      dabInSight(store.get().studio, paint.number, 34),
      element(
        "span",
        { class: "name" },
        `${paint.name} `,
        element("small", {}, paint.code),
        element("span", { class: "traits" }, words.join(" · ")),
      ),
    );
    const packed = button("Pack", () => packPaint(store, paint), { class: "pack" });
    const own = button("Own", () => store.set({ owned: toggleOwned(store.get().owned, paint.number) }), {
      class: "pack",
      "aria-label": `Own ${paint.name}, ${paint.code}`,
    });
    return {
      node: element("li", {}, take, own, packed),
      own,
      packed,
      paint: { ...paint, masstone: store.get().studio.swatch([[paint.number, 1]], 1) },
    };
  }

  function fill() {
    rows.clear();
    names = new Map(shelf.all.map((paint) => [paint.number, namesOf(paint)]));
    for (const paint of shelf.all) rows.set(paint.number, row(paint));
    show();
    markPacked(store.get().kit);
    markOwned(store.get().owned);
  }

  function show() {
    const { compare } = ORDERS.find(({ key }) => key === order.value);
    const found = [...rows.values()].filter(
      ({ paint }) =>
        fits(names.get(paint.number), find.value) &&
        has({ ...paint, owned: store.get().owned.includes(paint.number) }, wanted),
    );
    list.replaceChildren(...found.sort((a, b) => compare(a.paint, b.paint)).map(({ node }) => node));
    byId("shelf-count").textContent = countOf(found.length);
  }

  function countOf(found) {
    if (found > 0) return `${found} of ${shelf.all.length} paints`;
    const typed = find.value.trim();
    return wanted.size
      ? "No paint is all of that. Ask for less."
      : `No paint is called “${typed}”. Try a code such as PB29, or a hue.`;
  }

  function markPacked(kit) {
    for (const { packed, paint } of rows.values()) {
      const inside = holds(kit, paint.number);
      packed.textContent = inside ? "Packed" : "Pack";
      packed.disabled = inside;
      packed.setAttribute("aria-label", inside ? `${paint.name} is packed` : `Pack ${paint.name}`);
    }
  }

  function markOwned(owned) {
    for (const { own, paint } of rows.values()) own.setAttribute("aria-pressed", String(owned.includes(paint.number)));
    if (wanted.has("owned")) show();
  }

  const onWheel = byId("shelf-show");
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
