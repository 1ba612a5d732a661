/** What was tried at a place, and by how much it misses. */
export interface Tried<T> {
  readonly found: T
  readonly miss: number
}

/**
 * The first trial that misses by less than `tolerance`, between two places whose misses have opposite signs (regula
 * falsi, Illinois rule). Null where the signs are the same or not known (NaN), where a trial between them comes to
 * nothing, or after `mostSteps`.
 */
export function falsePosition<T>(
  from: { readonly at: number; readonly miss: number },
  to: { readonly at: number; readonly miss: number },
  tryAt: (at: number) => Tried<T> | null,
  tolerance: number,
  mostSteps: number,
): T | null {
  let { at: x0, miss: y0 } = from
  let { at: x1, miss: y1 } = to
  if (!(y0 * y1 < 0)) return null
  let keptFirst = false
  for (let step = 0; step < mostSteps; step++) {
    const x = (x0 * y1 - x1 * y0) / (y1 - y0)
    const tried = tryAt(x)
    if (tried === null) return null
    const { found, miss } = tried
    if (Math.abs(miss) < tolerance) return found
    if (miss * y1 < 0) {
      x0 = x1
      y0 = y1
      keptFirst = false
    } else {
      if (keptFirst) y0 /= 2
      keptFirst = true
    }
    x1 = x
    y1 = miss
  }
  return null
}
