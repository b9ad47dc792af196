// One state for the whole page, replaced and never changed in place.

/** A store of plain state; views subscribe and learn which parts changed. */
export function createStore(initial) {
  let state = initial;
  const views = new Set();
  return {
    get: () => state,
    /** Replaces some parts; views hear of those that are not the same as before. */
    set(patch) {
      const before = state;
      const changed = new Set(Object.keys(patch).filter((key) => patch[key] !== before[key]));
      if (changed.size === 0) return;
      state = { ...before, ...patch };
      for (const view of views) view(state, changed, before);
    },
    subscribe(view) {
      views.add(view);
      return () => views.delete(view);
    },
  };
}
