// Work that waits until the hand rests.

/** A verb that does `act` once, so many milliseconds after it was last asked for. */
export function afterRest(act, milliseconds) {
  let timer;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(act, milliseconds);
  };
}

/** A verb that does `act` as soon as a part of the page is seen; what was asked meanwhile is done once. */
export function onceSeen(part, act) {
  let isSeen = false;
  let isDue = false;
  const look = () => {
    if (!isSeen || !isDue) return;
    isDue = false;
    act();
  };
  new IntersectionObserver((entries) => {
    isSeen = entries.at(-1).isIntersecting;
    look();
  }).observe(part);
  return () => {
    isDue = true;
    look();
  };
}

/** Ends a task: what the painter did meanwhile comes in between. */
export const breath = () => new Promise((resolve) => setTimeout(resolve, 0));

/** Does some work piece by piece, each in a task of its own. */
export async function inTurn(pieces) {
  for (const piece of pieces) {
    piece();
    await breath();
  }
}
