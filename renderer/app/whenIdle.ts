/** Runs when the page has nothing more urgent to do; the answer takes it back. */
export const whenIdle = (act: () => void): (() => void) => {
  if (typeof requestIdleCallback === 'function') {
    const asked = requestIdleCallback(act)
    return () => cancelIdleCallback(asked)
  }
  const timer = setTimeout(act, 200)
  return () => clearTimeout(timer)
}
