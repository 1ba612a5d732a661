/** The courses of a border: stones that stand square to the edge they run along. */
import type { Finish } from '../../../shared/document/materials'
import type { Pt } from '../../../shared/document/primitives'
import type { CurveRing } from '../../geometry/curve'
import { pointAt } from '../../geometry/edgeAt'
import { edgeLength } from '../../geometry/edgeLength'
import { type Stone, toneOf } from './finishPattern'
import { inwardAt } from './inwardAt'

/** Patterns that a border shows as courses across it; the others run on as they do in a field. */
const coursed: ReadonlySet<Finish['pattern']> = new Set(['plank', 'runningBond', 'ashlar'])

export const isCoursed = (pattern: Finish['pattern']): boolean => coursed.has(pattern)

/** A course is about this wide, 6 in or 1 ft, a whole number of them along each edge. */
const courseM: Readonly<Partial<Record<Finish['pattern'], number>>> = {
  plank: 0.1524,
  runningBond: 0.2042,
  ashlar: 0.3048,
}

/** Stones reach over the edges by this, so that a clip to the border leaves no gap. */
const overM = 0.01

/**
 * Stones from the edge to `depthM` inwards along `ring`, in plan meters: to be clipped to the border. At a corner the
 * later edge's courses lie over the earlier one's.
 */
export function borderStones(ring: CurveRing, depthM: number, pattern: Finish['pattern']): Stone[] {
  const wishM = courseM[pattern] ?? 0.3048
  return ring.flatMap((edge, e) => {
    const count = Math.max(1, Math.round(edgeLength(edge) / wishM))
    const across = Array.from({ length: count + 1 }, (_, i): readonly [Pt, Pt] => {
      const [x, y] = pointAt(edge, i / count)
      const [nx, ny] = inwardAt(edge, x, y)
      return [
        [x - nx * overM, y - ny * overM],
        [x + nx * (depthM + overM), y + ny * (depthM + overM)],
      ]
    })
    return across.slice(1).map((next, i): Stone => {
      const before = across[i]!
      return { points: [before[0], next[0], next[1], before[1]], tone: toneOf(e * 1009 + i) }
    })
  })
}
