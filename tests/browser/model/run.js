// Plays sequences of verbs over two tabs of the page's state and says what went wrong. Each tab is a frame with a core of its own;
// both share one storage, whose events they hear as two tabs of a browser do.

/** What a verb may change or take away of what is kept, besides what it adds: kinds, or `hand` for the kit in hand alone. */
const MAY = {
  keepPuddle: ["hand"],
  wipePuddle: ["hand"],
  pack: ["hand"],
  removePan: ["hand"],
  movePan: ["hand"],
  refill: ["hand"],
  retitle: ["hand"],
  emptyTin: ["hand"],
  demo: ["hand"],
  place: ["hand"],
  throwKit: ["hand"],
  deleteRecord: ["record"],
  dropOwn: ["own", "kit", "record", "held", "owned"],
  editOwn: ["own", "kit"],
  hold: ["held"],
  owned: ["owned"],
  tick: ["ticked"],
  undo: ["own", "kit", "record", "held", "owned"],
  redo: ["own", "kit", "record", "held", "owned"],
};

/** Verbs that undo takes back. */
const isStep = (key) => !key.startsWith("ticked/");

const frames = [];

/** A tab: a frame of this page, with its module started. */
export async function frame() {
  const node = document.createElement("iframe");
  node.src = "/tab.html";
  document.body.append(node);
  await new Promise((resolve) => node.addEventListener("load", resolve));
  while (!node.contentWindow.tab) await new Promise((resolve) => setTimeout(resolve, 5));
  return node.contentWindow;
}

/** Until each tab has heard all that the other wrote, and what it wrote then. */
async function settle() {
  for (let round = 0; round < 3; round += 1) {
    await Promise.all(frames.map((from, i) => heard(from, frames[1 - i], `ping ${round} ${i} ${Math.random()}`)));
  }
}

/** Events come in the order of the writes: once the last is heard, all are. */
function heard(from, to, sign) {
  return new Promise((resolve) => {
    const hear = ({ newValue }) => {
      if (newValue !== sign) return;
      to.removeEventListener("storage", hear);
      resolve();
    };
    to.addEventListener("storage", hear);
    from.Storage.prototype.setItem.call(from.localStorage, `ping ${frames.indexOf(from)}`, sign);
  });
}

const keys = (a, b) => [...new Set([...Object.keys(a), ...Object.keys(b)])];
const differing = (a, b) => keys(a, b).filter((key) => a[key] !== b[key]);
const same = (a, b) => differing(a, b).length === 0;
const shown = (a, b) =>
  differing(a, b)
    .slice(0, 4)
    .map((key) => `${key}: ${a[key]} | ${b[key]}`)
    .join("\n  ");

/** Plays a sequence from empty storage; answers nothing, or what went wrong. A step is `[tab, verb, number]`. */
export async function play(steps, links) {
  frames[0] ??= await frame();
  frames[1] ??= await frame();
  for (const { tab } of frames) tab.refuse(0);
  for (const { tab } of frames) tab.close();
  localStorage.clear();
  for (const { tab } of frames) await tab.open();
  await settle();
  for (const { tab } of frames) tab.check();
  let isApart = false;
  for (const [i, [which, verb, n]] of steps.entries()) {
    const fault = await step(which, verb, n, links, () => (isApart = true), isApart).catch(
      (error) => `threw ${error.stack ?? error.message ?? error}`,
    );
    if (fault) return `step ${i + 1}, ${verb} ${n} in tab ${which}: ${fault}`;
  }
  for (const which of [0, 1]) {
    const fault = await reload(which);
    if (fault) return `at the end, tab ${which}: ${fault}`;
  }
  return null;
}

async function step(which, verb, n, links, part, isApart) {
  const { tab } = frames[which];
  const other = frames[1 - which].tab;
  if (verb === "reload") return reload(which);
  if (verb === "spoil") return spoilt(tab, n);
  if (verb === "both") return both(which, n, links, part);
  if (verb === "full") return full(which, n, links);
  const before = tab.facts();
  await tab.act(verb, n, links);
  const after = tab.facts();
  await settle();
  const fault = sound() ?? limits(verb, before, after) ?? agreed(isApart);
  if (fault) return fault;
  const isWork = differing(before.items, after.items).some(isStep);
  // The other tab may hold in hand what was thrown away here: then it stays.
  const isAsLeft = same(tab.facts().items, after.items);
  if (isWork && isAsLeft && n % 3 === 0 && verb !== "undo" && verb !== "redo")
    return undone(tab, before, after, other, isApart);
  return null;
}

/** Every state may stand, and nobody left an error lying. */
function sound() {
  for (const [i, { tab }] of frames.entries()) {
    const faults = tab.check();
    if (faults.length) return `tab ${i}: ${faults.join("; ")}`;
  }
  return null;
}

/** What was kept stays as it was but for what the verb is for. */
function limits(verb, before, after) {
  const may = MAY[verb] ?? [];
  const lost = differing(before.items, after.items)
    .filter((key) => key in before.items)
    .filter((key) => !may.includes(key.split("/")[0]) && !(may.includes("hand") && key === before.hand));
  return lost.length ? `changes ${lost.join(", ")}:\n  ${shown(before.items, after.items)}` : null;
}

/** Both tabs keep the same. After changes at once they may name a paint otherwise, but hold the same things. */
function agreed(isApart) {
  const [a, b] = frames.map(({ tab }) => tab.facts().items);
  if (!isApart) return same(a, b) ? null : `the tabs differ:\n  ${shown(a, b)}`;
  const only = keys(a, b).filter((key) => !(key in a && key in b));
  return only.length ? `only one tab has ${only.join(", ")}` : null;
}

async function undone(tab, before, after, other, isApart) {
  await tab.act("undo", 0);
  const back = tab.facts();
  if (!same(back.items, { ...after.items, ...pickSteps(before.items, after.items) }))
    return `undo does not undo:\n  ${shown(before.items, back.items)}`;
  await tab.act("redo", 0);
  if (!same(tab.facts().items, after.items)) return `redo does not redo:\n  ${shown(after.items, tab.facts().items)}`;
  await settle();
  return sound() ?? agreed(isApart);
}

/** The items as undo puts them back. */
function pickSteps(before, after) {
  return Object.fromEntries(
    differing(before, after)
      .filter(isStep)
      .map((key) => [key, before[key]]),
  );
}

async function reload(which) {
  const { tab } = frames[which];
  const before = tab.facts();
  const { faults } = await tab.open();
  if (faults.length) return `not everything is read: ${faults.join("; ")}`;
  const after = tab.facts();
  if (!same(before.items, after.items)) return `a reload changes what is kept:\n  ${shown(before.items, after.items)}`;
  if (before.hand !== after.hand && after.items[before.hand])
    return `another kit is in hand: ${before.hand} | ${after.hand}`;
  await settle();
  return sound();
}

/** Looks that cannot be read are as in a first visit; all else is as it was. */
async function spoilt(tab, n) {
  const before = tab.facts().items;
  await tab.spoil(n);
  // What is looked at from now on is kept again.
  await tab.act("slide", n);
  const after = tab.facts().items;
  await settle();
  return same(before, after) ? sound() : `damaged looks change what is kept:\n  ${shown(before, after)}`;
}

/** Both tabs change something before either hears of the other. */
async function both(which, n, links, part) {
  part();
  const verbs = [
    "retitle",
    "pack",
    "removePan",
    "throwKit",
    "record",
    "makeOwn",
    "editOwn",
    "dropOwn",
    "keepPuddle",
    "copyKit",
    "owned",
    "packChosen",
  ];
  const before = frames.map(({ tab }) => tab.facts());
  await Promise.all(frames.map(({ tab }, i) => tab.act(verbs[(n + 5 * i * (which + 1)) % verbs.length], n + i, links)));
  const after = frames.map(({ tab }) => tab.facts());
  await settle();
  const fault = sound() ?? agreed(true);
  if (fault) return fault;
  // What either tab made or changed is still somewhere, in place or beside.
  const now = frames[which].tab.facts().items;
  for (const i of [0, 1]) {
    for (const key of differing(before[i].items, after[i].items)) {
      const value = after[i].items[key];
      if (value === undefined || key.startsWith("own/") || key.startsWith("kit/")) {
        if (value !== undefined && !(key in now)) return `${key} of tab ${i} is lost`;
      } else if (now[key] !== value) return `${key} of tab ${i} is lost: ${value} | ${now[key]}`;
    }
  }
  const kits = (items) => Object.entries(items).filter(([key]) => key.startsWith("kit/"));
  const contents = new Set(kits(now).map(([, text]) => frames[which].tab.contentOf(text)));
  for (const i of [0, 1]) {
    for (const [key, text] of kits(after[i].items)) {
      const wasChanged = before[i].items[key] !== text;
      if (wasChanged && !contents.has(frames[i].tab.contentOf(text)))
        return `what tab ${i} made of ${key} is lost: ${frames[i].tab.contentOf(text)}`;
    }
  }
  return null;
}

/** The storage is full for some writes; once there is room, the next change keeps everything. */
async function full(which, n, links) {
  const { tab } = frames[which];
  tab.refuse(1 + (n % 4), n % 5);
  await tab.act(["retitle", "record", "makeOwn", "startKit", "throwKit", "dropOwn"][n % 6], n, links);
  const after = tab.facts().items;
  tab.refuse(0);
  await tab.act("tick", n, links);
  await tab.act("tick", n, links);
  await settle();
  const now = tab.facts().items;
  // What the other tab has in hand stays, though it was thrown away here.
  const { hand } = frames[1 - which].tab.facts();
  if (!(hand in after)) delete now[hand];
  if (!same(after, now)) return `a full storage changes what is kept:\n  ${shown(after, now)}`;
  return sound() ?? agreed(true) ?? (await reload(which));
}

/** Plays a sequence in one tab whose write number `failing` alone is refused; afterwards all is kept, and read again. Answers what went wrong, and whether so many writes came. */
export async function playFailing(steps, links, failing) {
  const fault = await play([], links);
  if (fault) return { fault };
  const { tab } = frames[0];
  tab.refuse(1, failing);
  for (const [, verb, n] of steps) await tab.act(verb, n, links);
  const isOver = tab.hasRefused();
  tab.refuse(0);
  for (let i = 0; i < 2; i += 1) await tab.act("tick", 1, links);
  await settle();
  return { fault: sound() ?? (await reload(0)), isOver };
}
