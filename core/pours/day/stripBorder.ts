/** The border that is printed with a strip: its length, how much of it is curved, and its miters. */
import type { Slab } from '../../../shared/document/slab'
import { cornerAngles } from '../../geometry/cornerAngles'
import type { CurveRing } from '../../geometry/curve'
import { edgeLength } from '../../geometry/edgeLength'
import { edgeOwners } from '../../geometry/edgeOwners'
import type { ResolvedSlab } from '../../geometry/resolvedSlab'
import type { Strip } from './strips'

export interface BorderedEdges {
  readonly edges: ReadonlySet<string>
  readonly widthM: number
}

export interface StripBorder {
  readonly lengthM: number
  /** Of the length: along arcs. */
  readonly arcM: number
  /** Corners at which a border meets itself. */
  readonly miters: number
  readonly areaM2: number
}

/** Resolved edges along which a border is printed with the field. */
export function borderedEdges(slab: ResolvedSlab, source: Slab): BorderedEdges[] {
  return slab.borders.flatMap(border => {
    const path = [source.outline, ...source.openings.map(opening => opening.path)].find(p => p.id === border.pathId)
    const drawn = source.borders.find(({ id }) => id === border.id)
    if (!path || !drawn || border.placed !== 'withField') return []
    const edges = new Set<string>()
    for (const [edgeId, owners] of edgeOwners(path))
      if (drawn.edges === 'all' || owners.some(owner => drawn.edges !== 'all' && drawn.edges.includes(owner)))
        edges.add(edgeId)
    return [{ edges, widthM: border.widthM }]
  })
}

/** A smaller turn is printed through. */
const miterTurnRad = (15 * Math.PI) / 180

function ringBorder(ring: CurveRing, { edges, widthM }: BorderedEdges): StripBorder {
  let [lengthM, arcM, miters] = [0, 0, 0]
  const corners = cornerAngles(ring)
  ring.forEach((edge, i) => {
    if (!edges.has(edge.edgeId)) return
    const own = edgeLength(edge)
    lengthM += own
    if (edge.arc) arcM += own
    const before = ring[(i + ring.length - 1) % ring.length]!
    if (edges.has(before.edgeId) && Math.abs(Math.PI - corners[i]!.angleRad) > miterTurnRad) miters++
  })
  return { lengthM, arcM, miters, areaM2: lengthM * widthM }
}

/** All borders of a strip together. */
export function stripBorder(shape: Strip, bordered: readonly BorderedEdges[]): StripBorder {
  const rings = shape.regions.flatMap(region => [region.outer, ...region.holes])
  const parts = bordered.flatMap(border => rings.map(ring => ringBorder(ring, border)))
  const sum = (of: keyof StripBorder): number => parts.reduce((total, part) => total + part[of], 0)
  return { lengthM: sum('lengthM'), arcM: sum('arcM'), miters: sum('miters'), areaM2: sum('areaM2') }
}
