// The painter's own paints: a list of [number, paint]. Never changed in place; a number is never given twice.

import { withFilms } from "./films.js";

/** Most own paints that are kept. */
export const MOST_OWN = 60;

const same = (a, b) => JSON.stringify(a) === JSON.stringify(b);

/** The next free number. */
export const nextNumber = (own, first) => own.reduce((next, [number]) => Math.max(next, number + 1), first);

/** A name no other paint of the list bears. */
export function freeName(name, own) {
  const taken = new Set(own.map(([, paint]) => paint.name.toLowerCase()));
  for (let count = 1; ; count += 1) {
    const tried = count === 1 ? name : `${[...name].slice(0, 36).join("")} ${count}`;
    if (!taken.has(tried.toLowerCase())) return tried;
  }
}

/** A puddle or record with its paints' numbers as `to` has them. */
export const renumberedMix = (mix, to) => ({ ...mix, parts: mix.parts.map(([paint, count]) => [to(paint), count]) });

/** Renumbers every paint of a kit. */
export const renumbered = (kit, to) => ({
  ...kit,
  pans: kit.pans.map((pan) => pan.map(to)),
  puddles: kit.puddles.map((puddle) => renumberedMix(puddle, to)),
});

/** Where own paints that were brought stand among known ones: known ones keep their known numbers, others get new ones, with numbers and names that `taken` has not either. Answers their new number by their old, and what comes on top. */
export function settle(brought, known, first, taken = []) {
  const added = [];
  const numbers = new Map();
  for (const [number, paint] of brought) {
    const all = [...known, ...added];
    const match = all.find(([, other]) => same(other, paint));
    const own = match ?? [nextNumber([...all, ...taken], first), { ...paint, name: freeName(paint.name, [...all, ...taken]) }];
    if (!match) added.push(own);
    numbers.set(number, own[0]);
  }
  return { to: (paint) => numbers.get(paint) ?? paint, added };
}

/** A kit that was read with its own paints, settled among known ones. Answers the kit and what came with it. */
export function adopt({ own, ...kit }, known, first) {
  const { to, added } = settle(own, known, first);
  return { kit: renumbered(kit, to), added };
}

/** What changes in the state when an own paint is thrown away: it leaves every kit, end and record. */
export function withoutPaint({ own, kit, others, ends, records, held, owned }, number) {
  const holds = (parts) => parts.some(([paint]) => paint === number);
  const emptied = (kit) => ({
    ...kit,
    pans: kit.pans.map((pan) => pan.filter((paint) => paint !== number)).filter((pan) => pan.length),
    puddles: kit.puddles.filter(({ parts }) => !holds(parts)),
  });
  return {
    own: own.filter(([other]) => other !== number),
    kit: emptied(kit),
    others: others.map(emptied),
    ends: ends.map((end) => (end && holds(end.parts) ? null : end)),
    records: records.filter(({ parts }) => !holds(parts)),
    held: held.filter((paint) => paint !== number),
    owned: owned.filter((paint) => paint !== number),
  };
}

/** What stands on the shelf besides the built-in paints: own ones with their films, and what was learned if it is to be predicted with. */
export const onShelf = ({ own, visiting, films, learned, learning }) => ({ own: withFilms([...own, ...visiting], films), learned: learning ? learned : [] });

/** Keeps the shelf, here and in the worker, up with own paints and with what was learned. Attached before every view. */
export function attachOwnShelf(store, shelf, core, ask, studioOf) {
  const tell = (all) => ask("shelf", all).catch(() => {});
  // What was put on the shelf from the last visit has to be on the worker's too.
  const first = onShelf(store.get());
  if (first.own.length || first.learned.length) tell(first);
  store.subscribe((state, changed) => {
    if (!["own", "visiting", "learned", "learning"].some((key) => changed.has(key))) return;
    const all = onShelf(state);
    shelf.fill(core.set_shelf(all.own, all.learned));
    tell(all);
    store.set({ studio: studioOf(state.kit, state.light) });
  });
}
