// Fingers: taps by playwright, drags as the browser's own touch events.

/** A finger down at the first spot, drawn through all, and up; `during` is called at each. */
export async function drag(page, spots, during = async () => {}) {
  const session = await page.context().newCDPSession(page);
  const send = (type, touchPoints) => session.send("Input.dispatchTouchEvent", { type, touchPoints });
  await send("touchStart", [spots[0]]);
  for (const spot of spots) {
    await send("touchMove", [spot]);
    await during();
  }
  await send("touchEnd", []);
  await session.detach();
}

/** A tap at a spot of the window. */
export const tap = (page, { x, y }) => page.touchscreen.tap(x, y);
