// The kit as a link, and kits that come by one.

import { dabOf } from "./dab.js";
import { button, byId, element, notice, say } from "./dom.js";
import { PAPERS, paintsOf } from "./kit.js";

const MARK = "#kit=";

/** The link's text in an address, or nothing. */
export function linkText(hash) {
  return hash.startsWith(MARK) ? hash.slice(MARK.length) : null;
}

/** Opens the dialog with the link of the kit at hand. */
export function attachShare(store, core) {
  const dialog = byId("share-dialog");
  const field = byId("share-link");
  byId("share").addEventListener("click", () => {
    try {
      field.value = location.href.split("#")[0] + MARK + core.encode_kit(store.get().kit);
    } catch (error) {
      return notice(`This kit cannot go into a link: ${error.message}.`);
    }
    byId("share-said").textContent = `${field.value.length} characters. Whoever opens it sees your kit beside their own.`;
    dialog.showModal();
    field.select();
  });
  byId("share-copy").addEventListener("click", async () => {
    byId("share-said").textContent = (await copied(field)) ? "Link copied." : "The browser did not let us copy. The link is selected: copy it by hand.";
  });
}

async function copied(field) {
  try {
    await navigator.clipboard.writeText(field.value);
    return true;
  } catch {
    field.focus();
    field.select();
    return false;
  }
}

/** Shows a kit that came by a link beside the painter's own, and asks. Never replaces by itself. */
export function attachGuest(store, shelf, core, choose) {
  const frame = byId("guest");

  function receive() {
    const text = linkText(location.hash);
    if (text === null) return;
    // The link is taken off the address, so that a reload does not ask again.
    history.replaceState(null, "", location.href.split("#")[0]);
    try {
      const kit = core.decode_kit(text);
      if (text === core.encode_kit(store.get().kit)) return notice("This link holds the kit you already have.", { seconds: 6 });
      show(kit);
    } catch (error) {
      notice(`The link could not be read: ${error.message}. Your kit is as it was.`);
    }
  }

  function show(kit) {
    const own = store.get().kit;
    const close = () => {
      frame.hidden = true;
      store.set({ guestKit: null });
    };
    const take = () => {
      store.set({ kit });
      close();
      notice("The shared kit is packed. Undo brings yours back.", { actions: [["Undo", () => byId("undo").click()]], seconds: 12 });
    };
    frame.replaceChildren(
      element("div", { class: "heading" },
        element("h2", { id: "guest-title" }, "A kit came with this link"),
        element("div", { class: "verbs" }, button("Pack the shared kit", take, { class: "main" }), button("Keep mine", close))),
      element("div", { class: "side-by-side" }, tin("Shared with you", kit), tin("Yours", own)));
    frame.hidden = false;
    store.set({ guestKit: paintsOf(kit) });
    frame.querySelector("button.main").focus({ preventScroll: true });
    say(`A shared kit of ${kit.pans.length} pans stands beside yours`);
  }

  const tin = (heading, kit) => element("div", {},
    element("h3", {}, heading, " ", element("small", {}, kit.title || "untitled")),
    element("p", { class: "quiet" }, `${kit.pans.length} of ${kit.capacity} pans, ${PAPERS[kit.stock].toLowerCase()} paper`),
    element("ul", { class: "chips" }, ...kit.pans.map((pan) => element("li", {}, ...pan.map(chip)))));

  function chip(paint) {
    const { name, code } = shelf.get(paint);
    const take = button("", () => choose(paint), { title: name, "aria-label": `${name}, ${code}: choose as an end` });
    take.append(dabOf(store.get().studio, paint, 24), element("span", {}, code));
    return take;
  }

  addEventListener("hashchange", receive);
  receive();
}
