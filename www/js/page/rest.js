// Work that waits until the hand rests.

/**
 * A verb that does `act` once, so many milliseconds after it was last asked for.
 *
 * @param {() => unknown} act
 * @param {number} milliseconds
 */
export function afterRest(act, milliseconds) {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(act, milliseconds);
  };
}

/** Milliseconds after which a part that nobody has seen yet is filled all the same: a screen reader reads what is not scrolled to. */
const UNSEEN = 1200;

/**
 * A verb that does `act` as soon as a part of the page is seen, or after a while; what was asked meanwhile is done once.
 *
 * @param {Element} part
 * @param {() => unknown} act
 */
export function onceSeen(part, act) {
  let isSeen = false;
  let isDue = false;
  const done = () => {
    if (!isDue) return;
    isDue = false;
    act();
  };
  const look = () => isSeen && done();
  const later = afterRest(done, UNSEEN);
  new IntersectionObserver((entries) => {
    isSeen = entries.at(-1)?.isIntersecting ?? isSeen;
    look();
  }).observe(part);
  return () => {
    isDue = true;
    look();
    later();
  };
}

/** Ends a task: what the painter did meanwhile comes in between. */
export const breath = () => new Promise((resolve) => setTimeout(resolve, 0));

/**
 * Does some work piece by piece, each in a task of its own.
 *
 * @param {(() => unknown)[]} pieces
 */
export async function inTurn(pieces) {
  for (const piece of pieces) {
    piece();
    await breath();
  }
}
