// Verbs on the places of a kit. Nothing is changed in place. Pure: no page.

/** @import { KitContent, Place } from "./types.js" */

import { LONGEST_PLACE_NAME } from "../../pkg/facts.js";
import { firstPlace } from "../words/state.js";

/** @type {<K extends KitContent>(kit: K, index: number, place: Place) => K} */
const put = (kit, index, place) => ({ ...kit, places: kit.places.map((known, i) => (i === index ? place : known)) });

/**
 * One place more.
 *
 * @type {<K extends KitContent>(kit: K, place: Place) => K}
 */
export const putPlace = (kit, place) => ({ ...kit, places: [...kit.places, place] });

/** @type {<K extends KitContent>(kit: K, index: number) => K} */
export const removePlace = (kit, index) => ({ ...kit, places: kit.places.filter((_, i) => i !== index) });

/** @type {<K extends KitContent>(kit: K, index: number, text: string) => K} */
export const renamePlace = (kit, index, text) =>
  put(kit, index, {
    ...kit.places[index],
    name: [...text.replace(/\p{Cc}/gu, " ").trim()].slice(0, LONGEST_PLACE_NAME).join("").trim(),
  });

/**
 * One colour more, as heavy as the mean of the others; a first one makes a place.
 *
 * @type {<K extends KitContent>(kit: K, index: number, lab: Iterable<number>) => K}
 */
export function addColour(kit, index, lab) {
  const place = kit.places[index];
  if (!place) return putPlace(kit, { name: firstPlace, colours: [{ lab: [...lab], weight: 1 }] });
  const mean = place.colours.reduce((sum, { weight }) => sum + weight, 0) / Math.max(place.colours.length, 1);
  return put(kit, index, { ...place, colours: [...place.colours, { lab: [...lab], weight: mean || 1 }] });
}

/**
 * One colour less; a place without any is no place.
 *
 * @type {<K extends KitContent>(kit: K, index: number, at: number) => K}
 */
export function dropColour(kit, index, at) {
  const colours = kit.places[index].colours.filter((_, i) => i !== at);
  return colours.length ? put(kit, index, { ...kit.places[index], colours }) : removePlace(kit, index);
}

/**
 * Gives a colour so many percent of the place; the others share the rest as before.
 *
 * @type {<K extends KitContent>(kit: K, index: number, at: number, percent: number) => K}
 */
export function weigh(kit, index, at, percent) {
  const place = kit.places[index];
  const share = Math.min(Math.max(percent || 1, 1), 99) / 100;
  const rest = place.colours.reduce((sum, { weight }, i) => sum + (i === at ? 0 : weight), 0);
  if (rest <= 0) return kit;
  const colours = place.colours.map(({ lab, weight }, i) => ({
    lab,
    weight: i === at ? share : (weight / rest) * (1 - share),
  }));
  return put(kit, index, { ...place, colours });
}
