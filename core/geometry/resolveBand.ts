import type { Pt } from '../../shared/document/primitives'
import type { Band } from '../../shared/document/slab'
import type { Finding } from '../../shared/problem'
import { edgeMeets, pointBounds } from './bounds'
import { distanceToEdge, regionContains } from './contains'
import type { CurveRegion, CurveRing } from './curve'
import { clipCurveRings } from './curveBoolean'
import { pointAt } from './edgeAt'
import { edgeLength } from './edgeLength'
import { type EndCuts, edgeStrips } from './edgeStrips'
import { lengthInside } from './lengthInside'
import { plainBand } from './plainBand'
import { resolvePath } from './resolvePath'
import { reverseRing } from './reverseRing'
import { ringLength } from './ringLength'

/** A band before the claims of insets and earlier bands are taken off it. */
export interface BandShape {
  readonly band: Band
  readonly regions: readonly CurveRegion[]
  readonly lengthM: number
  readonly chordsKept: boolean
}

/** An end of a band this near to an edge of the slab lies on it. */
const onEdgeM = 1e-3

/**
 * Half the width to either side of the band's line, corners mitered, clipped to the slab. An end on an edge of the slab
 * runs on to that edge, any other end is square.
 */
export function resolveBand(
  band: Band,
  outline: CurveRing,
  net: readonly CurveRegion[],
): { shape: BandShape; findings: readonly Finding[] } {
  const closed = band.line.edges.length === band.line.vertices.length
  const { ring: line, findings } = resolvePath(band.line, band.id, closed)
  const names = { inner: band.id, cut: `${band.id}|` }
  const boundary = net.flatMap(r => [r.outer, ...r.holes]).flat()
  const edgesAt = (p: Pt | undefined) => {
    if (!p || closed) return []
    const box = pointBounds([p])
    return boundary.filter(e => edgeMeets(e, box, onEdgeM) && distanceToEdge(e, p) <= onEdgeM)
  }
  const [start, end] = [edgesAt(line[0]?.from), edgesAt(line.at(-1)?.to)]
  const plain = plainBand(line, band.widthM, boundary, { start, end }, names)
  // Clear of every edge, it lies in the slab where the middle of its line does.
  if (plain && net.some(region => regionContains(region, pointAt(line[0]!, 0.5)))) {
    const shape = { band, regions: [{ outer: plain, holes: [] }], lengthM: edgeLength(line[0]!), chordsKept: false }
    return { shape, findings }
  }
  const half = (chain: CurveRing, ends: EndCuts) =>
    edgeStrips(
      chain.map(edge => ({ edge, depthM: band.widthM / 2 })),
      closed,
      names,
      ends,
    )
  const halves = [...half(line, { start, end }), ...half(reverseRing(line), { start: end, end: start })]
  const { regions, chordsKept } = clipCurveRings(halves, net)
  const outsideM = ringLength(line) - lengthInside(line, [{ outer: outline, holes: [] }])
  const out: Finding[] = [...findings]
  if (line.length > 0 && (outsideM > 1e-3 || regions.length === 0))
    out.push({
      code: 'bandOutside',
      severity: regions.length === 0 ? 'stop' : 'check',
      values: { outsideM },
      at: { entityId: band.id, point: line[0]!.from },
    })
  return { shape: { band, regions, lengthM: lengthInside(line, net), chordsKept }, findings: out }
}
