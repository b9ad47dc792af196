// Verbs on the puddles of a kit. Nothing is changed in place.

/** @import { KitContent, Puddle } from "./types.js" */

/** @type {<K extends KitContent>(kit: K, puddle: Puddle) => K} */
export const keepPuddle = (kit, puddle) => ({ ...kit, puddles: [...kit.puddles, puddle] });

/** @type {<K extends KitContent>(kit: K, index: number) => K} */
export const wipePuddle = (kit, index) => ({ ...kit, puddles: kit.puddles.filter((_, i) => i !== index) });
