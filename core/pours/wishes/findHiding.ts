/** Lines of a slab along which a joint is out of sight. */
import type { Band } from '../../../shared/document/slab'
import { distanceToEdge } from '../../geometry/contains'
import type { CurveEdge } from '../../geometry/curve'
import type { ResolvedSlab } from '../../geometry/resolvedSlab'
import { resolvePath } from '../../geometry/resolvePath'
import type { HidingStrip } from './jointWishes'

/** A border's edge this close to the slab's is not inside it (m). */
const onEdgeM = 1e-3

const middle = ({ from, to }: CurveEdge) => [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const

/** The straight inner edges of the borders, and the bands along their straight lines. */
export function findHiding(slab: ResolvedSlab, bands: readonly Band[]): HidingStrip[] {
  const slabEdges = slab.net.flatMap(({ outer, holes }) => [outer, ...holes].flat())
  const isInside = (edge: CurveEdge): boolean => !slabEdges.some(other => distanceToEdge(other, middle(edge)) < onEdgeM)
  const inner = slab.borders
    .flatMap(({ shape }) => shape.flatMap(({ outer, holes }) => [outer, ...holes].flat()))
    .filter(edge => !edge.arc && isInside(edge))
  const lines = bands.flatMap(({ id, line, widthM }) =>
    resolvePath(line, id, line.edges.length === line.vertices.length)
      .ring.filter(({ arc }) => !arc)
      .map(({ from, to }) => ({ from, to, widthM })),
  )
  return [...inner.map(({ from, to }) => ({ from, to, widthM: 0 })), ...lines]
}
