/** The courses of a border: stones that stand square to the edge they run along. */
import type { Finish } from '../../../shared/document/materials'
import type { Pt } from '../../../shared/document/primitives'
import type { CurveEdge, CurveRing } from '../../geometry/curve'
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
    const stones = across.slice(1).map((next, i): Stone => {
      const before = across[i]!
      return { points: [before[0], next[0], next[1], before[1]], tone: toneOf(e * 1009 + i) }
    })
    const corner = cornerStone(across.at(-1)!, edge, ring[(e + 1) % ring.length]!, depthM)
    return corner === null ? stones : [...stones, { points: corner, tone: toneOf(e * 1009 + 1008) }]
  })
}

/** At a re-entrant corner one stone more fills the square between the two runs; null at any other. */
function cornerStone(
  [out, deep]: readonly [Pt, Pt],
  edge: CurveEdge,
  next: CurveEdge,
  depthM: number,
): readonly Pt[] | null {
  if (edge.arc || next.arc) return null
  const direction = ({ from, to }: CurveEdge): Pt => {
    const long = Math.hypot(to[0] - from[0], to[1] - from[1])
    return [(to[0] - from[0]) / long, (to[1] - from[1]) / long]
  }
  const [u, v] = [direction(edge), direction(next)]
  // Concrete lies on the left: a turn to the right leaves a square uncovered.
  if (u[0] * v[1] - u[1] * v[0] > -1e-6) return null
  const on = ([x, y]: Pt): Pt => [x + u[0] * (depthM + overM), y + u[1] * (depthM + overM)]
  return [out, on(out), on(deep), deep]
}
