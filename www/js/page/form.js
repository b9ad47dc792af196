// Forms and their fields.

import { element } from "./dom.js";

/**
 * A control with its name.
 *
 * @param {string} name
 * @param {Node} control
 */
export const labelled = (name, control) => element("label", { class: "field" }, element("span", {}, name), control);

/**
 * The fields of a form by their names.
 *
 * @param {HTMLFormElement} form
 * @returns {(name: string) => any} an input, a select or a group of inputs, as the form has it
 */
export const fieldsOf = (form) => (name) => form.elements.namedItem(name);
