// The colour to be matched.

/** @import { Target } from "./types.js" */

/**
 * A target from CIELAB. `from` says where it comes from.
 *
 * @type {(lab: Iterable<number>, from: string) => Target}
 */
export const targetOf = (lab, from) => ({ lab: [...lab], from });
