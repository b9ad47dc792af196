// A meter's file: chosen, read by the worker, and one of its samples taken.

/** @import { Ask } from "../state/types.js" */

import { element } from "../page/dom.js";
import { readText } from "../page/text-file.js";
import * as words from "../words/record.js";

/** Most faults of a file that are told one by one. */
const MOST_TOLD = 3;

/**
 * The field that a file is chosen with, and the list of its samples, as `nodes`.
 *
 * `put(seen)` hears of the sample that is taken, `said` is where it is told how the file was read, and `failed(error)` hears
 * why it could not be.
 *
 * @param {string} id
 * @param {Ask} ask
 * @param {{ put: (seen: number[]) => void, said: HTMLElement, failed: (error: Error) => void }} what
 */
export function createMeterFile(id, ask, { put, said, failed }) {
  /** @type {{ name: string, seen: number[] }[]} */
  let measured = [];
  const field = element("input", {
    type: "file",
    id,
    class: "unseen",
    accept: ".csv,.txt,.tsv,.cgats,.it8,text/*",
    onchange: () => {
      const chosen = field.files?.[0];
      if (chosen) open(chosen);
    },
  });
  const samples = element("select", {
    "aria-label": words.sample,
    hidden: true,
    onchange: () => put(measured[samples.selectedIndex].seen),
  });

  /** @param {File} chosen */
  async function open(chosen) {
    said.textContent = words.reading;
    try {
      const { text, said: how } = await readText(chosen);
      const { found, faults } = await ask("samples", { text });
      measured = found;
      samples.replaceChildren(...found.map((sample) => element("option", {}, sample.name)));
      put(found[0].seen);
      samples.hidden = found.length < 2;
      if (faults.length)
        said.textContent = words.amiss(
          found.length,
          faults.slice(0, MOST_TOLD),
          Math.max(faults.length - MOST_TOLD, 0),
        );
      if (how) said.textContent = `${said.textContent} ${how}`.trim();
    } catch (error) {
      failed(error);
    }
    field.value = "";
  }

  return {
    nodes: [element("label", { for: id, class: "button" }, words.meterFile), field, samples],
    hideSamples: () => (samples.hidden = true),
  };
}
