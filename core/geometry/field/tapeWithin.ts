/** Measures that differ by less agree: 1/16 in, half of what a tape is read to. Own choice. */
export const tapeWithinM = 0.0254 / 16
