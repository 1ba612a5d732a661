/** What is done in a frame, and what waits until that frame has been handed over. */

let isDrawing = false

/** Calls in the next frame, before it is drawn; what it answers takes the call back by `cancelAnimationFrame`. */
export const inNextFrame = (act: () => void): number =>
  requestAnimationFrame(() => {
    isDrawing = true
    try {
      act()
    } finally {
      isDrawing = false
    }
  })

/** Calls once the frame that shows what is being done now has been handed over: this one where it is being drawn. */
export const afterFrame = (act: () => void): void => {
  if (isDrawing) setTimeout(act, 0)
  else requestAnimationFrame(() => setTimeout(act, 0))
}

/** Calls in the frame after the one that shows what is being done now, before it is drawn. */
export const inFrameAfter = (act: () => void): void => afterFrame(() => void inNextFrame(act))
