// Opens the state: what was kept is read, judged and from then on kept.

/** @import { Ask, Context, Core, Keeping, Patch, Read, Shelf, State, Store, Tell } from "./types.js" */

import { isWide } from "../page/display.js";
import * as device from "./device.js";
import { learnFilms } from "./films.js";
import { attachKeeping } from "./keeping.js";
import { paperOf } from "./kit.js";
import { createNumbers, onShelf } from "./own.js";
import { createSettle } from "./sound.js";
import { readState } from "./start.js";
import { createStore } from "./store.js";

/**
 * Answers `{store, context, read, keeping}`.
 *
 * `isBare` leaves alone what is kept, but does not erase it. `looks(read)` answers what else the first state shows. `refused(error)` hears of
 * changes that may not be, `tell(what, name)` of what happens while keeping.
 *
 * @type {(core: Core, shelf: Shelf, ask: Ask, ways: { isBare?: boolean, looks?: (read: Read) => Patch, refused: (error: Error) => void, tell: Tell }) => Promise<{ store: Store, context: Context, read: Read, keeping: Keeping }>}
 */
export async function openState(core, shelf, ask, { isBare = false, looks = () => ({}), refused, tell }) {
  const context = contextOf(core, shelf, ask);
  const settle = createSettle(context);
  const derive = createDerive(core, shelf, ask);
  /** @type {(state: State) => State} */
  const finish = (state) => {
    const settled = settle(state, new Set(Object.keys(state)));
    return { ...settled, ...derive(settled, new Set(Object.keys(settled))) };
  };
  const kept = isBare
    ? {}
    : { entries: device.entries(), oldTexts: device.oldTexts(), ownLooks: device.noted("looks") };
  const read = await readState({ ...kept, context, finish });
  const store = createStore({ ...read.state, ...looks(read) }, { settle, derive, refused });
  const keeping = attachKeeping(store, context, read, tell);
  device.erase(read.stale);
  // What was kept as one text goes only when every item of it is kept by itself.
  if (read.hasOld && keeping.writeAll()) device.eraseOld();
  return { store, context, read, keeping };
}

/**
 * What reading and judging the state asks for.
 *
 * @type {(core: Core, shelf: Shelf, ask: Ask) => Context}
 */
function contextOf(core, shelf, ask) {
  const builtIn = new Set(shelf.all.map(({ number }) => number));
  return {
    core,
    shelf,
    isBuiltIn: (number) => builtIn.has(number),
    numberOf: createNumbers(core.first_own()),
    learn: (paints, films) => learnFilms(paints, films, ask),
  };
}

/**
 * What follows from a state: the shelf, here and in the worker, and the studio that shows it.
 *
 * @type {(core: Core, shelf: Shelf, ask: Ask) => (state: State, changed: Set<string>) => Patch}
 */
function createDerive(core, shelf, ask) {
  /** @type {string | null} */
  let shown = null;
  let isBuiltIn = true;
  return (state, changed) => {
    const { kit, light, wet } = state;
    const isOther = ["own", "visiting", "learned", "learning"].some((key) => changed.has(key));
    if (isOther) {
      const all = onShelf(state);
      const isPlain = all.own.length + all.learned.length === 0;
      if (!(isPlain && isBuiltIn)) {
        shelf.fill(core.set_shelf(all.own, all.learned));
        ask("shelf", all).catch(() => {});
      }
      isBuiltIn = isPlain;
    }
    const now = JSON.stringify([kit.stock, kit.paper, light, wet]);
    if (!isOther && now === shown) return {};
    shown = now;
    return { studio: new core.Studio(paperOf(kit), light, isWide(), wet) };
  };
}
