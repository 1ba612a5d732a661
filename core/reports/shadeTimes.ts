import type { SheetData } from './sheetData'

/** Hours spread evenly over the day between two hours after the first sun and two before the last. */
export function chooseShadeTimes(data: SheetData, count: number): string[] {
  const shaded = data.hours.filter(hour =>
    data.shadows.some(s => s.time === hour.time && s.polygons.length + s.dapple.length > 0),
  )
  const inner = shaded.length > count + 3 ? shaded.slice(2, -2) : shaded
  if (inner.length <= count) return inner.map(hour => hour.time)
  const picked = Array.from(
    { length: count },
    (_, i) => inner[Math.round((i * (inner.length - 1)) / (count - 1))]!.time,
  )
  return [...new Set(picked)]
}
