// The one validator: every change of the state passes here. Pure: no page.

/** @import { IsKnown } from "./refs.js" */
/** @import { Context, KitContent, Own, Patch, State } from "./types.js" */

import { MOST_MIXED } from "../../pkg/facts.js";
import * as words from "../words/state.js";
import { paintsOf } from "./end.js";
import { CHOICES, REFERRING, RESOLVERS, SLIDES } from "./keys.js";
import { emptyKit } from "./kit.js";
import { freeName } from "./own.js";
import { inWork } from "./refs.js";
import { keysOf } from "./store.js";

/**
 * Those keys of the state that change when it is rid of every paint that is not known. `mayRefer` says which are looked at.
 *
 * @type {(state: State, isKnown: IsKnown, mayRefer: (key: string) => boolean) => Patch}
 */
function resolved(state, isKnown, mayRefer) {
  /** @type {any} */
  const patch = {};
  for (const { key, without } of RESOLVERS) {
    if (!mayRefer(key)) continue;
    const after = without(state[key], isKnown);
    if (after !== state[key]) patch[key] = after;
  }
  return patch;
}

/**
 * Answers `settle(state, changed)`: the state as it may stand. What refers to a paint that is gone is let go; a paint of a
 * guest's kit that the painter's own work refers to becomes the painter's. Throws, in words for the painter, where a kit
 * or a mix cannot be.
 *
 * `isBuiltIn` knows the shelf's paints by number; `core` judges kits.
 *
 * @type {(context: Pick<Context, "isBuiltIn" | "core">) => (wanted: State, changed: Set<string>) => State}
 */
export function createSettle({ isBuiltIn, core }) {
  const fit = new WeakSet();

  /** @type {(kit: KitContent, own: Own[]) => string} */
  const judged = (kit, own) => core.encode_kit({ ...kit, own });

  /** @type {(own: Own[]) => void} */
  function checkOwn(own) {
    const names = new Set();
    for (const [, { name }] of own) {
      if (names.has(name.toLowerCase())) throw new Error(words.nameTaken(name));
      names.add(name.toLowerCase());
    }
  }

  /**
   * Guests' paints: those that are needed come to stay, the others give way to names that are taken.
   *
   * @type {(state: State) => State}
   */
  function settleVisiting(state) {
    const { own, visiting } = state;
    if (visiting.length === 0) return state;
    const mine = new Set(own.map(([number]) => number));
    const needed = inWork(state);
    const named = [...own];
    /** @type {Own[]} */
    const stays = [];
    /** @type {Own[]} */
    const rest = [];
    for (const [number, paint] of visiting.filter(([number]) => !mine.has(number))) {
      /** @type {Own} */
      const guest = [number, { ...paint, name: freeName(paint.name, named) }];
      if (guest[1].name === paint.name) guest[1] = paint;
      named.push(guest);
      (needed.has(number) ? stays : rest).push(guest);
    }
    const isAsBefore =
      stays.length === 0 && rest.length === visiting.length && rest.every(([, paint], i) => paint === visiting[i][1]);
    return isAsBefore ? state : { ...state, own: stays.length ? [...own, ...stays] : own, visiting: rest };
  }

  /**
   * Both ends together are one mix, and each is one.
   *
   * @type {(state: Pick<State, "ends" | "own" | "visiting">) => void}
   */
  function checkEnds({ ends, own, visiting }) {
    const paints = paintsOf(ends);
    if (paints.size > MOST_MIXED) throw new Error(words.tooManyMixed(paints.size));
    for (const end of ends) {
      if (!end || fit.has(end)) continue;
      judged({ ...emptyKit(), puddles: [{ parts: end.parts, load: 1 }] }, [...own, ...visiting]);
      fit.add(end);
    }
  }

  /** @type {(state: any) => Patch} */
  function inRange(state) {
    for (const [key, { fits }] of CHOICES)
      if (!fits(state[key])) throw new RangeError(words.outOfRange(key, state[key]));
    return Object.fromEntries(
      SLIDES.map(([key, { least = 0, most = 1 }]) => {
        if (!Number.isFinite(state[key])) throw new RangeError(words.outOfRange(key, state[key]));
        return [key, Math.min(Math.max(state[key], least), most)];
      }),
    );
  }

  return (wanted, changed) => {
    let state = { ...wanted, ...inRange(wanted) };
    const paintsChanged = changed.has("own") || changed.has("visiting");
    if (changed.has("own")) checkOwn(state.own);
    if (paintsChanged || REFERRING.some((key) => changed.has(key))) state = settleVisiting(state);

    const mine = new Set([...state.own, ...state.visiting].map(([number]) => number));
    /** @type {(paint: number) => boolean} */
    const isKnown = (paint) => mine.has(paint) || isBuiltIn(paint);
    state = { ...state, ...resolved(state, isKnown, (key) => paintsChanged || changed.has(key)) };

    if (paintsChanged || changed.has("ends")) checkEnds(state);
    for (const kit of [state.kit, ...state.others].filter((kit) => !fit.has(kit))) {
      judged(kit, state.own);
      fit.add(kit);
    }
    return state;
  };
}

/**
 * Every fault of a state, in words: none where it may stand. Looks at all of it anew, as `settle` looks at what changed.
 *
 * @type {(state: State, context: Pick<Context, "isBuiltIn" | "core">) => string[]}
 */
export function faultsOf(state, { isBuiltIn, core }) {
  /** @type {string[]} */
  const faults = [];
  /** @type {(what: string, check: () => void) => void} */
  const tried = (what, check) => {
    try {
      check();
    } catch (error) {
      faults.push(`${what}: ${error.message}`);
    }
  };
  const all = new Set(Object.keys(state));
  tried("state", () => {
    const settled = createSettle({ isBuiltIn, core })(state, all);
    for (const key of keysOf(state)) if (settled[key] !== state[key]) faults.push(`${key}: refers to what is gone`);
  });
  /** @type {(what: string, ids: unknown[]) => unknown} */
  const unique = (what, ids) => new Set(ids).size < ids.length && faults.push(`${what}: an id stands twice`);
  unique(
    "kits",
    [state.kit, ...state.others].map(({ id }) => id),
  );
  unique(
    "own",
    [...state.own, ...state.visiting].map(([number]) => number),
  );
  unique(
    "own",
    [...state.own, ...state.visiting].map(([, { id }]) => id),
  );
  unique(
    "records",
    state.records.map(({ id }) => id),
  );
  for (const [key, marks] of Object.entries({ held: state.held, owned: state.owned, ticked: state.ticked }))
    unique(key, marks);
  const nameless = [state.kit, ...state.others, ...state.records].filter(({ id }) => typeof id !== "string");
  if (nameless.length) faults.push(`${nameless.length} without an id`);
  return faults;
}
