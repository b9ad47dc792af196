// A place: colours with weights that the painter wants to reach, found in a photo or gathered by hand.

/** @import { Ways } from "./place-reach.js" */
/** @import { Ask, Place, Shelf, Store } from "../state/types.js" */

import { MOST_COLOURS, MOST_PLACES } from "../../pkg/facts.js";
import { editKit } from "../kit/edit.js";
import { button, byId, element, notice } from "../page/dom.js";
import { remake } from "../page/remake.js";
import { afterRest } from "../page/rest.js";
import { addColour, putPlace, removePlace, renamePlace } from "../state/places.js";
import * as words from "../words/place.js";
import { untitled } from "../words/terms.js";
import { createReach } from "./place-reach.js";

const REST = 200;
/** How many colours are found in a photo, at first and at least. */
const COLOURS = 12;
const LEAST_COLOURS = 8;

/**
 * Shows the places of the kit; answers a verb that takes a new photo's pixels, or nothing. `ways` are those of `createReach`.
 *
 * @param {Store} store
 * @param {Shelf} shelf
 * @param {Ask} ask
 * @param {Ways} ways
 */
export function attachPlace(store, shelf, ask, ways) {
  /** @type {ImageData | null} */
  let photo = null;
  let current = 0;
  let count = COLOURS;
  const head = element("div", {});
  const reach = createReach(store, shelf, ask, ways);
  byId("place").replaceChildren(head, reach.node);

  function showHead() {
    const { kit, target } = store.get();
    current = Math.min(current, Math.max(kit.places.length - 1, 0));
    const place = kit.places[current];
    remake(
      head,
      titleRow(kit.places, current, turnTo),
      place ? nameField(place, (name) => editKit(store, (kit) => renamePlace(kit, current, name))) : "",
      element(
        "div",
        { class: "verbs" },
        countField(count, (counted) => (count = counted)),
        button(words.find, find, { disabled: !photo, "data-focus": "find" }),
        button(words.addTarget, () => target && add(target.lab), { disabled: !target, "data-focus": "add" }),
        place ? button(words.remove, drop, { "data-focus": "remove" }) : "",
      ),
    );
  }

  function refresh() {
    showHead();
    reach.look(current);
  }

  /** @param {number} index */
  function turnTo(index) {
    current = index;
    refresh();
  }

  async function find() {
    if (!photo) return;
    const { data, width, height } = photo;
    try {
      const colours = await ask("cluster", { data, width, height, count });
      const { places } = store.get().kit;
      if (places.length >= MOST_PLACES) return notice(words.tooManyPlaces, { seconds: 8 });
      current = places.length;
      const place = { name: words.name(current + 1), colours };
      editKit(store, (kit) => putPlace(kit, place), words.found(colours.length));
    } catch (error) {
      notice(words.notFound(error.message));
    }
  }

  /** @param {number[]} lab */
  function add(lab) {
    const place = store.get().kit.places[current];
    if (place?.colours.length >= MOST_COLOURS) return notice(words.tooManyColours, { seconds: 6 });
    editKit(store, (kit) => addColour(kit, current, lab), words.added);
  }

  const drop = () => editKit(store, (kit) => removePlace(kit, current), words.removed);

  const soon = afterRest(refresh, REST);
  store.subscribe((_, changed) => {
    if (changed.has("target")) showHead();
    if (changed.has("kit") || changed.has("studio")) soon();
  });
  soon();
  return (/** @type {ImageData | null} */ pixels) => {
    photo = pixels;
    showHead();
  };
}

/**
 * The title, and where there are several places the list to turn to one.
 *
 * @param {Place[]} places
 * @param {number} current
 * @param {(index: number) => void} turnTo
 */
function titleRow(places, current, turnTo) {
  const list = element(
    "select",
    { "aria-label": words.title, "data-focus": "place", onchange: () => turnTo(list.selectedIndex) },
    ...places.map(({ name }, i) => element("option", { selected: i === current }, name || untitled)),
  );
  return element("div", { class: "title-row" }, element("h3", {}, words.title), places.length > 1 ? list : "");
}

/**
 * @param {Place} place
 * @param {(name: string) => void} named
 */
function nameField(place, named) {
  const field = element("input", {
    class: "title",
    "aria-label": words.nameField,
    maxlength: 40,
    value: place.name,
    "data-focus": "name",
    onchange: () => named(field.value),
  });
  return field;
}

/**
 * How many colours are to be found in the photo.
 *
 * @param {number} count
 * @param {(count: number) => void} counted
 */
function countField(count, counted) {
  const field = element("input", {
    type: "number",
    min: LEAST_COLOURS,
    max: MOST_COLOURS,
    value: count,
    "aria-label": words.howMany,
    "data-focus": "count",
    onchange: () =>
      counted(Math.min(Math.max(Math.round(Number(field.value)) || COLOURS, LEAST_COLOURS), MOST_COLOURS)),
  });
  return element("label", { class: "tick" }, field, words.colours);
}
