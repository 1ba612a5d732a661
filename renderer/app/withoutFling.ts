const holdStill = (event: Event) => {
  if (event.cancelable) event.preventDefault()
}

/**
 * The ref of what a finger drags. A finger that is lifted while it moves sets off a fling, even where `touch-action` is
 * none and nothing scrolls; the browser takes the next tap, wherever it falls, for the one that stops it, and the button
 * under it gets no click. A drag whose moves are prevented sets off none, and a tap here is a click as ever.
 */
export function withoutFling(element: EventTarget | null): () => void {
  element?.addEventListener('touchmove', holdStill, { passive: false })
  return () => element?.removeEventListener('touchmove', holdStill)
}
