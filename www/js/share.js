// The kit as a link, and kits that come by one.

import { briefList, briefOf } from "./brief.js";
import { dabOf } from "./dab.js";
import { UNDO, button, byId, element, notice, say } from "./dom.js";
import { PAPERS, paintsOf } from "./kit.js";
import { learnFilms } from "./films.js";
import { adopt } from "./own.js";

const MARK = "#kit=";

/** The link's text in an address, or nothing. */
export function linkText(hash) {
  return hash.startsWith(MARK) ? hash.slice(MARK.length) : null;
}

/** A kit as a link's text, with those of the own paints that it holds. */
export const textOf = ({ own }, core, kit) => core.encode_kit({ ...kit, own });

/** The link of the kit at hand. */
export const linkOf = (state, core) => location.href.split("#")[0] + MARK + textOf(state, core, state.kit);

/** Longest link that mail and chat programs may be trusted with. */
const LONGEST_SAFE = 2000;

/** Opens the dialog with the link of the kit at hand, and its QR code. Answers how to close it. */
export function attachShare(store, core, ask) {
  const dialog = byId("share-dialog");
  const field = byId("share-link");
  const code = byId("share-code");
  const send = byId("share-send");
  const note = byId("class-note");
  const tasks = byId("class-tasks");
  const ways = [...byId("share-ways").children];
  const show = (name) => {
    for (const way of ways) {
      way.setAttribute("aria-pressed", String(way.dataset.show === name));
      byId(way.dataset.show).hidden = way.dataset.show !== name;
    }
    byId("share-copy").hidden = name !== "share-by-link";
    send.hidden = !navigator.share || name !== "share-by-link";
  };
  for (const way of ways) way.addEventListener("click", () => show(way.dataset.show));
  byId("share").addEventListener("click", () => {
    const { brief } = store.get().kit;
    note.value = brief?.note ?? "";
    tasks.value = brief?.tasks.join("\n") ?? "";
    byId("class").open = Boolean(brief);
    byId("class-said").textContent = "";
    byId("file-preview").replaceChildren();
    show("share-by-link");
    dialog.showModal();
    showLink();
    field.select();
  });

  function showLink() {
    try {
      field.value = linkOf(store.get(), core);
    } catch (error) {
      field.value = "";
      byId("share-said").textContent = `This kit cannot go into a link: ${error.message}. A file holds it.`;
      byId("share-long").hidden = false;
      return;
    }
    const { length } = field.value;
    byId("share-long").hidden = length <= LONGEST_SAFE;
    byId("share-said").textContent = length <= LONGEST_SAFE
      ? `${length} characters. Whoever opens it sees your kit beside their own.`
      : `${length.toLocaleString("en")} characters: mail and chat programs may cut a link as long as this, and then it cannot be read. A file arrives whole.`;
    showCode(field.value);
  }

  for (const typed of [note, tasks]) {
    typed.addEventListener("change", () => {
      try {
        const { kit } = store.get();
        store.set({ kit: { ...kit, brief: briefOf(note.value, tasks.value) } });
        byId("class-said").textContent = "";
        showLink();
      } catch (error) {
        byId("class-said").textContent = `${error.message}. The link is as it was.`;
      }
    });
  }
  send.addEventListener("click", () => {
    const { title } = store.get().kit;
    // Whoever closes the list of ways to send has changed their mind: that is no fault.
    navigator.share({ title: title || "A kit of watercolours", url: field.value }).catch(() => {});
  });

  async function showCode(link) {
    const caption = byId("share-code-said");
    code.hidden = true;
    caption.textContent = "";
    if (link.length > LONGEST_SAFE) return void (caption.textContent = "No QR code: it would be too fine for a camera.");
    try {
      const svg = await ask("qr", { link });
      code.src = `data:image/svg+xml,${encodeURIComponent(svg)}`;
      code.hidden = false;
      caption.textContent = "A telephone’s camera opens the kit from this code.";
    } catch (error) {
      caption.textContent = `No QR code: ${error.message}.`;
    }
  }

  byId("share-copy").addEventListener("click", async () => {
    byId("share-said").textContent = (await copied(field)) ? "Link copied." : "The browser did not let us copy. The link is selected: copy it by hand.";
  });
  return () => dialog.close();
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
