// The wheel's two canvases: paints below, path and marks above.

import { byId } from "../page/dom.js";
import { loadName, recipe } from "../page/words.js";
import { isPair, paintEnd, paintOf, pairOf } from "../state/end.js";
import { paintsOf } from "../state/kit.js";
import { recordsOn } from "../state/records.js";
import { targetOf } from "../state/target.js";

const LEAST_LOAD = 1 / 32;
const REACH = { mouse: 20, pen: 22, touch: 30 };
const PATH_REACH = { mouse: 16, pen: 20, touch: 26 };
/** What the wheel's words are written in. */
const LETTERS = '16px "Source Sans 3"';
/** Pixels a press may wander and still not be a drag. */
const STILL = 4;

/** Draws the wheel and lets it be used by mouse, touch and keys. Answers a promise of its first drawing, and how a layer of it is drawn elsewhere, on paper-white. */
export function attachWheel(store, shelf, choose, outlines) {
  const ground = byId("wheel-ground");
  const top = byId("wheel-path");
  const stage = top.parentElement;
  let size = 0;
  let due = new Set();
  let press = null;
  let isDrawn = false;
  let stands;
  const drawn = new Promise((resolve) => (stands = resolve));

  const scene = (state = store.get()) => ({
    size,
    kit: paintsOf(state.kit),
    puddles: state.kit.puddles,
    seen: recordsOn(state).map(({ parts, load, seen }) => ({ parts, load, seen })),
    showShelf: state.showShelf,
    pair: pairOf(state),
    asked: state.ends.map((end) => end?.asked?.place ?? null),
    ribbon: state.ribbon,
    pins: state.pins,
    cross: state.cross,
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
    if (size === 0 || layers.size === 0) return;
    const { studio } = store.get();
    const now = scene();
    if (layers.has("ground")) studio.draw_wheel(cleared(ground), now, outlines());
    if (isDrawn) drawPath(studio, now);
    // At the start in a task of its own: each layer takes long on a slow machine.
    else setTimeout(() => drawPath(store.get().studio, scene()), 0);
  }

  function drawPath(studio, now) {
    studio.draw_path(cleared(top), now);
    isDrawn = true;
    stands();
  }

  function cleared(canvas) {
    const scale = window.devicePixelRatio || 1;
    const pixels = Math.round(size * scale);
    if (canvas.width !== pixels) canvas.width = canvas.height = pixels;
    canvas.style.setProperty("width", `${size}px`);
    canvas.style.setProperty("height", `${size}px`);
    const context = canvas.getContext("2d", { colorSpace: store.get().studio.colour_space() });
    context.setTransform(scale, 0, 0, scale, 0, 0);
    context.clearRect(0, 0, size, size);
    return context;
  }

  new ResizeObserver(() => {
    size = Math.floor(Math.min(stage.clientWidth, stage.clientHeight || stage.clientWidth));
    // Told between layout and paint: what is drawn now is in this frame.
    due.add("ground");
    draw();
  }).observe(stage);
  // Canvas text is drawn once: it is drawn again where the page's own letters come later.
  if (!document.fonts.check(LETTERS))
    document.fonts.load(LETTERS).then(
      () => redraw("ground"),
      () => {},
    );
  matchMedia("print").addEventListener("change", () => redraw("ground"));

  store.subscribe((_, changed) => {
    const onGround = ["kit", "showShelf", "ends", "studio", "dim", "reach", "pinnedKit", "guest"].some((key) =>
      changed.has(key),
    );
    redraw(onGround ? "ground" : "path");
  });

  const at = (event) => [event.offsetX, event.offsetY];

  const near = (event, kind) => kind[event.pointerType] ?? kind.mouse;

  /** The share under the pointer; Alt lets it pass whole parts by. */
  function follow(event) {
    const found = store.get().studio.share_at(scene(), ...at(event), !event.altKey);
    if (found) store.set({ share: found[0] });
  }

  /** What a press at a place means if it stays put: a paint, a puddle, an empty place. */
  function under(event) {
    const { studio, kit } = store.get();
    const now = scene();
    const puddle = studio.puddle_at(now, ...at(event), near(event, REACH));
    if (puddle !== undefined) return () => choose({ parts: kit.puddles[puddle].parts });
    const paint = studio.paint_at(now, ...at(event), near(event, REACH));
    return paint ? () => choose(paintEnd(paint)) : null;
  }

  /** The kit's recipe nearest to a place of the wheel becomes an end; or the place gives the target its hue. */
  function chooseNearest(place) {
    if (store.get().picking) return pickTarget(place);
    const { studio, kit, load } = store.get();
    const found = studio.nearest_recipe(paintsOf(kit), ...place, load);
    if (!found) return announce("Pack a paint first: an empty kit reaches no place");
    choose({ parts: found.parts, asked: { place, off: found.off } });
  }

  function pickTarget(place) {
    const { studio, target } = store.get();
    store.set({ target: targetOf(studio.at_place(target?.lab[0] ?? 50, ...place), "wheel"), picking: false });
    announce("The colour to match is taken from the wheel");
  }

  top.addEventListener("pointerdown", (event) => {
    const { studio } = store.get();
    // While a colour is picked, every spot of the wheel is a place.
    const meant = store.get().picking
      ? () => pickTarget([...(studio.place_at(size, ...at(event)) ?? [0, 0])])
      : under(event);
    const [, offPath, offMark] = studio.share_at(scene(), ...at(event), false) ?? [0, Infinity, Infinity];
    const reach = near(event, PATH_REACH);
    // The mark may stand on a dab: a press that then stays put means the paint.
    const follows = offMark <= reach || (offPath <= reach && !meant);
    press = { meant, follows, moved: false, x: event.clientX, y: event.clientY };
    top.setPointerCapture(event.pointerId);
    if (follows && !meant) follow(event);
  });
  top.addEventListener("pointermove", (event) => {
    if (!press) return event.pointerType === "mouse" && hint(event);
    press.moved ||= Math.hypot(event.clientX - press.x, event.clientY - press.y) > STILL;
    if (press.follows && (press.moved || !press.meant)) follow(event);
  });
  top.addEventListener("pointerup", (event) => {
    const { meant, follows, moved } = press ?? { moved: true };
    press = null;
    if (moved) return;
    if (meant) return meant();
    if (follows) return;
    const place = store.get().studio.place_at(size, ...at(event));
    if (place) chooseNearest([...place]);
  });
  top.addEventListener("pointercancel", () => (press = null));

  function hint(event) {
    const { studio } = store.get();
    const now = scene();
    const puddle = studio.puddle_at(now, ...at(event), REACH.mouse);
    const paint = studio.paint_at(now, ...at(event), REACH.mouse);
    top.style.cursor = paint || puddle !== undefined ? "pointer" : "default";
    top.title =
      puddle !== undefined ? `Puddle ${puddle + 1}` : paint ? `${shelf.get(paint).name} ${shelf.get(paint).code}` : "";
  }

  top.addEventListener("keydown", (event) => {
    const act = keys[event.key];
    if (!act || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    act(event.shiftKey);
  });
  top.addEventListener("blur", () => store.set({ cursor: 0, cross: null }));

  const keys = {
    ArrowLeft: (far) => (store.get().cross ? moveCross(-1, 0, far) : alongPath(false, far)),
    ArrowRight: (far) => (store.get().cross ? moveCross(1, 0, far) : alongPath(true, far)),
    ArrowUp: (far) => (store.get().cross ? moveCross(0, 1, far) : roundWheel(1)),
    ArrowDown: (far) => (store.get().cross ? moveCross(0, -1, far) : roundWheel(-1)),
    Enter: take,
    " ": take,
    PageUp: () => toLoad(2),
    PageDown: () => toLoad(0.5),
    Home: () => toShare(0),
    End: () => toShare(1),
    p: showCross,
    P: showCross,
    Escape: () => store.set({ cross: null, cursor: 0 }),
  };

  /** A step along the path; far is to the next whole parts. */
  function alongPath(towardsB, far) {
    const { studio, share } = store.get();
    toShare(far ? studio.next_parts(share, towardsB) : studio.step_share(share, towardsB ? 1 : -1));
  }

  function toShare(share) {
    store.set({ share });
    sayMix();
  }

  /** A cross to point at any place of the wheel; it starts at the mix at hand. */
  function showCross() {
    const state = store.get();
    const start = isPair(state) ? [...state.studio.place_of(pairOf(state), state.share, state.load)] : [0, 0];
    store.set({ cross: start, cursor: 0 });
    announce("A cross is on the wheel: arrows move it, Enter takes the nearest mix, Escape puts it away");
  }

  function moveCross(dx, dy, far) {
    const step = far ? 5 : 1;
    const [x, y] = store.get().cross;
    const moved = [x + dx * step, y + dy * step];
    if (Math.hypot(...moved) <= store.get().studio.rim()) store.set({ cross: moved });
  }

  function roundWheel(step) {
    const { studio, cursor, ends } = store.get();
    const paints = [...studio.round_the_wheel(scene())];
    if (paints.length === 0) return;
    const from = paints.indexOf(cursor || paintOf(ends[0]));
    const paint = paints[(from + step + paints.length) % paints.length];
    store.set({ cursor: paint });
    announce(`${shelf.get(paint).name}, ${shelf.get(paint).code}`);
  }

  function take() {
    const { cursor, cross } = store.get();
    if (cross) chooseNearest(cross);
    else if (cursor) choose(paintEnd(cursor));
  }

  function toLoad(factor) {
    store.set({ load: Math.min(Math.max(store.get().load * factor, LEAST_LOAD), 1) });
    sayMix();
  }

  function sayMix() {
    const state = store.get();
    if (!isPair(state)) return;
    const mix = state.studio.mix(pairOf(state), state.share, state.load);
    announce(`${recipe(mix.recipe, shelf)}, ${loadName(state.load)}: ${mix.swatch.words}`);
  }

  function announce(text) {
    byId("wheel-said").textContent = text;
  }

  const drawOn = (studio, layer, context, size) => {
    const now = { ...scene(), size, cursor: 0, cross: null, ink: inks({ studio, dim: false }) };
    if (layer === "ground") studio.draw_wheel(context, now, outlines());
    else studio.draw_path(context, now);
  };
  return { drawn, drawOn };
}

/** Inks that read on the paper, grey or tan as it may be; the names outside it read on the surround. */
function inks({ studio, dim }) {
  const printing = matchMedia("print").matches;
  // Where the person chose the colours, what is drawn on the surround keeps to them.
  if (matchMedia("(forced-colors: active)").matches)
    return { ...plain(studio), rim: getComputedStyle(document.body).color };
  return { ...plain(studio), rim: dim && !printing ? "#cfcfcf" : "#4a4a4a" };
}

function plain(studio) {
  return {
    paper: studio.paper(),
    line: "rgba(0,0,0,.13)",
    quiet: "#4a4a4a",
    strong: "#1c1c1c",
    doubt: "rgba(0,0,0,.055)",
  };
}
