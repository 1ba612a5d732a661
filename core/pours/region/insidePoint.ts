import type { Pt } from '../../../shared/document/primitives'
import { findChords } from './chords'
import type { CutRegion } from './cutRegion'
import { minimumBox } from './minimumBox'

const rows = 9

/** A point well inside: the middle of the widest crossing of a few lines along the least rectangle. */
export function insidePoint(region: CutRegion): Pt {
  const { ux, uy } = minimumBox(region.rings[0]!)
  let best: Pt = [region.rings[0]!.sides[0]!.x, region.rings[0]!.sides[0]!.y]
  let most = -1
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const s of region.rings[0]!.sides) {
    const d = -uy * s.x + ux * s.y
    if (d < low) low = d
    if (d > high) high = d
  }
  for (let i = 1; i < rows; i++) {
    const offset = low + ((high - low) * i) / rows
    const edge = Math.min(offset - low, high - offset)
    for (const chord of findChords(region, ux, uy, offset, true, { done: 0 })) {
      const clear = Math.min(chord.lengthM / 2, edge)
      if (clear <= most) continue
      most = clear
      best = [(chord.a.x + chord.b.x) / 2, (chord.a.y + chord.b.y) / 2]
    }
  }
  return best
}
