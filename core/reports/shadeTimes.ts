import type { SheetData } from './sheetData'

/**
 * At most `count` shaded hours at an even step, over as much of the day as that reaches; the first and the last, when
 * shade covers everything, are left to the table.
 */
export function chooseShadeTimes(data: SheetData, count: number): string[] {
  const shaded = data.hours.filter(hour =>
    data.shadows.some(s => s.time === hour.time && s.polygons.length + s.dapple.length > 0),
  )
  const inner = shaded.length > count + 2 ? shaded.slice(1, -1) : shaded
  const last = inner.length - 1
  let best = { step: 1, taken: Math.min(count, inner.length), score: -1 }
  for (let step = 1; step <= last; step++) {
    const taken = Math.min(count, Math.floor(last / step) + 1)
    const score = (taken - 1) * step + 1.2 * taken
    if (score > best.score) best = { step, taken, score }
  }
  const start = Math.floor((last - (best.taken - 1) * best.step) / 2)
  return Array.from({ length: best.taken }, (_, i) => inner[start + i * best.step]!.time)
}
