// A kit as a link's text; `link-text.js` finds it in an address again.

/** @import { Core, KitContent, State } from "./types.js" */

/** What stands before the text in a link. */
export const MARK = "#kit=";

/**
 * A kit as a link's text, with those of the own paints that it holds.
 *
 * @type {(state: Pick<State, "own">, core: Core, kit: KitContent) => string}
 */
export const textOf = ({ own }, core, kit) => core.encode_kit({ ...kit, own });
