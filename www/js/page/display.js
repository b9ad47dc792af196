// The display that the page is shown on.

/** Whether it shows more colours than sRGB, those of Display P3. Asked anew each time: a window moves from display to display. */
export const isWide = () => matchMedia("(color-gamut: p3)").matches;
