// What a kit file brings, joined with what is here. Pure: no page.

/** @import { Context, Found, Kit, KitContent, Patch, Renumber, Shelf, State } from "./types.js" */
/** @typedef {{ kits: number, own: number, records: number }} Counts */
/** @typedef {Pick<State, "kit" | "others">} Kits */

import { MOST_OWN } from "../../pkg/facts.js";
import { freeTitle, roomFor } from "./collection.js";
import { isUntouchedDemo } from "./demo.js";
import { newId } from "./ids.js";
import { nameOf, retitle } from "./kit.js";
import { renumbered, renumberedMix, settle } from "./own.js";
import { addRecords } from "./records.js";

/**
 * What a file adds to a state: `{patch, came, known, left}`. Nothing there is changed, but that the demo nobody has touched gives way to
 * a kit of its name: equal kits, own paints and records are known, other kits and paints of the same name get another, and what
 * does not fit any more is counted as left.
 *
 * @type {(state: State, found: Found, context: Pick<Context, "core" | "shelf" | "numberOf">) => { patch: Patch, came: { kits: string[], own: string[], records: number }, known: Counts, left: Counts }}
 */
export function merge(state, found, { core, shelf, numberOf }) {
  const { to: settled, added } = settle(found.own, state.own, numberOf);
  const brought = added.slice(0, Math.max(MOST_OWN - state.own.length, 0));
  const gone = new Set(added.slice(brought.length).map(([number]) => number));
  const own = [...state.own, ...brought];
  /** @type {(kit: KitContent) => string} */
  const textOf = (kit) => core.encode_kit({ ...kit, own });
  const { inHand, more, known, left } = mergedKits(state, numberedKits(found, settled), { shelf, textOf, gone });

  const moved = found.records.map((record) => renumberedMix(record, settled));
  const fit = moved.filter(({ parts }) => !parts.some(([paint]) => gone.has(paint)));
  const recorded = addRecords(state, fit);

  /** @type {(known: number[], marks: number[]) => number[]} */
  const joined = (known, marks) =>
    onto(
      known,
      [...new Set(marks.map(settled))].filter((paint) => !known.includes(paint) && !gone.has(paint)),
    );
  const cameKits = [...(inHand === state.kit ? [] : [inHand]), ...more];
  return {
    patch: {
      kit: inHand,
      own: onto(state.own, brought),
      others: onto(state.others, more),
      ...recorded.patch,
      held: joined(state.held, found.held),
      owned: joined(state.owned, found.owned),
    },
    came: { kits: cameKits.map(nameOf), own: brought.map(([, paint]) => paint.name), records: recorded.added },
    known: { kits: known, own: found.own.length - added.length, records: recorded.known },
    left: { kits: left, own: gone.size, records: recorded.left + moved.length - fit.length },
  };
}

/**
 * The same list where nothing comes onto it.
 *
 * @type {<T>(list: T[], more: T[]) => T[]}
 */
const onto = (list, more) => (more.length ? [...list, ...more] : list);

/**
 * The kits of a file with their own paints as they are numbered here, each with an id.
 *
 * @type {(found: Found, settled: Renumber) => { kit: Kit, its: (number | undefined)[] }[]}
 */
function numberedKits({ kits, own }, settled) {
  const numbers = new Map(own.map(([number, { id }]) => [id, settled(number)]));
  return kits.map(({ own: its, ...kit }) => {
    // A kit numbers its own paints by itself, in the order in which it holds them.
    const to = new Map(its.map(([number, { id }]) => [number, numbers.get(id)]));
    return { kit: { ...renumbered(kit, (paint) => to.get(paint) ?? paint), id: newId() }, its: [...to.values()] };
  });
}

/**
 * The kit in hand and those that come on top, and how many are known or left. `gone` are paints that found no room.
 *
 * @type {(state: Kits, brought: { kit: Kit, its: (number | undefined)[] }[], means: { shelf: Shelf, textOf: (kit: KitContent) => string, gone: Set<number | undefined> }) => { inHand: Kit, more: Kit[], known: number, left: number }}
 */
function mergedKits(state, brought, { shelf, textOf, gone }) {
  const isDemo = isUntouchedDemo(state.kit, shelf);
  const here = new Set([state.kit, ...state.others].map(textOf));
  let { kit: inHand } = state;
  /** @type {Kit[]} */
  const more = [];
  let [known, left] = [0, 0];
  for (const { kit, its } of brought) {
    const isTooMany = roomFor({ kit: inHand, others: [...state.others, ...more] }, shelf) <= 0;
    if (its.some((number) => gone.has(number))) left += 1;
    else if (here.has(textOf(kit))) known += 1;
    else if (isTooMany) left += 1;
    else if (isDemo && inHand === state.kit && kit.title === inHand.title) inHand = { ...kit, id: inHand.id };
    else more.push(retitle(kit, freeTitle(kit, [inHand, ...state.others, ...more])));
    here.add(textOf(kit));
  }
  return { inHand, more, known, left };
}
