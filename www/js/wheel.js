// The wheel's two canvases: paints below, path and marks above.

import { byId } from "./dom.js";
import { paintsOf } from "./kit.js";
import { loadName, recipe } from "./words.js";

const LEAST_LOAD = 1 / 32;
const REACH = { mouse: 20, pen: 22, touch: 30 };
const PATH_REACH = { mouse: 16, pen: 20, touch: 26 };
/** Pixels a press may wander and still not be a drag. */
const STILL = 4;

/** Draws the wheel and lets it be used by mouse, touch and keys. */
export function attachWheel(store, shelf, choose) {
  const ground = byId("wheel-ground");
  const top = byId("wheel-path");
  const stage = top.parentElement;
  let size = 0;
  let due = new Set();
  let drag = null;

  const scene = (state = store.get()) => ({
    size,
    kit: paintsOf(state.kit),
    showShelf: state.showShelf,
    ends: state.ends,
    share: state.share,
    load: state.load,
    cursor: state.cursor,
    ink: inks(state),
  });

  function redraw(layer) {
    if (due.size === 0) requestAnimationFrame(draw);
    due.add(layer);
  }

  function draw() {
    const layers = due;
    due = new Set();
    if (size === 0) return;
    const { studio } = store.get();
    const now = scene();
    if (layers.has("ground")) studio.draw_wheel(cleared(ground), now);
    studio.draw_path(cleared(top), now);
    document.documentElement.dataset.ready = "true";
  }

  function cleared(canvas) {
    const scale = window.devicePixelRatio || 1;
    const pixels = Math.round(size * scale);
    if (canvas.width !== pixels) canvas.width = canvas.height = pixels;
    canvas.style.setProperty("width", `${size}px`);
    canvas.style.setProperty("height", `${size}px`);
    const context = canvas.getContext("2d");
    context.setTransform(scale, 0, 0, scale, 0, 0);
    context.clearRect(0, 0, size, size);
    return context;
  }

  new ResizeObserver(() => {
    size = Math.floor(Math.min(stage.clientWidth, stage.clientHeight || stage.clientWidth));
    redraw("ground");
  }).observe(stage);
  // Canvas text is drawn once: wait for the page's own letters.
  document.fonts?.ready.then(() => redraw("ground"));
  matchMedia("print").addEventListener("change", () => redraw("ground"));

  store.subscribe((state, changed) => {
    const onGround = ["kit", "showShelf", "ends", "studio", "dim"].some((key) => changed.has(key));
    redraw(onGround ? "ground" : "path");
  });

  const at = (event) => [event.offsetX, event.offsetY];

  function follow(event) {
    const found = store.get().studio.share_at(scene(), ...at(event));
    if (found) store.set({ share: found[0] });
  }

  top.addEventListener("pointerdown", (event) => {
    const { studio } = store.get();
    const paint = studio.paint_at(scene(), ...at(event), REACH[event.pointerType] ?? REACH.mouse);
    const [, offPath, offMark] = studio.share_at(scene(), ...at(event)) ?? [0, Infinity, Infinity];
    const reach = PATH_REACH[event.pointerType] ?? PATH_REACH.mouse;
    // The mark may stand on a dab: a press that then stays put means the paint.
    if (offMark <= reach || (offPath <= reach && !paint)) {
      drag = { paint, x: event.clientX, y: event.clientY, moved: false };
      top.setPointerCapture(event.pointerId);
      if (!paint) follow(event);
    } else if (paint) {
      choose(paint);
    }
  });
  top.addEventListener("pointermove", (event) => {
    if (!drag) return event.pointerType === "mouse" && hint(event);
    drag.moved ||= Math.hypot(event.clientX - drag.x, event.clientY - drag.y) > STILL;
    if (drag.moved || !drag.paint) follow(event);
  });
  top.addEventListener("pointerup", () => {
    if (drag?.paint && !drag.moved) choose(drag.paint);
    drag = null;
  });
  top.addEventListener("pointercancel", () => (drag = null));

  function hint(event) {
    const paint = store.get().studio.paint_at(scene(), ...at(event), REACH.mouse);
    top.style.cursor = paint ? "pointer" : "default";
    top.title = paint ? `${shelf.get(paint).name} ${shelf.get(paint).code}` : "";
  }

  top.addEventListener("keydown", (event) => {
    const act = keys[event.key];
    if (!act || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    act(event.shiftKey ? 5 : 1);
  });
  top.addEventListener("blur", () => store.set({ cursor: 0 }));

  const keys = {
    ArrowLeft: (steps) => alongPath(-steps),
    ArrowRight: (steps) => alongPath(steps),
    ArrowUp: () => roundWheel(1),
    ArrowDown: () => roundWheel(-1),
    Enter: take,
    " ": take,
    PageUp: () => toLoad(2),
    PageDown: () => toLoad(0.5),
    Home: () => toShare(0),
    End: () => toShare(1),
  };

  function alongPath(steps) {
    const { studio, share } = store.get();
    toShare(studio.step_share(share, steps));
  }

  function toShare(share) {
    store.set({ share });
    sayMix();
  }

  function roundWheel(step) {
    const { studio, cursor, ends } = store.get();
    const paints = [...studio.round_the_wheel(scene())];
    if (paints.length === 0) return;
    const from = paints.indexOf(cursor || ends[0]);
    const paint = paints[(from + step + paints.length) % paints.length];
    store.set({ cursor: paint });
    announce(`${shelf.get(paint).name}, ${shelf.get(paint).code}`);
  }

  function take() {
    const { cursor } = store.get();
    if (cursor) choose(cursor);
  }

  function toLoad(factor) {
    store.set({ load: Math.min(Math.max(store.get().load * factor, LEAST_LOAD), 1) });
    sayMix();
  }

  function sayMix() {
    const { studio, ends, share, load } = store.get();
    if (!ends[0] || !ends[1]) return;
    const mix = studio.mix(...ends, share, load);
    announce(`${recipe(mix.parts, ...ends.map((end) => shelf.get(end)))}, ${loadName(load)}: ${mix.swatch.words}`);
  }

  function announce(text) {
    byId("wheel-said").textContent = text;
  }
}

/** Inks that read on the paper, grey or tan as it may be; the names outside it read on the surround. */
function inks({ studio, dim }) {
  const printing = matchMedia("print").matches;
  return {
    paper: studio.paper(),
    line: "rgba(0,0,0,.13)",
    quiet: "#4a4a4a",
    strong: "#1c1c1c",
    doubt: "rgba(0,0,0,.055)",
    rim: dim && !printing ? "#cfcfcf" : "#4a4a4a",
  };
}
