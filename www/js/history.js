// Undo and redo of kits, own paints, records, marks and the path's ends. A drag along a path is a look, not a step.

const MOST = 200;

const picture = ({ kit, others, own, records, held, owned, ends, next, laid, share, load }) => ({ kit, others, own, records, held, owned, ends, next, laid, share, load });

/** What a step changes. */
const STEPS = ["kit", "others", "own", "records", "held", "owned", "ends"];

/** Follows the store; undo and redo put earlier and later kits and ends back, with the mix shown then. */
export function attachHistory(store, { undo, redo }) {
  let past = [];
  let future = [];
  let stepping = false;

  store.subscribe((state, changed, before) => {
    if (stepping || !STEPS.some((key) => changed.has(key))) return;
    past = [...past, picture(before)].slice(-MOST);
    future = [];
    show();
  });

  const step = (from, to) => {
    if (from.length === 0) return;
    to.push(picture(store.get()));
    stepping = true;
    store.set(from.pop());
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
