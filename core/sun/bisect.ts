/** A crossing is found to the second. */
export const exactMs = 1000

/** The instant between `offMs` (where `isOn` is false) and `onMs` (where it is true, before or after) at which it turns:
 * within a second, on the true side. */
export const bisect = (offMs: number, onMs: number, isOn: (ms: number) => boolean): number => {
  let off = offMs
  let on = onMs
  while (Math.abs(on - off) > exactMs) {
    const middle = (off + on) / 2
    if (isOn(middle)) on = middle
    else off = middle
  }
  return on
}
