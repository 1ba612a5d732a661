/** How far the concrete is at an hour: bands from pale to dark, so that they read without color. */
export const setBands = [
  { name: 'not placed', ink: null },
  { name: 'over 60 min', ink: 7 },
  { name: '30 to 60', ink: 6 },
  { name: 'under 30', ink: 5 },
  { name: 'ready', ink: 3 },
  { name: 'too hard', ink: 1 },
] as const

const minuteMs = 60_000

/** Index into `setBands`. */
export function setBandOf(atMs: number, placedMs: number, readyMs: number, tooHardMs: number): number {
  if (Number.isNaN(placedMs) || atMs < placedMs) return 0
  if (atMs >= tooHardMs) return 5
  if (atMs >= readyMs) return 4
  const left = (readyMs - atMs) / minuteMs
  return left > 60 ? 1 : left > 30 ? 2 : 3
}
