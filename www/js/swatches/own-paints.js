// The painter's own paints: made from swatches, a measurement or a mixture; edited, copied, thrown away.

/** @import { Draft } from "./own-form.js" */
/** @import { Ask, Choose, Context, Kit, KitContent, OwnPaint, State, Store, Studio } from "../state/types.js" */

/** @typedef {(number: number, paint: OwnPaint) => unknown} Verb */
/** @typedef {{ choose: (number: number) => void, pack: Verb, edit: Verb, double: Verb, remove: Verb }} Verbs */

import { packPaint } from "../kit/packing.js";
import { dabOf, paintLine } from "../page/dab.js";
import { button, byId, element, notice, say, UNDO } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { isPair, paintEnd, pairOf } from "../state/end.js";
import { paperOf } from "../state/kit.js";
import { doubleOwn, dropOwn } from "../state/own-list.js";
import { holds } from "../state/pans.js";
import * as words from "../words/own-paints.js";
import * as tin from "../words/tin.js";
import { createOwnForm } from "./own-form.js";

/**
 * A paint of which nothing is known yet, swatched on the paper of a kit.
 *
 * @type {(kit: KitContent) => Draft}
 */
const blankOn = (kit) => ({
  name: "",
  code: "",
  caution: "",
  ratings: [null, null, null, null],
  parts: [],
  paper: paperOf(kit),
  masstone: [],
  wash: [],
  washLoad: 0.25,
});

/**
 * Shows the list and its editor. `choose` takes a paint as an end.
 *
 * @param {Store} store
 * @param {Context} context
 * @param {Ask} ask
 * @param {Choose} choose
 */
export function attachOwnPaints(store, context, ask, choose) {
  const { shelf, numberOf } = context;
  const frame = byId("mine");
  const open = createOwnForm(store, context, ask);
  const verbs = {
    /** @param {number} number */
    choose: (number) => choose(paintEnd(number)),
    /** @param {number} number */
    pack: (number) => packPaint(store, shelf.paint(number)),
    /**
     * @param {number} number
     * @param {OwnPaint} paint
     */
    edit: (number, paint) => open(paint, number),
    /**
     * @param {number} _
     * @param {OwnPaint} paint
     */
    double: (_, paint) => store.set((state) => doubleOwn(state, paint, numberOf)) && say(words.doubled(paint.name)),
    /**
     * @param {number} number
     * @param {OwnPaint} paint
     */
    remove(number, paint) {
      if (store.set((state) => dropOwn(state, number)))
        notice(words.deleted(paint.name), { actions: [UNDO], seconds: 10 });
    },
  };

  /** @param {State} state */
  function show({ own, kit, studio }) {
    const rows = own.map(([number, paint]) => row(number, paint, shelf.paint(number).source, kit, studio, verbs));
    remake(
      frame,
      element("h3", {}, words.title),
      element("p", { class: "quiet" }, words.explained),
      element(
        "div",
        { class: "verbs" },
        button(words.fromSwatches, () => open(blankOn(store.get().kit)), { "data-focus": "new" }),
        button(words.fromMix, () => openMix(store.get(), context, open), { "data-focus": "from-mix" }),
      ),
      element("ul", { class: "rows" }, ...rows),
    );
  }

  store.subscribe((state, changed) => ["own", "studio", "kit"].some((key) => changed.has(key)) && show(state));
  show(store.get());
}

/**
 * The mix at hand as a new paint, where it can be one.
 *
 * @param {State} state
 * @param {Context} context
 * @param {(paint: Draft) => void} open
 */
function openMix(state, { isBuiltIn }, open) {
  if (!isPair(state)) return notice(words.noMix, { seconds: 6 });
  const parts = state.studio.mix(pairOf(state), state.share, state.load).recipe;
  if (!parts.every(([paint]) => isBuiltIn(paint))) return notice(words.notBuiltIn, { seconds: 6 });
  if (parts.length < 2) return notice(words.onePaint, { seconds: 6 });
  open({ ...blankOn(state.kit), parts });
}

/**
 * @param {number} number
 * @param {OwnPaint} paint
 * @param {string} source
 * @param {Kit} kit
 * @param {Studio} studio
 * @param {Verbs} what
 */
function row(number, paint, source, kit, studio, { choose, pack, edit, double, remove }) {
  const take = button("", () => choose(number), { class: "take", "data-focus": `take-${number}` });
  take.append(dabOf(studio, number, 30), paintLine(paint, source));
  const packed = holds(kit, number);
  /**
   * @param {string} word
   * @param {Verb} verb
   * @param {{ [name: string]: any }} [attributes]
   */
  const act = (word, verb, attributes = {}) =>
    button(word, () => verb(number, paint), {
      "aria-label": words.verbOf(word, paint.name),
      "data-focus": `${word}-${number}`,
      ...attributes,
    });
  return element(
    "li",
    { class: "own" },
    take,
    element(
      "div",
      { class: "verbs" },
      act(packed ? tin.packed : tin.pack, pack, { disabled: packed }),
      act(words.edit, edit),
      act(words.duplicate, double),
      act(words.remove, remove),
    ),
  );
}
