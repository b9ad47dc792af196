// A colour that was seen: typed, picked, taken from the target, or read from a meter's file.

import { button, element } from "../page/dom.js";
import { readText } from "../page/text-file.js";
import { capital } from "../page/words.js";

/** A field for what a swatch looked like. `onchange` hears of it as L*, a*, b* or 36 reflectances, or of nothing. */
export function seenField(name, { store, core, ask }, onchange) {
  let found = null;
  const text = element("input", {
    type: "text",
    autocomplete: "off",
    spellcheck: "false",
    placeholder: "#7a6f6b, lab(48 2 4)",
    oninput: read,
  });
  const picker = element("input", {
    type: "color",
    value: "#808080",
    "aria-label": `Pick: ${name}`,
    oninput: () => {
      text.value = picker.value;
      read();
    },
  });
  const said = element("p", { class: "quiet", role: "status" });
  const target = button("As in Match", () => put(store.get().target.lab, "Taken from Match"), {
    title: "The colour chosen in Match: sampled from a white-balanced photo of the swatch, for one",
  });
  const id = `file-${name.replace(/\W+/g, "-").toLowerCase()}`;
  const file = element("input", {
    type: "file",
    id,
    class: "unseen",
    accept: ".csv,.txt,.tsv,.cgats,.it8,text/*",
    onchange: () => file.files[0] && open(file.files[0]),
  });
  const samples = element("select", {
    "aria-label": "Sample of the file",
    hidden: true,
    onchange: () => put(measured[samples.selectedIndex].seen),
  });
  let measured = [];
  const node = element(
    "div",
    { class: "seen" },
    element(
      "div",
      { class: "typed" },
      element("label", { class: "field" }, element("span", {}, name), text),
      element("label", { class: "field" }, element("span", {}, "Pick"), picker),
    ),
    element(
      "div",
      { class: "verbs" },
      target,
      element("label", { for: id, class: "button" }, "Meter’s file"),
      file,
      samples,
    ),
    said,
  );

  function read() {
    samples.hidden = true;
    if (!text.value.trim()) return tell(null, "");
    try {
      tell([...core.read_colour(text.value)], "");
    } catch (error) {
      tell(null, `${capital(error.message)}.`);
    }
  }

  function tell(seen, word) {
    found = seen;
    said.textContent = word;
    onchange(seen);
  }

  function put(seen, word = "") {
    const lab = labOf(seen, core);
    text.value = lab ? `lab(${lab.map((value) => Math.round(value)).join(" ")})` : "";
    if (lab) picker.value = core.hex_of(Float32Array.from(lab));
    tell(seen ? [...seen] : null, seen?.length === 36 ? "A measured spectrum." : word);
  }

  async function open(chosen) {
    said.textContent = "Reading …";
    try {
      const { text, said: how } = await readText(chosen);
      const { found: list, faults } = await ask("samples", { text });
      measured = list;
      samples.replaceChildren(...list.map((sample) => element("option", {}, sample.name)));
      put(list[0].seen);
      samples.hidden = list.length < 2;
      if (faults.length)
        said.textContent = `${list.length} samples read. Not all as it stands: ${faults.slice(0, 3).join("; ")}${faults.length > 3 ? ` and ${faults.length - 3} more` : ""}.`;
      if (how) said.textContent = `${said.textContent} ${how}`.trim();
    } catch (error) {
      tell(found, `This file could not be read: ${error.message}.`);
    }
    file.value = "";
  }

  const show = (state) => (target.disabled = !state.target);
  store.subscribe((state, changed) => changed.has("target") && show(state));
  show(store.get());
  /** What the picker starts from while nothing is seen. */
  const start = (css) => {
    if (!found) picker.value = css;
  };
  return { node, start, get: () => found, put, focus: () => text.focus() };
}

/** L*, a*, b* of what was seen. */
export const labOf = (seen, core) =>
  seen?.length === 36 ? [...core.lab_of_seen(Float32Array.from(seen))] : seen ? [...seen] : null;
