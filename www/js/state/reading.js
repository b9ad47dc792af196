// Kept items read back, each by itself, and put into the state or taken out of it. Pure: no page.

/** @import { Context, KitContent, Linked, Own, Part, Patch, Plain, Renumber, State } from "./types.js" */
/** @typedef {Pick<Context, "core" | "numberOf" | "isBuiltIn"> & { own: Own[] }} Reading */

import * as words from "../words/state.js";
import { idOf } from "./ids.js";
import { createRefs, kindOf, nameOfKey, paintOfKey, partsIn } from "./items.js";
import { adopt, renumbered } from "./own.js";

/**
 * A kit of a text, where its own paints are those of these ids; others come along.
 *
 * @type {(text: string, context: Reading) => { kit: KitContent, added: Own[] }}
 */
export function readKit(text, { core, own, numberOf }) {
  /** @type {Linked} */
  const { own: its, ...kit } = core.decode_kit(text);
  const known = new Set(own.map(([, { id }]) => id));
  const [here, brought] = [its.filter(([, { id }]) => known.has(id)), its.filter(([, { id }]) => !known.has(id))];
  const numbers = new Map(here.map(([number, { id }]) => [number, numberOf(id)]));
  // Paints that are here are numbered before the others, as those are settled among them.
  /** @type {Renumber} */
  const apart = (paint) => {
    const here = numbers.get(paint);
    return here === undefined ? paint : -here;
  };
  const adopted = adopt({ ...renumbered(kit, apart), own: brought }, own, numberOf);
  return { kit: renumbered(adopted.kit, Math.abs), added: adopted.added };
}

/**
 * What an item of a key holds: a kit as `{kit, added}`, an own paint, a record, a mark's paint or a tick. Throws where it cannot be read.
 * `own` are the own paints it may refer to.
 *
 * @type {(key: string, value: any, context: Reading) => any}
 */
export function readItem(key, value, context) {
  const { core, own, numberOf, isBuiltIn } = context;
  const id = nameOfKey(key);
  const refs = createRefs(own, numberOf, isBuiltIn);
  switch (kindOf(key)) {
    case "own":
      return { ...core.read_own(value), id };
    case "kit": {
      const { kit, added } = readKit(value, context);
      return { kit: { ...kit, id }, added };
    }
    case "record":
      return { ...core.read_record({ ...value, parts: known(partsIn(value.parts, refs), context) }), id };
    case "ticked":
      if (typeof value !== "string") throw new Error(words.noText);
      return value;
    default:
      return known([[paintOfKey(key, refs), 1]], context)[0][0];
  }
}

/**
 * The same parts, if each paint is on the shelf or among the own ones.
 *
 * @type {(parts: Part[], context: Pick<Reading, "own" | "isBuiltIn">) => Part[]}
 */
function known(parts, { own, isBuiltIn }) {
  /** @type {(part: Part) => boolean} */
  const isHere = ([paint]) => isBuiltIn(paint) || own.some(([number]) => number === paint);
  if (!parts.every(isHere)) throw new Error(words.gonePaint);
  return parts;
}

/** @type {<T>(list: T[], isIt: (item: T) => boolean, item: T) => T[]} */
const replaced = (list, isIt, item) =>
  list.some(isIt) ? list.map((known) => (isIt(known) ? item : known)) : [...list, item];
/** @type {<T>(list: T[], item: T) => T[]} */
const joined = (list, item) => (list.includes(item) ? list : [...list, item]);

/**
 * What changes in a state when an item comes, or comes anew.
 *
 * @type {(state: Plain, key: string, item: any, context: Pick<Context, "numberOf">) => Patch}
 */
export function withItem(state, key, item, { numberOf }) {
  switch (kindOf(key)) {
    case "own": {
      const number = numberOf(item.id);
      return { own: replaced(state.own, ([other]) => other === number, [number, item]) };
    }
    case "kit": {
      const { kit, added } = item;
      const own = added.length ? { own: [...state.own, ...added] } : {};
      return kit.id === state.kit.id
        ? { ...own, kit }
        : { ...own, others: replaced(state.others, ({ id }) => id === kit.id, kit) };
    }
    case "record":
      return { records: replaced(state.records, ({ id }) => id === item.id, item) };
    default: {
      const kind = /** @type {"held" | "owned" | "ticked"} */ (kindOf(key));
      return { [kind]: joined(/** @type {unknown[]} */ (state[kind]), item) };
    }
  }
}

/**
 * What changes in a state when an item goes.
 *
 * @type {(state: State, key: string, context: Pick<Context, "numberOf" | "isBuiltIn">) => Patch}
 */
export function withoutItem(state, key, { numberOf, isBuiltIn }) {
  const name = nameOfKey(key);
  switch (kindOf(key)) {
    case "own":
      return { own: state.own.filter(([, { id }]) => id !== name) };
    case "kit":
      return { others: state.others.filter(({ id }) => id !== name) };
    case "record":
      return { records: state.records.filter(({ id }) => id !== name) };
    case "ticked":
      return { ticked: state.ticked.filter((tick) => idOf(tick) !== name) };
    default: {
      const paint = createRefs(state.own, numberOf, isBuiltIn).numberOf(name.startsWith("o") ? name : Number(name));
      const kind = /** @type {"held" | "owned"} */ (kindOf(key));
      return { [kind]: state[kind].filter((other) => other !== paint) };
    }
  }
}
