// What a person reads off the page, and where they would point; by the page's own means, so in every browser.

/** Both ends as "name code", "" where none is chosen. */
export const ends = (page) =>
  page.evaluate(() =>
    [...document.querySelectorAll("#ends .end .name")].map((name) => {
      const [first, code] = name.childNodes;
      return first.textContent === "Choose a paint" ? "" : `${first.textContent.trim()} ${code.textContent}`;
    }),
  );

/** The mix at hand: `{words, parts, ratio, load, numbers, crossing}`. */
export const readout = (page) =>
  page.evaluate(() => {
    const frame = document.getElementById("readout");
    const text = (selector) => frame.querySelector(selector).textContent;
    const [ratio, load] = [...frame.querySelectorAll("output")].map((output) => output.textContent);
    const numbers = [...frame.querySelectorAll("dt")].map((name) => [
      name.textContent,
      name.nextElementSibling.textContent,
    ]);
    return {
      words: text(".words"),
      parts: text(".parts"),
      ratio,
      load,
      numbers: Object.fromEntries(numbers),
      crossing: text(".crossing span"),
    };
  });

/** Parts of A for each part of B as a share of B, from "2 : 1". */
export function shareOf(ratio) {
  const [a, b] = ratio.split(":").map(Number);
  return b / (a + b);
}

/** The pans as codes: "PB29", or "PBr7+PBr7" for a split one. */
export const pans = (page) =>
  page.evaluate(() =>
    [...document.querySelectorAll("#tin .pan:not(.gap)")].map((pan) =>
      [...pan.querySelectorAll(".paint")].map((paint) => paint.title.split(" ").at(-1)).join("+"),
    ),
  );

/** Everything of the kit that the tin shows. */
export const kit = async (page) => ({
  title: await page.getByLabel("Title of the kit").inputValue(),
  paper: await page.getByLabel("Paper").evaluate((list) => list.selectedOptions[0].text),
  capacity: Number(await page.getByLabel("Tin holds").inputValue()),
  pans: await pans(page),
});

const gathered = (page) =>
  page.evaluate(() => {
    const top = document.getElementById("wheel-path");
    const box = top.getBoundingClientRect();
    const found = {};
    for (let y = box.top; y < box.bottom; y += 6) {
      for (let x = box.left; x < box.right; x += 6) {
        top.dispatchEvent(
          new PointerEvent("pointermove", { clientX: x, clientY: y, pointerType: "mouse", bubbles: true }),
        );
        if (top.title) (found[top.title] ??= []).push([x, y]);
      }
    }
    return found;
  });

/** Where each dab stands in the window, by "name code": the middle of where the pointer is told of it. */
export async function dabs(page) {
  const middle = (values) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const found = await gathered(page);
  return Object.fromEntries(
    Object.entries(found).map(([name, spots]) => [
      name,
      { x: middle(spots.map(([x]) => x)), y: middle(spots.map(([, y]) => y)) },
    ]),
  );
}

/** Moves a slider by its name as an assistive technology would: value, then input. */
export const slide = (page, name, value) =>
  page.evaluate(
    ([name, value]) => {
      const input = document.querySelector(`input[type="range"][aria-label="${name}"]`);
      input.value = String(value);
      input.dispatchEvent(new Event("input", { bubbles: true }));
    },
    [name, value],
  );

/** After the next drawing. */
export const painted = (page) =>
  page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));

/** A number that changes with any pixel of a canvas. */
export const pixels = async (page, id) => {
  await painted(page);
  return page.evaluate((id) => {
    const canvas = document.getElementById(id);
    const { data } = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height);
    return data.reduce((sum, value, i) => (sum * 31 + value * ((i % 7) + 1)) % 1_000_003, 7);
  }, id);
};

/** Where the mark of the mix stands in the window when the ratio slider is at `value`: the middle of what a small step moves. */
export async function markAt(page, value) {
  await slide(page, "Ratio", value);
  await painted(page);
  await page.evaluate(() => {
    const canvas = document.getElementById("wheel-mark");
    globalThis.before = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height).data;
  });
  await slide(page, "Ratio", value + 2);
  await painted(page);
  return page.evaluate(() => {
    const canvas = document.getElementById("wheel-mark");
    const { width, height } = canvas;
    const after = canvas.getContext("2d").getImageData(0, 0, width, height).data;
    const xs = [];
    const ys = [];
    for (let i = 0; i < after.length; i += 4) {
      if ([0, 1, 2, 3].every((c) => Math.abs(after[i + c] - globalThis.before[i + c]) < 3)) continue;
      xs.push((i / 4) % width);
      ys.push(Math.floor(i / 4 / width));
    }
    const median = (values) => values.sort((a, b) => a - b)[Math.floor(values.length / 2)];
    const box = canvas.getBoundingClientRect();
    const scale = box.width / width;
    return { x: box.left + median(xs) * scale, y: box.top + median(ys) * scale };
  });
}

/** The link in the dialog for sharing, once that is open. */
export async function sharedLink(page) {
  const field = page.locator("#share-link");
  await field.waitFor();
  return field.inputValue();
}

/** Types where the page is hosted into the open dialog. */
export async function hostAt(page, address) {
  const field = page.locator("dialog[open]").getByLabel("Address where the page is hosted");
  await field.fill(address);
  await field.press("Enter");
}
