// What other tabs changed, brought into the state of this one.

/** @import { Context, KeptFilm, OwnPaint, Patch, State, Store, Tell, Version } from "./types.js" */

import { otherTab } from "../words/state.js";
import * as device from "./device.js";
import { filmsOf, keptFilm } from "./films.js";
import { idOf } from "./ids.js";
import { kindOf, nameOfKey } from "./items.js";
import { nameOf, retitle } from "./kit.js";
import { freeName } from "./own.js";
import { readItem, withItem, withoutItem } from "./reading.js";
import { inWork } from "./refs.js";

/**
 * Answers `{apply, keepBeside}`. `tell(what, name)` says `beside` or `elsewhere`; `keepAgain(key, state)` keeps an item that
 * another tab threw away and this one uses.
 *
 * @param {Store} store
 * @param {Context} context
 * @param {{ tell: Tell, keepAgain: (key: string, state: State) => void }} ways
 */
export function createElsewhere(store, context, { tell, keepAgain }) {
  const { numberOf, learn } = context;
  /** @type {(key: string, value: any, state: State) => any} */
  const read = (key, value, { own }) => readItem(key, value, { ...context, own });

  /**
   * Brings the state up with an item as it is kept now.
   *
   * @type {(key: string, value: any) => void}
   */
  function apply(key, value) {
    const state = store.get();
    if (value === null) return applyGone(key, state);
    try {
      const item = read(key, value, state);
      if (kindOf(key) === "own") takePaint(key, item, withKept(state.films, item));
      else take(key, item);
    } catch {
      // What this tab cannot read stays as it is kept.
    }
  }

  /**
   * A paint comes with its film; where there is none it is worked out first.
   *
   * @type {(key: string, paint: OwnPaint, films: KeptFilm[]) => void}
   */
  function takePaint(key, paint, films) {
    const hasFilm = paint.parts.length > 0 || filmsOf([[0, paint]], films).length > 0;
    if (hasFilm) take(key, paint, { films });
    else
      learn([paint], films).then(
        (films) => take(key, paint, { films }),
        () => {},
      );
  }

  /** @type {(key: string, item: any, patch?: Patch) => void} */
  function take(key, item, patch = {}) {
    const state = store.get();
    store.set({ ...patch, ...withItem(state, key, item, context) }, { from: "elsewhere", key });
    if (key === `kit/${store.get().kit.id}`) tell("elsewhere", nameOf(store.get().kit));
  }

  /**
   * What is in use here is not taken away by another tab: it is kept again.
   *
   * @type {(key: string, state: State) => void}
   */
  function applyGone(key, state) {
    const inHand = key === `kit/${state.kit.id}`;
    const inUse = kindOf(key) === "own" && inWork(state).has(numberOf(nameOfKey(key)));
    if (!inHand && !inUse) return void store.set(withoutItem(state, key, context), { from: "elsewhere", key });
    keepAgain(key, state);
  }

  /**
   * Two tabs changed one thing at once: the other one's is kept beside it, by the same name in both tabs.
   *
   * @type {(key: string, loser: Version) => void}
   */
  function keepBeside(key, { value, at, by }) {
    const state = store.get();
    const besideKey = `${kindOf(key)}/${idOf(`${key} ${at} ${by}`)}`;
    try {
      const beside = named(kindOf(key), read(besideKey, value, state), state);
      if (!beside) return;
      store.set(withItem(state, besideKey, beside.item, context), { from: "elsewhere" });
      tell("beside", beside.name);
    } catch {
      // A version that this tab cannot read was never shown here.
    }
  }

  return { apply, keepBeside };
}

/**
 * A kit or paint under a name that tells it from the one it stands beside, and the name they had in common. Of other items there is nothing to keep twice.
 *
 * @type {(kind: string, item: any, state: State) => { item: any, name: string } | null}
 */
function named(kind, item, { own }) {
  if (kind === "own") return { item: { ...item, name: freeName(item.name, own) }, name: item.name };
  if (kind !== "kit") return null;
  const title = otherTab([...nameOf(item.kit)].slice(0, 46).join(""));
  return { item: { ...item, kit: retitle(item.kit, title) }, name: nameOf(item.kit) };
}

/**
 * Films at hand, and the one another tab kept with its paint.
 *
 * @type {(films: KeptFilm[], paint: OwnPaint) => KeptFilm[]}
 */
function withKept(films, { id }) {
  const film = keptFilm(device.read(`film/${id}`));
  return film && !films.some(([key]) => key === film[0]) ? [...films, film] : films;
}
