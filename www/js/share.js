// The kit as a link, and kits that come by one.

import { briefList } from "./brief.js";
import { dabOf } from "./dab.js";
import { UNDO, button, byId, element, notice, say } from "./dom.js";
import { PAPERS, paintsOf } from "./kit.js";
import { learnFilms } from "./films.js";
import { linkText } from "./link-text.js";
import { adopt } from "./own.js";

/** What stands before the text in a link. */
export const MARK = "#kit=";

export { linkText };

/** A kit as a link's text, with those of the own paints that it holds. */
export const textOf = ({ own }, core, kit) => core.encode_kit({ ...kit, own });

/** Opens the dialog for sending the kit at hand, fetched when it is first asked for. Answers how to close it. */
export function attachShare(store, core, ask) {
  let dialog;
  byId("share").addEventListener("click", async () => {
    dialog ??= import("./sharing.js").then(({ shareDialog }) => shareDialog(store, core, ask));
    (await dialog)();
  });
  return () => byId("share-dialog").close();
}

/** Shows a kit that came by a link beside the painter's own, and asks. Never replaces by itself. */
export function attachGuest(store, shelf, core, ask, choose) {
  const frame = byId("guest");

  let turn = 0;

  async function receive() {
    const text = linkText(location.hash);
    if (text === null) return;
    // The link is taken off the address, so that a reload does not ask again.
    history.replaceState(null, "", location.href.split("#")[0]);
    const own = (turn += 1);
    try {
      const found = core.decode_kit(text);
      const films = await learnFilms(found.own.map(([, paint]) => paint), store.get().films, ask);
      if (own !== turn) return;
      const state = store.get();
      const { kit, added } = adopt(found, state.own, core.first_own());
      if (text === textOf(state, core, state.kit)) return notice("This link holds the kit you already have.", { seconds: 6 });
      store.set({ visiting: added, films });
      show(kit, added);
    } catch (error) {
      notice(`The link could not be read: ${error.message}. Your kit is as it was.`);
    }
  }

  /** Own paints of the other stand on the shelf for as long as their kit is shown. */
  function show(kit, visiting) {
    const own = store.get().kit;
    const close = () => {
      frame.hidden = true;
      store.set({ guestKit: null, visiting: [] });
    };
    const take = () => {
      const { own } = store.get();
      store.set({ kit, own: [...own, ...visiting], visiting: [] });
      close();
      notice("The shared kit is packed. Undo brings yours back.", { actions: [UNDO], seconds: 12 });
    };
    frame.replaceChildren(...[
      element("div", { class: "heading" },
        element("h2", { id: "guest-title" }, "A kit came with this link"),
        element("div", { class: "verbs" }, button("Pack the shared kit", take, { class: "main" }), button("Keep mine", close))),
      kit.brief && element("div", { class: "asked" }, ...briefList(kit.brief, store)),
      element("div", { class: "side-by-side" }, tin("Shared with you", kit), tin("Yours", own))].filter(Boolean));
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
