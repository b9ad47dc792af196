// Making a part of the page anew without taking anything out of a painter's hands.

/**
 * The field with text that is not yet taken.
 *
 * @type {any}
 */
let typed = null;
/**
 * What a mouse or finger holds down.
 *
 * @type {any}
 */
let pressed = null;

/** What waits for either, and of what each is made anew. */
const waiting = new Map();

/**
 * @param {string[]} names
 * @param {(event: Event) => void} hear
 */
const listen = (names, hear) => names.forEach((name) => addEventListener(name, hear, true));
listen(["input"], ({ target }) => {
  if (target === document.activeElement) typed = target;
});
listen(["change", "focusout"], ({ target }) => {
  if (target === typed) typed = null;
});
listen(["mousedown"], ({ target }) => (pressed = target));
// Before the click's own listeners: from here on nothing hangs on what was pressed.
listen(["click"], () => (pressed = null));
listen(["mouseup", "dragend"], () =>
  setTimeout(() => {
    pressed = null;
    makeWaiting();
  }),
);
listen(["focusout"], () => setTimeout(makeWaiting));

/**
 * Makes a part of the page anew of these parts; focus stays on what bears the same `data-focus`.
 *
 * It waits while somebody types in that part, or presses in it: a field that is left takes its text before the click
 * that left it, and made anew in between, the button would be gone.
 *
 * @param {HTMLElement} frame
 * @param {...(Node | string)} parts
 */
export function remake(frame, ...parts) {
  if (frame.contains(typed) || frame.contains(pressed)) return waiting.set(frame, parts);
  waiting.delete(frame);
  const active = frame.contains(document.activeElement) ? document.activeElement : null;
  const focused = active?.closest("[data-focus]")?.getAttribute("data-focus");
  frame.replaceChildren(...parts);
  const again = focused && frame.querySelector(`[data-focus="${CSS.escape(focused)}"]`);
  if (again instanceof HTMLElement) again.focus();
}

function makeWaiting() {
  for (const [frame, parts] of waiting) remake(frame, ...parts);
}
