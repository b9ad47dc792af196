// The painter's own paints: a list of [number, paint]. A paint has a lasting id; its number is its name within this visit
// and follows the id. Never changed in place. Pure: no page.

/** @import { Film, KitContent, Learned, Linked, NumberOf, Own, OwnPaint, Part, Renumber, State } from "./types.js" */

import * as words from "../words/state.js";
import { withFilms } from "./films.js";
import { idOf, newId } from "./ids.js";

/**
 * Answers `numberOf(id)`: the number of an own paint within this visit, from `first` on. A number is never given to another.
 *
 * @type {(first: number) => NumberOf}
 */
export function createNumbers(first) {
  const numbers = new Map();
  return (id) => {
    if (!numbers.has(id)) numbers.set(id, first + numbers.size);
    return numbers.get(id);
  };
}

/**
 * What a paint is, whatever it is called within the program.
 *
 * @type {(paint: OwnPaint) => string}
 */
const contentOf = ({ id, ...content }) => JSON.stringify(content);

/** @type {(paint: OwnPaint) => string} */
const bare = ({ id, name, ...content }) => JSON.stringify(content);

/**
 * Whether two are one paint: what they are is the same, and so is their id or their name.
 *
 * @type {(a: OwnPaint, b: OwnPaint) => boolean}
 */
const isSame = (a, b) => bare(a) === bare(b) && (a.id === b.id || a.name === b.name);

/**
 * A name no other paint of the list bears.
 *
 * @type {(name: string, own: Own[]) => string}
 */
export function freeName(name, own) {
  const taken = new Set(own.map(([, paint]) => paint.name.toLowerCase()));
  for (let count = 1; ; count += 1) {
    const tried = count === 1 ? name : words.numbered([...name].slice(0, 36).join(""), count);
    if (!taken.has(tried.toLowerCase())) return tried;
  }
}

/**
 * A puddle or record with its paints' numbers as `to` has them.
 *
 * @type {<M extends { parts: Part[] }>(mix: M, to: Renumber) => M}
 */
export const renumberedMix = (mix, to) => ({ ...mix, parts: mix.parts.map(([paint, count]) => [to(paint), count]) });

/**
 * Renumbers every paint of a kit.
 *
 * @type {<K extends KitContent>(kit: K, to: Renumber) => K}
 */
export const renumbered = (kit, to) => ({
  ...kit,
  pans: kit.pans.map((pan) => pan.map(to)),
  puddles: kit.puddles.map((puddle) => renumberedMix(puddle, to)),
});

/**
 * Where own paints that were brought stand among known ones: known ones keep their numbers, others come on top, under
 * names that no other bears. One with the id of a known paint that is something else by now gets an id of its own.
 * Answers their number here by the number they came with, and what comes on top.
 *
 * @type {(brought: Own[], known: Own[], numberOf: NumberOf) => { to: Renumber, added: Own[] }}
 */
export function settle(brought, known, numberOf) {
  /** @type {Own[]} */
  const added = [];
  const numbers = new Map();
  for (const [number, paint] of brought) {
    const all = [...known, ...added];
    /** @type {(wanted: OwnPaint) => Own | undefined} */
    const same = (wanted) => all.find(([, other]) => isSame(other, wanted));
    /** @type {(id: string) => boolean} */
    const isTaken = (id) => all.some(([, other]) => other.id === id);
    const wanted = isTaken(paint.id) && !same(paint) ? { ...paint, id: idOf(contentOf(paint)) } : paint;
    const match = same(wanted);
    const id = match || !isTaken(wanted.id) ? wanted.id : newId();
    const own = match ?? [numberOf(id), { ...wanted, id, name: freeName(wanted.name, all) }];
    if (!match) added.push(own);
    numbers.set(number, own[0]);
  }
  return { to: (paint) => numbers.get(paint) ?? paint, added };
}

/**
 * A kit that was read with its own paints, settled among known ones. Answers the kit and what came with it.
 *
 * @type {(found: Linked, known: Own[], numberOf: NumberOf) => { kit: KitContent, added: Own[] }}
 */
export function adopt({ own, ...kit }, known, numberOf) {
  const { to, added } = settle(own, known, numberOf);
  return { kit: renumbered(kit, to), added };
}

/**
 * What stands on the shelf besides the built-in paints: own ones with their films, and what was learned if it is to be predicted with.
 *
 * @type {(state: State) => { own: [number, OwnPaint, Film | null][], learned: Learned[] }}
 */
export const onShelf = ({ own, visiting, films, learned, learning }) => ({
  own: withFilms([...own, ...visiting], films),
  learned: learning ? learned : [],
});
