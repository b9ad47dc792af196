// Work that waits until the hand rests.

/** A verb that does `act` once, so many milliseconds after it was last asked for. */
export function afterRest(act, milliseconds) {
  let timer;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(act, milliseconds);
  };
}
