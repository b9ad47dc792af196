// What the page says stands in `www/js/words` alone, so that another language can be put in its place.

import assert from "node:assert/strict";
import { readdir, readFile } from "node:fs/promises";
import { test } from "node:test";

/** Where a `/` begins a regular expression and does not divide: behind what cannot end a value. */
const BEFORE_REGEXP = /(?:^|[=(,:[!&|?{};+\n]|=>|\breturn)\s*$/;

/** The texts of a script: its strings, and the pieces of its templates between what is put in. */
function textsOf(script) {
  const texts = [];
  /** For every template that is open: how many braces are open in what is put into it. */
  const open = [];
  let at = 0;
  const take = (pattern) => {
    pattern.lastIndex = at;
    const found = pattern.exec(script);
    if (found) at = pattern.lastIndex;
    return found;
  };
  const template = () => {
    const [text] = take(/(?:\\[\s\S]|[^`\\$]|\$(?!\{))*/y);
    texts.push(text);
    if (take(/\$\{/y)) open.push(0);
    else take(/`/y);
  };
  while (at < script.length) {
    if (take(/\/\/.*|\/\*[\s\S]*?\*\//y)) continue;
    if (script[at] === "/" && BEFORE_REGEXP.test(script.slice(Math.max(0, at - 40), at))) {
      if (take(/\/(?:\\.|\[(?:\\.|[^\]\\])*\]|[^/\\[\n])+\/[a-z]*/y)) continue;
    }
    const string = take(/"((?:\\.|[^"\\])*)"|'((?:\\.|[^'\\])*)'/y);
    if (string) texts.push(string[1] ?? string[2]);
    else if (take(/`/y)) template();
    else {
      const brace = script[at];
      at += 1;
      if (brace === "{" && open.length) open.push(open.pop() + 1);
      if (brace === "}" && open.length) {
        const left = open.pop() - 1;
        if (left < 0) template();
        else open.push(left);
      }
    }
  }
  return texts;
}

/** Whether a text is one for people: words with a space between or beside them, or one word with a capital letter. */
const isForPeople = (text) => /\p{L}/u.test(text) && (/\s/.test(text) || /^\p{Lu}\p{Ll}+\P{L}?$/u.test(text));

/** What has spaces or capital letters and is not for people: by what it is. */
const OTHERS = {
  "names of classes": ["chip blank", "dab blank", "half small", "pan gap", "pan split", "rows kept", "rows plan"],
  selectors: [
    "input, textarea",
    "[data-soon], [data-later]",
    ':is(.switch, .tabs) [data-show="',
    ".verbs button:last-child",
    ":scope > li",
  ],
  styles: [
    "(prefers-color-scheme: dark)",
    "(color-gamut: p3)",
    "(forced-colors: active)",
    "linear-gradient(to right, ",
    '"Source Sans 3", system-ui, sans-serif',
    '16px "Source Sans 3"',
    "px ",
    "<style>@font-face { font-family: ",
    "; font-weight: ",
    '; src: url("',
    '"); } text { font-kerning: none; }</style>',
    "\\n:root {\\n",
  ],
  "keys and types of the browser": ["Enter", "Escape", "Files"],
  "keys of storage": ["washpath without", "washpath host", "washpath before", "washpath ", "washpath kit "],
  "what ids are made of": ["kit ", "record "],
  "columns and values of files": [
    ...["tint L*", "tint a*", "tint b*", "code of A", "code of B", "parts of A", "parts of B", "expected error"],
    ...["bright white", "kits "],
  ],
  "faults that tests look for": [": refers to what is gone", ": an id stands twice", " without an id"],
};

const scripts = new URL("../../www/js/", import.meta.url);

test("no script outside words/ says anything to people", async () => {
  const names = (await readdir(scripts, { recursive: true })).filter((name) => name.endsWith(".js"));
  const others = new Set(Object.values(OTHERS).flat());
  const seen = new Set();
  const said = [];
  for (const name of names.filter((name) => !name.startsWith("words/"))) {
    for (const text of textsOf(await readFile(new URL(name, scripts), "utf8")).filter(isForPeople)) {
      if (others.has(text)) seen.add(text);
      else said.push(`${name}: ${text}`);
    }
  }
  assert.deepEqual(said, []);
  assert.deepEqual(
    [...others].filter((text) => !seen.has(text)),
    [],
    "exceptions that nothing needs",
  );
});

test("a sentence is found wherever it is written", () => {
  const found = (script) => textsOf(script).filter(isForPeople);
  assert.deepEqual(found('say("Kit copied");'), ["Kit copied"]);
  assert.deepEqual(found("say('Kit copied');"), ["Kit copied"]);
  assert.deepEqual(found("say(`${name} packed`);"), [" packed"]);
  assert.deepEqual(found("say(`${of({ a: `${b} is A` })}, and so on`);"), [" is A", ", and so on"]);
  assert.deepEqual(found('const plain = /["`/]/.test(text) ? "Undo" : a / b / "Once more";'), ["Undo", "Once more"]);
  assert.deepEqual(found('// "Not this"\n/* `nor this` */ say("But this");'), ["But this"]);
  assert.deepEqual(found('button("×", "small", `${a}:${b}`, "data-focus", "ArrowLeft");'), []);
});
