// The kit: its tin of pans, and editing them.

import { dabOf } from "../page/dab.js";
import { button, byId, element, say } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { demoKit } from "../state/demo.js";
import { endOf } from "../state/end.js";
import { emptyKit, LONGEST_TITLE, MOST_PANS, move, PAPERS, refill, remove, resize, retitle } from "../state/kit.js";

/** Shows the tin; `choose` takes a paint as an end of the path, `showShelf` leads to the shelf. */
export function attachTin(store, shelf, choose, askPaper, showShelf) {
  const frame = byId("tin");
  const edit = (kit, word) => {
    store.set({ kit });
    if (word) say(word);
  };

  let edited = {};

  /** The editor is large: it is made anew only when the kit or the shelf changed. */
  function editorOf(kit) {
    if (edited.kit !== kit || edited.all !== shelf.all) edited = { kit, all: shelf.all, node: editor(kit) };
    return edited.node;
  }

  function show({ kit, ends, studio, editing }) {
    remake(
      frame,
      title(kit),
      element(
        "ol",
        { class: "pans", "aria-label": "Pans" },
        ...kit.pans.map((pan) => panOf(pan, ends, studio)),
        ...gaps(kit),
      ),
      kit.pans.length === 0 ? emptyTin() : "",
      settings(kit, editing),
      editing ? editorOf(kit) : "",
    );
  }

  function title(kit) {
    const input = element("input", {
      class: "title",
      "aria-label": "Title of the kit",
      placeholder: "Name this kit",
      maxlength: LONGEST_TITLE,
      "data-focus": "title",
      onchange: () => edit(retitle(store.get().kit, input.value)),
    });
    input.value = kit.title;
    return element(
      "div",
      { class: "heading" },
      input,
      element("p", { class: "quiet" }, `${kit.pans.length} of ${kit.capacity} pans`),
    );
  }

  function panOf(pan, ends, studio) {
    const halves = pan.map((paint) => {
      const { name, code } = shelf.get(paint);
      const end = endOf(ends, paint);
      return button("", () => choose(paint), {
        class: "paint",
        title: `${name} ${code}`,
        "data-focus": `pan-${paint}`,
        "aria-label": `${name}, ${code}${end >= 0 ? `, is ${"AB"[end]}` : ""}`,
        "data-end": end >= 0 ? "AB"[end] : null,
      });
    });
    halves.forEach((half, i) =>
      half.append(dabOf(studio, pan[i], pan.length > 1 ? 26 : 38), element("span", {}, shelf.get(pan[i]).code)),
    );
    return element("li", { class: pan.length > 1 ? "pan split" : "pan" }, ...halves);
  }

  /** What to do about an empty tin. */
  const emptyTin = () =>
    element(
      "div",
      { class: "empty" },
      element("p", {}, "The tin is empty. How would you like to fill it?"),
      element(
        "div",
        { class: "verbs" },
        button("From the shelf", showShelf, { class: "main", "data-focus": "from-shelf" }),
        button("Choose for me", () => byId("choose-open").click(), { "data-focus": "choose" }),
        button("Demo kit", packDemo, { "data-focus": "demo" }),
      ),
    );

  const packDemo = () => edit({ ...demoKit(shelf), id: store.get().kit.id }, "Demo kit packed");

  const gaps = (kit) =>
    Array.from({ length: kit.capacity - kit.pans.length }, () =>
      element("li", { class: "pan gap", "aria-hidden": "true" }),
    );

  function settings(kit, editing) {
    const names = [...PAPERS, kit.paper ? "My own" : "My own …"];
    const paper = element(
      "select",
      { "data-focus": "paper", onchange: () => repaper(kit, paper) },
      ...names.map((name, i) => element("option", { selected: i === (kit.paper ? PAPERS.length : kit.stock) }, name)),
    );
    const own = kit.paper ? button("Its colour", () => askOwn(), { "data-focus": "own-paper" }) : null;
    const capacity = element("input", {
      type: "number",
      min: Math.max(kit.pans.length, 1),
      max: MOST_PANS,
      inputmode: "numeric",
      "data-focus": "capacity",
      onchange: () => resized(kit, capacity),
    });
    capacity.value = kit.capacity;
    return element(
      "div",
      { class: "settings" },
      element("label", { class: "field" }, element("span", {}, "Paper"), paper),
      own,
      element("label", { class: "field" }, element("span", {}, "Tin holds"), capacity),
      button(editing ? "Done" : "Edit pans", () => store.set({ editing: !editing }), {
        "aria-expanded": String(editing),
        "data-focus": "edit",
      }),
    );
  }

  /** One of the stocks, or the painter's own paper, which is asked for. */
  function repaper(kit, select) {
    if (select.selectedIndex < PAPERS.length) return edit({ ...kit, stock: select.selectedIndex, paper: null });
    select.selectedIndex = kit.paper ? PAPERS.length : kit.stock;
    askOwn();
  }

  const askOwn = () =>
    askPaper(store.get().studio.paper_hex(), (paper) =>
      edit({ ...store.get().kit, paper }, "Painting on your own paper"),
    );

  function resized(before, input) {
    const kit = resize(before, Number(input.value));
    if (Number(input.value) < before.pans.length) say(`The tin holds ${before.pans.length} pans; remove some first`);
    if (kit === before) input.value = before.capacity;
    else edit(kit);
  }

  function editor(kit) {
    const last = kit.pans.length - 1;
    const rows = kit.pans.map((pan, i) => {
      const name = pan.map((paint) => shelf.get(paint).name).join(" and ");
      const act = (word, kitAfter, disabled, verb) =>
        button(word, () => edit(kitAfter(), `${name} ${verb}`), {
          disabled,
          "aria-label": `${word}: ${name}`,
          "data-focus": `${word}-${pan.join("-")}`,
        });
      return element(
        "li",
        {},
        element(
          "div",
          { class: "fills" },
          element("span", { class: "quiet", "aria-hidden": "true" }, `Pan ${i + 1}`),
          picker(`Pan ${i + 1}`, pan[0], false, (paint) => edit(refill(store.get().kit, i, [paint, ...pan.slice(1)]))),
          picker(`Pan ${i + 1}, beside it`, pan[1] ?? 0, true, (paint) =>
            edit(refill(store.get().kit, i, paint ? [pan[0], paint] : [pan[0]])),
          ),
        ),
        element(
          "div",
          { class: "verbs" },
          act("Earlier", () => move(store.get().kit, i, -1), i === 0, "moved earlier"),
          act("Later", () => move(store.get().kit, i, 1), i === last, "moved later"),
          act("Remove", () => remove(store.get().kit, i), false, "removed"),
        ),
      );
    });
    return element(
      "div",
      { class: "editor" },
      element("ol", { class: "rows" }, ...rows),
      element(
        "div",
        { class: "verbs" },
        button(
          "Empty the tin",
          () =>
            edit(
              { ...emptyKit(kit.title), id: kit.id, capacity: kit.capacity, stock: kit.stock, paper: kit.paper },
              "Tin emptied",
            ),
          { disabled: kit.pans.length === 0 },
        ),
        button("Demo kit", packDemo),
      ),
    );
  }

  /** A list of every paint; the second half of a pan may stay empty. */
  function picker(label, paint, optional, onpick) {
    const choices = shelf.all.map(({ number, name, code }) =>
      element("option", { value: number, selected: number === paint }, `${name} ${code}`),
    );
    const none = optional ? [element("option", { value: 0, selected: paint === 0 }, "nothing beside it")] : [];
    const select = element(
      "select",
      { "aria-label": label, "data-focus": label, onchange: () => onpick(Number(select.value)) },
      ...none,
      ...choices,
    );
    return select;
  }

  store.subscribe((state, changed) => {
    if (["kit", "ends", "studio", "editing"].some((key) => changed.has(key))) show(state);
  });
  show(store.get());
}
