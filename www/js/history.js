// Undo and redo of the kit.

const MOST = 200;

/** Follows `store.kit`; undo and redo put earlier and later kits back. */
export function attachHistory(store, { undo, redo }) {
  let past = [];
  let future = [];
  let stepping = false;

  store.subscribe((state, changed, before) => {
    if (!changed.has("kit") || stepping) return;
    past = [...past, before.kit].slice(-MOST);
    future = [];
    show();
  });

  const step = (from, to) => {
    if (from.length === 0) return;
    to.push(store.get().kit);
    stepping = true;
    store.set({ kit: from.pop() });
    stepping = false;
    show();
  };
  const back = () => step(past, future);
  const forth = () => step(future, past);

  function show() {
    undo.disabled = past.length === 0;
    redo.disabled = future.length === 0;
  }

  undo.addEventListener("click", back);
  redo.addEventListener("click", forth);
  document.addEventListener("keydown", (event) => {
    // In a text field the keys undo typing.
    if (!(event.ctrlKey || event.metaKey) || event.target.matches("input, textarea")) return;
    const key = event.key.toLowerCase();
    if (key !== "z" && key !== "y") return;
    event.preventDefault();
    if (key === "y" || event.shiftKey) forth();
    else back();
  });
}
