// Kit files: saved, checked against their schema, looked into, added; and what is hostile or broken in them named.

import assert from "node:assert/strict";
import { readdir, readFile } from "node:fs/promises";
import { test } from "node:test";
import { Ajv2020 } from "ajv/dist/2020.js";
import { PNG } from "pngjs";
import { assertAccessible } from "./support/axe.js";
import { kept } from "./support/kept.js";
import { controls, overflow } from "./support/layout.js";
import { visits } from "./support/visit.js";
import { kit } from "./support/washpath.js";

const visit = visits();

const at = (path) => new URL(`../../${path}`, import.meta.url);
const golden = await readFile(at("tests/reference/kit_file_v1.json"), "utf8");
const schema = JSON.parse(await readFile(at("www/kit-file.schema.json"), "utf8"));
const valid = new Ajv2020({ strict: false }).compile(schema);

const press = (page, name) => page.getByRole("button", { name, exact: true }).click();
const preview = (page) => page.locator("#file-preview");
const notice = (page) => page.locator("#notice").textContent();

async function toFiles(page) {
  await press(page, "Share");
  await press(page, "File");
}

const give = (page, text, name = "kits.json") =>
  page.locator("#file-open").setInputFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });

/** Opens a file and waits until it is looked into or refused; answers what is said. */
async function look(page, text, name) {
  await page.evaluate(() => document.getElementById("file-preview").replaceChildren());
  await give(page, text, name);
  await page.locator("#file-preview > *").first().waitFor();
  return preview(page).textContent();
}

async function saved(page, name) {
  const [download] = await Promise.all([page.waitForEvent("download"), press(page, name)]);
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), "utf8") };
}

test("every golden file of every version fits the schema, and the schema refuses others", async () => {
  for (const name of (await readdir(at("tests/reference/"))).filter((name) => /^kit_file_v1.*json$/.test(name))) {
    assert.ok(
      valid(JSON.parse(await readFile(at(`tests/reference/${name}`), "utf8"))),
      `${name}: ${JSON.stringify(valid.errors)}`,
    );
  }
  const good = JSON.parse(golden);
  for (const wrong of [
    {},
    { ...good, washpath: 2 },
    { ...good, more: 1 },
    { washpath: 1, kits: [{ pans: [["pb29", "pb15-3", "pr254"]] }] },
    { washpath: 1, paints: [{ name: "x" }] },
    { washpath: 1, records: [{ parts: [], load: 1, seen: [1, 2] }] },
  ]) {
    assert.ok(!valid(wrong), JSON.stringify(wrong).slice(0, 80));
  }
});

visit(
  "a golden file comes in beside what is here, goes out the same, and comes in no second time",
  {},
  async ({ page }) => {
    const mine = await kit(page);
    await toFiles(page);
    const said = await look(page, golden);
    for (const words of ["Quay [wet]  day", "Métal 水", "untitled", "Quay red, Harbour grey", "Records: 2"])
      assert.ok(said.includes(words), `${words}: ${said}`);
    assert.ok(!said.includes("Left out"), said);
    assert.ok(await page.locator("#undo").isDisabled(), "a look changes nothing");
    await press(page, "Add to what is here");
    assert.match(await notice(page), /3 kits, 2 own paints, 2 records/);
    assert.deepEqual(await kit(page), mine, "the kit in hand stays");
    assert.deepEqual(await page.getByLabel("Kit in hand").locator("option").allTextContents(), [
      mine.title,
      "Quay [wet]  day",
      "Métal 水",
      "untitled",
    ]);

    await toFiles(page);
    const all = await saved(page, "Save everything");
    assert.match(all.name, /^washpath-\d{4}-\d\d-\d\d\.json$/);
    const [out, sent] = [all.text, golden].map((text) => JSON.parse(text));
    assert.ok(valid(out), JSON.stringify(valid.errors));
    const [quay, metal] = out.kits.slice(1);
    const [wanted] = sent.kits;
    assert.deepEqual({ ...quay, puddles: null, places: null }, { ...wanted, puddles: null, places: null });
    assert.deepEqual(quay.puddles, [
      {
        parts: [
          ["pb29", 2],
          ["own:Quay red", 1],
        ],
        load: 0.25,
      },
    ]);
    assert.deepEqual(
      quay.places[0].colours.map(({ lab }) => lab),
      wanted.places[0].colours.map(({ lab }) => lab),
    );
    assert.deepEqual(metal.paper, [88, 1.5, 14]);
    assert.deepEqual(
      out.paints.map(({ name, masstone, mixture }) => [name, masstone ?? mixture]),
      sent.paints.map(({ name, masstone, mixture }) => [name, masstone ?? mixture]),
    );
    assert.deepEqual(
      out.records.map(({ seen, note }) => [seen, note]),
      sent.records.map(({ seen, note }) => [seen, note]),
    );
    assert.deepEqual(
      [out.held, out.owned],
      [
        ["pb29", "own:Quay red"],
        ["py184", "pb29", "own:Harbour grey"],
      ],
    );

    const again = await look(page, all.text);
    assert.match(again, /Nothing that is not here already/);
    assert.equal(await preview(page).getByRole("button", { name: "Add to what is here" }).count(), 0);
    await page.keyboard.press("Escape");
    await page.locator("#undo").click();
    for (const kind of ["own", "record", "held", "owned"])
      assert.deepEqual(await kept(page, kind), {}, "one Undo takes all of it back");
    assert.deepEqual(await kept(page, "kit"), {}, "the demo nobody has touched is not kept");
  },
);

visit("a backup restores everything on another device", {}, async ({ page, visitor, address }) => {
  await toFiles(page);
  await look(page, golden);
  await press(page, "Add to what is here");
  await toFiles(page);
  const { text } = await saved(page, "Save everything");
  const other = await visitor.browser().newContext();
  try {
    const theirs = await other.newPage();
    await theirs.goto(address);
    await theirs.waitForSelector("html[data-whole=true]", { state: "attached" });
    await toFiles(theirs);
    await look(theirs, text);
    await press(theirs, "Add to what is here");
    await toFiles(theirs);
    assert.equal((await saved(theirs, "Save everything")).text, text);
  } finally {
    await other.close();
  }
});

visit("names that are taken are given another; the kit alone takes only its own paints along", {}, async ({ page }) => {
  await toFiles(page);
  await look(page, golden);
  await press(page, "Add to what is here");
  await toFiles(page);
  const other = JSON.stringify({
    washpath: 1,
    kits: [{ title: "Quay [wet]  day", pans: [["own:quay red"]] }],
    paints: [{ name: "Quay red", masstone: [30, 40, 20] }],
  });
  const said = await look(page, other);
  assert.match(said, /Quay \[wet\] {2}day 2/);
  assert.match(said, /Quay red 2/);
  await press(page, "Add to what is here");
  await page.getByLabel("Kit in hand").selectOption({ label: "Quay [wet]  day 2" });
  await toFiles(page);
  const { name, text } = await saved(page, "Save this kit");
  assert.equal(name, "quay-wet-day-2-kit.json");
  const alone = JSON.parse(text);
  assert.ok(valid(alone), JSON.stringify(valid.errors));
  assert.deepEqual(
    alone.kits.map(({ pans }) => pans),
    [[["own:Quay red 2"]]],
  );
  assert.deepEqual(
    alone.paints.map(({ name }) => name),
    ["Quay red 2"],
  );
  assert.equal(alone.records, undefined);
});

const refused = {
  "no JSON": ["what is this", /not JSON, or was cut short/],
  nothing: ["", /not JSON/],
  "cut short": [golden.slice(0, 900), /not JSON, or was cut short/],
  "another JSON": ["[1, 2]", /not a kit file/],
  "a text as version": ['{"washpath": "1"}', /not a kit file/],
  "a later version": ['{"washpath": 2, "kits": []}', /version 2.*open it with a newer page/],
  "larger than any": [`{"washpath": 1, "x": "${"x".repeat(10_500_000)}"}`, /10\.5 MB.*more than 4/],
};
visit("what is no kit file changes nothing and says why", {}, async ({ page }) => {
  const mine = await kit(page);
  await toFiles(page);
  for (const [how, [text, why]] of Object.entries(refused)) {
    const said = await look(page, text);
    assert.match(said, why, how);
    assert.match(said, /Nothing was changed/, how);
    assert.equal(await preview(page).getByRole("button", { name: "Add to what is here" }).count(), 0, how);
  }
  await page.keyboard.press("Escape");
  assert.deepEqual(await kit(page), mine);
  assert.ok(await page.locator("#undo").isDisabled());
});

const deep = `${"[".repeat(50_000)}${"]".repeat(50_000)}`;
/** Parts of a file that cannot be read, and what is said of each. */
const broken = [
  ['"kits": 7', /kits: is not a list/],
  ['"kits": [null, 7, []]', /kits 1: is not an object/],
  [`"kits": [{"title": ${deep}}]`, /title is not text/],
  [`"kits": [{"pans": [${deep}]}]`, /pans 1: there is no paint \(not text\)/],
  ['"kits": [{"title": "Ok", "pans": [["pb99"], ["pb29"]]}]', /kits 1 “Ok”, pans 1: there is no paint “pb99”/],
  ['"kits": [{"pans": [["__proto__"], ["constructor"], ["own:nobody"]]}]', /no paint “constructor”/],
  ['"kits": [{"pans": [["pb29"], ["pb29"]], "capacity": 1}]', /2 pans do not fit a tin of 1/],
  ['"kits": [{"capacity": 1e9}]', /1 to 48/],
  ['"kits": [{"capacity": "NaN"}]', /capacity is not a (whole )?number/],
  ['"kits": [{"paper": "velvet"}]', /no paper “velvet”/],
  ['"kits": [{"paper": [null, 0, 0]}]', /paper/],
  [
    '"kits": [{"puddles": [{"parts": [["pb29", 0]], "load": 1}, {"parts": [["pb29", 1]], "load": "Infinity"}]}]',
    /puddles 2: .*load is not a number/,
  ],
  ['"kits": [{"places": [{"name": "x", "colours": [{"lab": [1e400, 0, 0], "weight": 1}]}]}]', /places 1 “x”: /],
  ['"kits": [{"class": {"note": "", "tasks": ["", "x"]}}]', /class: a task without words/],
  [
    '"paints": [{"name": "Twice", "masstone": [40, 0, 0]}, {"name": "TWICE", "masstone": [41, 0, 0]}]',
    /paints 2 “TWICE”: a paint of this name stands before it/,
  ],
  ['"paints": [{"name": "x", "masstone": [null, 0, 0]}]', /paints 1 “x”: .*is not a number/],
  ['"paints": [{"name": "x", "masstone": ["NaN", 0, 0]}]', /is not a number/],
  ['"paints": [{"name": "x"}]', /a swatch is a colour or 36 reflectances/],
  ['"paints": [{"name": "x", "mixture": [["own:x", 1]]}]', /no paint “own:x”/],
  ['"records": [{"parts": [["pb29", 1]], "load": null, "seen": [40, 0, 0]}]', /records 1: load is not a number/],
  ['"records": [{"parts": [["pb29", 1]], "load": 1, "seen": [40, 0, 0], "date": "2026-02-30"}]', /a day is written/],
  ['"held": [1, "pb29"]', /held 1: there is no paint \(not text\)/],
  ['"__proto__": {"polluted": true}', /“__proto__”: is not known/],
  [`"kits": [${Array(205).fill('{"title": "Same"}').join()}]`, /5 beyond 200 are left out/],
];
visit("what cannot be read in a file is named; the rest stays", {}, async ({ page }) => {
  await toFiles(page);
  for (const [part, why] of broken) {
    // What is sound beside it still comes in.
    const said = await look(page, `{"washpath": 1, ${part}${part.startsWith('"owned"') ? "" : ', "owned": ["py42"]'}}`);
    assert.match(said, why, part.slice(0, 100));
    assert.match(said, /1 paint you own/, part.slice(0, 100));
  }
  assert.equal(await page.evaluate(() => ({}).polluted), undefined);
  assert.ok(await page.locator("#undo").isDisabled());
});

/** Spoils the swatches of a paint called Fog on their way to the worker: of some 22,000 random swatches none was without a film. */
const spoilFog = () => {
  const { postMessage } = Worker.prototype;
  Worker.prototype.postMessage = function (message) {
    for (const paint of message.verb === "films" ? message.question.paints : [])
      if (paint.name === "Fog") paint.masstone = [40, 999, 0];
    postMessage.call(this, message);
  };
};
visit(
  "a paint that no film shows is left out by name, with what is made of it; the rest comes in",
  { script: spoilFog },
  async ({ page }) => {
    const unseen = await readFile(at("tests/reference/kit_file_v1_unseen.json"), "utf8");
    await toFiles(page);
    await look(page, unseen);
    assert.deepEqual(await preview(page).locator(".fault li").allTextContents(), [
      "paints 1 “Fog”: no film shows its swatches (L* 40 a* 999 b* 0 cannot be the colour of a swatch)",
      "records 1: “own:Fog” is left out",
      "kits 1 “Fog bank”, pans 2: “own:Fog” is left out",
      "kits 1 “Fog bank”, pans 3: “own:fog” is left out",
      "kits 1 “Fog bank”, puddles 1: “own:Fog” is left out",
      "kits 2 “Only fog”, pans 1: “own:Fog” is left out",
      "held 1: “own:Fog” is left out",
      "owned 1: “own:Fog” is left out",
    ]);
    await press(page, "Add to what is here");
    await toFiles(page);
    const out = JSON.parse((await saved(page, "Save everything")).text);
    assert.ok(valid(out), JSON.stringify(valid.errors));
    const [bank, only] = out.kits.slice(1);
    assert.deepEqual(bank.pans, [["pb29"], ["own:Slate"]]);
    assert.deepEqual(bank.puddles, [
      {
        parts: [
          ["own:Slate", 1],
          ["pb29", 1],
        ],
        load: 0.25,
      },
    ]);
    assert.deepEqual([bank.places.length, only.pans], [1, []]);
    assert.deepEqual(
      [out.paints.map(({ name }) => name), out.records.map(({ note }) => note), out.held, out.owned],
      [["Slate"], ["slate alone"], ["own:Slate"], ["pb29"]],
    );
  },
);

visit("a file of nothing but texts stays text", {}, async ({ page }) => {
  const script = "<img src=x onerror=alert(1)><script>";
  await toFiles(page);
  const said = await look(
    page,
    JSON.stringify({
      washpath: 1,
      kits: [{ title: script, pans: [["pb29"], [script]], class: { note: script, tasks: [script] } }],
      paints: [{ name: script, masstone: [40, 0, 0] }],
    }),
    `${script}.json`,
  );
  assert.ok(said.includes(script));
  await press(page, "Add to what is here");
  await page.getByLabel("Kit in hand").selectOption({ label: script });
  assert.equal(await page.locator("img:not(#share-code), main script").count(), 0);
  assert.match(await page.locator("#brief").textContent(), /<img src=x/);
});

visit("more than is kept is counted and left out", {}, async ({ page }) => {
  await toFiles(page);
  const kits = (from) => Array.from({ length: 15 }, (_, i) => ({ title: `Kit ${from + i}`, pans: [["pb29"]] }));
  await look(page, JSON.stringify({ washpath: 1, kits: kits(1) }));
  await press(page, "Add to what is here");
  await toFiles(page);
  const said = await look(page, JSON.stringify({ washpath: 1, kits: kits(20) }));
  assert.match(said, /10 kits: no room is left for more/);
  await press(page, "Add to what is here");
  assert.equal(
    await page.getByLabel("Kit in hand").locator("option").count(),
    21,
    "20 kits, and the demo, which takes no room",
  );
});

visit("tables guard against formulas and say what they promise", {}, async ({ page }) => {
  await toFiles(page);
  await look(
    page,
    JSON.stringify({
      washpath: 1,
      kits: [
        {
          title: '=1+1 */ "tin"',
          pans: [["own:=cmd"], ["pb29"], ["pbr7-burnt-sienna"]],
          puddles: [
            {
              parts: [
                ["pb29", 2],
                ["pbr7-burnt-sienna", 1],
              ],
              load: 0.5,
            },
          ],
        },
      ],
      paints: [{ name: "=cmd", caution: "@dust, fine", masstone: [40, 10, 0] }],
    }),
  );
  await press(page, "Add to what is here");
  await page.getByLabel("Kit in hand").selectOption({ index: 1 });
  await press(page, "Share");
  await press(page, "Pictures, tables");
  const rows = ({ text }) =>
    text
      .replace(/^\ufeff/, "")
      .trimEnd()
      .split("\r\n");
  const mixes = await saved(page, "Mixes of all pairs");
  assert.equal(mixes.name, "1-1-tin-mixes.csv");
  assert.equal(rows(mixes).length, 1 + 3 * 15 * 5, "three pairs, fifteen ratios, five washes");
  assert.ok(rows(mixes)[1].startsWith("'=cmd,,Ultramarine blue,PB29,8,1,1,"), rows(mixes)[1]);
  for (const row of rows(mixes).slice(1)) {
    const [parts, [L, a, b, chroma, hue], hex, off] = [
      row.split(",").slice(4, 6),
      row.split(",").slice(7, 12).map(Number),
      row.split(",")[12],
      Number(row.split(",")[13]),
    ];
    assert.ok(parts.every((part) => part > 0) && L > 0 && L < 100 && off > 0 && off < 30, row);
    // C* and h by their definition, CIE 15, within the rounding of a* and b*.
    assert.ok(Math.abs(Math.hypot(a, b) - chroma) < 0.16, row);
    if (chroma > 5) assert.ok(Math.abs((((Math.atan2(b, a) * 180) / Math.PI + 540 - hue) % 360) - 180) < 1.6, row);
    assert.match(hex, /^#[0-9a-f]{6}$/);
  }
  const palette = await saved(page, "Palette");
  assert.deepEqual(
    rows(palette)
      .slice(1)
      .map((row) => row.split(",").slice(0, 4).join()),
    [
      "'=cmd,,masstone,1",
      "'=cmd,,wash,0.25",
      "Ultramarine blue,PB29,masstone,1",
      "Ultramarine blue,PB29,wash,0.25",
      "Burnt sienna,PBr7,masstone,1",
      "Burnt sienna,PBr7,wash,0.25",
      "2 Ultramarine blue + 1 Burnt sienna,,puddle,0.5",
    ],
  );
  const css = await saved(page, "Palette as CSS");
  assert.equal(css.name, "1-1-tin-colours.css");
  const properties = await page.evaluate((text) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(text);
    return [
      sheet.cssRules.length,
      [...sheet.cssRules[0].style].map((name) => [name, sheet.cssRules[0].style.getPropertyValue(name)]),
    ];
  }, css.text);
  assert.equal(properties[0], 1);
  assert.deepEqual(
    properties[1].map(([name]) => name),
    [
      "--own-cmd-masstone",
      "--own-cmd-wash",
      "--pb29-masstone",
      "--pb29-wash",
      "--pbr7-burnt-sienna-masstone",
      "--pbr7-burnt-sienna-wash",
      "--puddle-1",
    ],
  );
  assert.ok(properties[1].every(([, value]) => /^#[0-9a-f]{6}$/.test(value)));
  const shelf = await saved(page, "All paints");
  assert.equal(rows(shelf).length, 1 + 151 + 1);
  assert.match(rows(shelf).at(-1), /"'@dust, fine"$/);
});

visit("pictures are PNG files of the colours that are shown", {}, async ({ page }) => {
  await press(page, "Share");
  await press(page, "Pictures, tables");
  for (const [name, file] of [
    ["Wheel", "wheel"],
    ["Path and mix", "path"],
    ["Sheet", "sheet"],
  ]) {
    const [download] = await Promise.all([page.waitForEvent("download"), press(page, name)]);
    assert.equal(download.suggestedFilename(), `north-sea-harbour-october-${file}.png`);
    const image = PNG.sync.read(await readFile(await download.path()));
    assert.equal(image.width, 1520);
    const colours = new Set();
    for (let i = 0; i < image.data.length; i += 4) colours.add(image.data.readUInt32BE(i));
    assert.ok(colours.size > 50, `${name}: ${colours.size} colours`);
    if (file !== "sheet") continue;
    const shown = await page
      .locator("#sheet .cell")
      .evaluateAll((cells) => cells.map((cell) => getComputedStyle(cell).backgroundColor.match(/\d+/g).map(Number)));
    for (const [r, g, b] of shown)
      assert.ok(colours.has(((r << 24) | (g << 16) | (b << 8) | 255) >>> 0), `${[r, g, b]} is in the picture`);
  }
});

for (const size of ["desktop", "phone"]) {
  visit(`sharing by file and as pictures is in reach and free of faults, ${size}`, { size }, async ({ page }) => {
    const { width } = page.viewportSize();
    await toFiles(page);
    await look(page, `${golden.trimEnd().slice(0, -1)}, "extra": 1}`);
    await assertAccessible(page);
    assert.ok((await overflow(page, width)) <= 0);
    // The file's own field is unseen: its label is what one hits.
    assert.deepEqual(
      (await controls(page)).filter(({ covered, kind }) => covered && kind !== "file"),
      [],
    );
    await press(page, "Pictures, tables");
    await assertAccessible(page);
    const least = size === "phone" ? 44 : 24;
    assert.deepEqual(
      (await controls(page)).filter(({ height, covered }) => covered || height < least),
      [],
    );
  });
}
