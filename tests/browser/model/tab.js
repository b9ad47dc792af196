// One tab of the model: the page's state with its core and storage, without its views. Driven by `run.js` in the frame's parent.

import { createShelf } from "/js/core/shelf.js";
import { addNamed, copyKit, startKit, takeKit, throwKit } from "/js/state/collection.js";
import { DEMO, demoKit, isUntouchedDemo } from "/js/state/demo.js";
import { chooseEnd, isPair, paintEnd, pairOf } from "/js/state/end.js";
import { leaveGuest, packGuest, showGuest } from "/js/state/guest.js";
import { createHistory } from "/js/state/history.js";
import { newId } from "/js/state/ids.js";
import { createRefs, itemsOf, valueOfKey } from "/js/state/items.js";
import { emptyKit, paintsOf, retitle } from "/js/state/kit.js";
import { readFile } from "/js/state/kit-file-read.js";
import { writeFile } from "/js/state/kit-file-write.js";
import { merge } from "/js/state/merge.js";
import { openState } from "/js/state/open.js";
import { freeName } from "/js/state/own.js";
import { addOwn, doubleOwn, dropOwn, editOwn } from "/js/state/own-list.js";
import { move, pack, refill, remove } from "/js/state/pans.js";
import { keepPuddle, wipePuddle } from "/js/state/puddles.js";
import { addRecords } from "/js/state/records.js";
import { faultsOf } from "/js/state/sound.js";
import initAdviser, * as adviser from "/pkg/adviser.js";
import init, * as core from "/pkg/studio.js";

await init({ module_or_path: new URL("/pkg/studio_bg.wasm", location.href) });
await initAdviser({ module_or_path: new URL("/pkg/adviser_bg.wasm", location.href) });
const builtIn = core.paints();

const faults = [];
addEventListener("error", ({ message }) => faults.push(message));
addEventListener("unhandledrejection", ({ reason }) => faults.push(String(reason?.message ?? reason)));

/** Films that were worked out before, by what their swatches are. */
const films = new Map();
function filmOf(paint) {
  const key = JSON.stringify(paint);
  if (!films.has(key)) films.set(key, adviser.films_of_swatches([paint])[0]);
  return films.get(key);
}

const ask = async (verb, question) => (verb === "films" ? question.paints.map(filmOf) : undefined);

let now = null;

/** Frames of one page share what a tab would have for itself. */
const notes = new Map();
Object.defineProperty(window, "sessionStorage", {
  value: {
    getItem: (key) => notes.get(key) ?? null,
    setItem: (key, text) => notes.set(key, text),
    removeItem: (key) => notes.delete(key),
  },
});

/** How many writes are refused, as by a full storage, and how many pass before. */
let refusing = 0;
let passing = 0;
const { setItem } = Storage.prototype;
Storage.prototype.setItem = function (key, text) {
  if (passing > 0) passing -= 1;
  else if (refusing > 0) {
    refusing -= 1;
    throw new DOMException("full", "QuotaExceededError");
  }
  setItem.call(this, key, text);
};

export const refuse = (count, after = 0) => ([refusing, passing] = [count, after]);

/** Looks as no page writes them. */
const SPOILT = [
  { ends: [{ parts: [[1, 0.5]] }, { parts: [[1, 1e9]] }] },
  { ends: [{ parts: [["1", 1, 2]] }, 7] },
  { ends: [{ parts: five(3, 9) }, null] },
  { ends: [{ parts: five(1, 6) }, { parts: five(90, 6) }] },
  { ends: "both", share: "half", load: 1e9, light: 77, order: 5 },
  { ends: [{ parts: [[60000, 1]] }, { parts: [] }] },
];

/** Damages what is kept of looks, and opens the state anew. */
export async function spoil(n) {
  now.keeping.stop();
  const text = JSON.stringify({ share: 0.5, load: 0.25, ...SPOILT[n % SPOILT.length] });
  localStorage.setItem("washpath/looks", n % 7 ? text : text.slice(0, -3));
  notes.clear();
  await open();
}

export const hasRefused = () => refusing === 0;

/** Opens the page's state from storage, as a load of the page does. */
export async function open() {
  now?.keeping.stop();
  const shelf = createShelf(builtIn);
  core.set_shelf([], []);
  const told = [];
  const opened = await openState(core, shelf, ask, {
    looks: () => ({ dim: false, welcome: false }),
    refused: (error) => told.push(error.message),
    tell: (what) => told.push(what),
  });
  now = { ...opened, shelf, told, history: createHistory(opened.store) };
  return { faults: opened.read.faults.map(({ key, why }) => `${key}: ${why}`) };
}

/** What the state keeps: every item as it is kept, and the ends. */
export function facts() {
  const { store, context } = now;
  const state = store.get();
  const refs = createRefs([...state.own, ...state.visiting], context.numberOf, context.isBuiltIn);
  const textOf = (kit) => core.encode_kit({ ...kit, own: state.own });
  const items = [...itemsOf(state, refs)].map(([key, thing]) => [
    key,
    JSON.stringify(valueOfKey(key, thing, refs, textOf)),
  ]);
  return {
    hand: `kit/${state.kit.id}`,
    items: Object.fromEntries(items.filter(([key]) => key !== `kit/${DEMO}` || !isDemo(state))),
    ends: JSON.stringify(state.ends.map((end) => end?.parts.map(([paint, count]) => [refs.refOf(paint), count]))),
  };
}

/** The demo comes and goes by itself as long as nobody has touched it. */
const isDemo = ({ kit, others }) => [kit, ...others].some((kit) => isUntouchedDemo(kit, now.shelf));

/** Every fault of the state, and every error nobody caught. */
export const check = () => [
  ...faultsOf(now.store.get(), now.context),
  ...unmixed(now.store.get()),
  ...faults.splice(0),
];

/** Why the mix at hand cannot be shown, as the page shows it after every change. */
function unmixed(state) {
  try {
    if (isPair(state)) state.studio.mix(pairOf(state), state.share, state.load);
    return [];
  } catch (error) {
    return [error.message];
  }
}

const pick = (list, n) => (list.length ? list[n % list.length] : undefined);
const NAMES = ["Guest red", "Quay grey", "guest RED", "Fog"];
const SWATCHES = [
  [[40, 30, 20], []],
  [
    [30, 5, -30],
    [80, 1, -9],
  ],
  [[55, -20, 20], []],
];

/** A link of somebody else's kit with own paints, made by this core. */
function guestLink(n) {
  const own = [NAMES[n % NAMES.length], `Other ${n % 3}`].map((name, i) => [
    4096 + i,
    {
      ...core.read_own({
        name,
        code: "",
        caution: "",
        ratings: [null, null, null, null],
        parts: [
          [1 + ((n + i) % 9), 1],
          [12, 1 + (n % 4)],
        ],
        paper: { stock: 0, own: null },
        masstone: [],
        wash: [],
        washLoad: 0.25,
      }),
      id: n % 5 ? `00000000000${(n % 4) + i}`.slice(-12) : undefined,
    },
  ]);
  return core.encode_kit({
    ...emptyKit(n % 3 ? "Lent" : ""),
    pans: [[4096], [4097, 3], [1 + (n % 20)]],
    puddles: [
      {
        parts: [
          [4096, 1],
          [7, 2],
        ],
        load: 0.5,
      },
    ],
    own,
  });
}

/** Every paint there is to choose. */
const paints = (state) =>
  [...state.own, ...state.visiting].map(([number]) => number).concat(builtIn.slice(0, 12).map(({ number }) => number));
function five(n, count) {
  return Array.from({ length: count }, (_, i) => [builtIn[(n + i) % builtIn.length].number, 1 + (i % 3)]);
}

/** What a painter can do, each with a number to choose by. `touches` says what of what is kept it may change, beside what it adds. */
export const VERBS = {
  choosePaint: (n, { set, state }) => set((state) => chooseEnd(state, paintEnd(pick(paints(state), n)))),
  chooseMix: (n, { set }) => set((state) => chooseEnd(state, { parts: five(n, 2 + (n % 7)) })),
  choosePuddle: (n, { set, state }) =>
    state.kit.puddles.length && set((state) => chooseEnd(state, { parts: pick(state.kit.puddles, n).parts })),
  slide: (n, { set }) =>
    set({
      share: (n % 11) / 10,
      load: 2 ** -(n % 6),
      laid: n % 3,
      light: n % 5,
      ribbon: n % 2 === 0,
      wet: n % 3 === 0,
    }),
  swap: (n, { set }) => set(({ ends: [a, b], share }) => ({ ends: [b, a], share: 1 - share })),
  pinPath: (n, { set, state }) =>
    isPair(state) && set((state) => ({ pins: [...state.pins, { pair: pairOf(state), load: state.load }].slice(-4) })),
  pinReach: (n, { set }) => set((state) => ({ pinnedKit: paintsOf(state.kit) })),
  keepPuddle: (n, { set, state }) =>
    isPair(state) &&
    state.kit.puddles.length < 24 &&
    set((state) => ({
      kit: keepPuddle(state.kit, {
        parts: state.studio.mix(pairOf(state), state.share, state.load).recipe,
        load: 2 ** -(n % 6),
      }),
    })),
  wipePuddle: (n, { set, state }) =>
    state.kit.puddles.length && set((state) => ({ kit: wipePuddle(state.kit, n % state.kit.puddles.length) })),
  pack: (n, { set }) => set((state) => ({ kit: pack(state.kit, pick(paints(state), n)) })),
  removePan: (n, { set }) => set((state) => ({ kit: remove(state.kit, n % 13) })),
  movePan: (n, { set }) => set((state) => ({ kit: move(state.kit, n % 5, (n % 3) - 1) })),
  refill: (n, { set }) =>
    set((state) => ({ kit: refill(state.kit, n % 5, [pick(paints(state), n), pick(paints(state), n + 1)]) })),
  retitle: (n, { set }) => set((state) => ({ kit: retitle(state.kit, ["Lent", "Quay", "", "Æ水"][n % 4]) })),
  emptyTin: (n, { set }) => set(({ kit }) => ({ kit: { ...emptyKit(kit.title), id: kit.id } })),
  demo: (n, { set, shelf }) => set(({ kit }) => ({ kit: { ...demoKit(shelf), id: kit.id } })),
  startKit: (n, { set, shelf }) => set((state) => startKit(state, shelf)),
  copyKit: (n, { set, shelf }) => set((state) => copyKit(state, shelf)),
  takeKit: (n, { set, state }) => state.others.length && set((state) => takeKit(state, n % state.others.length)),
  throwKit: (n, { set, state }) => state.others.length && set(throwKit),
  packChosen: (n, { set, shelf }) =>
    set((state) =>
      addNamed(state, { ...emptyKit(), pans: five(n, 9).map(([paint]) => [paint]) }, "9 paints for a place", shelf),
    ),
  async openLink(n, { store, context, links }) {
    const text = n % 2 ? guestLink(n) : pick(links, n);
    const found = core.decode_kit(text);
    const films = await context.learn(
      found.own.map(([, paint]) => paint),
      store.get().films,
    );
    store.set((state) => showGuest(state, found, films, context.numberOf));
  },
  packGuest: (n, { set, state, shelf }) => state.guest && set((state) => packGuest(state, shelf)),
  keepMine: (n, { set }) => set(leaveGuest()),
  record: (n, { set, state }) =>
    isPair(state) &&
    set((state) => ({
      records: [
        ...state.records,
        {
          ...core.read_record({
            parts: state.studio.mix(pairOf(state), state.share, state.load).recipe,
            load: state.load,
            seen: [20 + (n % 60), (n % 7) - 3.123456, n % 5],
            paper: { stock: n % 5, own: null },
            date: "",
            note: "",
          }),
          id: newId(),
        },
      ],
    })),
  deleteRecord: (n, { set }) =>
    set((state) => ({ records: state.records.filter((_, i) => i !== n % Math.max(state.records.length, 1)) })),
  importLog(n, { store }) {
    const { found } = adviser.records_of(
      [
        "date,recipe,load,L,a,b,paper,note",
        "2024-10-05,2 pb29 + 1 py42,1/4,52.12345,4,-18,cream,x",
        `,1 pb29,1,${20 + (n % 3)},4,-38,,`,
      ].join("\n"),
    );
    store.set((state) => addRecords(state, found).patch);
  },
  exportLog(n, { store }) {
    // What goes out and comes in again is known.
    const { records } = store.get();
    const built = records.filter(({ parts }) => parts.every(([paint]) => paint < core.first_own()));
    const { found } = adviser.records_of(adviser.log_of(built));
    const { added } = addRecords(store.get(), found);
    if (added) throw new Error(`${added} records of the log are not known again`);
  },
  makeOwn: (n, { set, context }) =>
    set((state) =>
      addOwn(state, core.read_own({ ...blank(n), ...(n % 2 ? { parts: five(n, 3) } : swatch(n)) }), context.numberOf),
    ),
  editOwn: (n, { set, state }) =>
    state.own.length &&
    set((state) => {
      const [number, paint] = pick(state.own, n);
      return editOwn(
        state,
        number,
        core.read_own({ ...paint, name: `${["Edited", "Guest red", "Fog"][n % 3]}`, caution: `mind ${n % 7}` }),
      );
    }),
  doubleOwn: (n, { set, state, context }) =>
    state.own.length && set((state) => doubleOwn(state, pick(state.own, n)[1], context.numberOf)),
  dropOwn: (n, { set, state }) => state.own.length && set((state) => dropOwn(state, pick(state.own, n)[0])),
  hold: (n, { set }) => set((state) => ({ held: toggled(state.held, pick(paints(state), n)) })),
  owned: (n, { set }) => set((state) => ({ owned: toggled(state.owned, pick(paints(state), n)) })),
  tick: (n, { set }) => set((state) => ({ ticked: toggled(state.ticked, `${n % 4} task`) })),
  place: (n, { set }) =>
    set(({ kit }) => ({
      kit: {
        ...kit,
        places: [...kit.places, { name: "Quay", colours: [{ lab: [50, n % 9, 3], weight: 1 }] }].slice(-4),
      },
    })),
  async openFile(n, { store, context }) {
    const before = store.get();
    const kits = Array.from({ length: n % 3 ? 2 : 20 }, (_, i) => ({
      title: n % 5 ? `Kit ${i + (n % 2)}` : "North Sea harbour, October",
      pans: [["pb29"], ...(i % 2 ? [["own:Fog"]] : [])],
    }));
    const text =
      n % 4
        ? JSON.stringify({
            washpath: 1,
            kits,
            paints: [{ name: "Fog", ...(n % 2 && { id: "0000000000f0" }), masstone: [70, n % 3, 0] }],
            owned: ["pb29"],
          })
        : writeFile(before, context.shelf);
    const found = readFile(text, core, (key) => context.shelf.find(key)?.number);
    const films = await context.learn(
      found.own.map(([, paint]) => paint),
      before.films,
    );
    const isFresh = before.others.length === 0 && isDemo(before);
    if (!store.set((state) => ({ ...merge(state, found, context).patch, films }))) return;
    if (isFresh && n % 5 && kits.length + 1 > store.get().others.length + 1 && n % 4)
      throw new Error("a restored kit is lost to the demo");
  },
  undo: (n, { history }) => void history.undo(),
  redo: (n, { history }) => void history.redo(),
};

const swatch = (n) => {
  const [masstone, wash] = pick(SWATCHES, n);
  return { masstone, wash };
};
const blank = (n) =>
  core.read_own({
    name: freeName(pick(NAMES, n), n % 2 ? now.store.get().own : []),
    code: "",
    caution: "",
    ratings: [null, null, null, null],
    paper: { stock: 0, own: null },
    washLoad: 0.25,
    masstone: [40, 30, 20],
    wash: [],
    parts: [],
  });
const toggled = (list, item) => (list.includes(item) ? list.filter((other) => other !== item) : [...list, item]);

/** Does a verb, as far as it can be done now. Films of swatches are worked out first, as the page does. */
export async function act(verb, n, links) {
  const { store, context, shelf, history } = now;
  if (["makeOwn", "editOwn"].includes(verb)) {
    const films = await context.learn(
      SWATCHES.map(([masstone, wash]) => ({ ...blank(0), masstone, wash })),
      store.get().films,
    );
    store.set({ films });
  }
  await VERBS[verb](n, { store, context, shelf, history, links, state: store.get(), set: (patch) => store.set(patch) });
}

/** Closes the tab's state; `open` opens it anew. */
export function close() {
  now?.keeping.stop();
  now = null;
  notes.clear();
}

/** A kit's pans, puddles and places, whatever it is called and whichever paints of its own it brings. */
export function contentOf(text) {
  const { own, pans, puddles, places } = core.decode_kit(JSON.parse(text));
  const names = new Map(own.map(([number, { parts, masstone }]) => [number, JSON.stringify([parts, masstone])]));
  const name = (paint) => names.get(paint) ?? paint;
  return JSON.stringify([
    pans.map((pan) => pan.map(name)),
    puddles.map(({ parts }) => parts.map(([paint, count]) => [name(paint), count])),
    places,
  ]);
}
