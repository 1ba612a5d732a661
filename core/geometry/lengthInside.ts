import { edgeBounds, edgeMeets } from './bounds'
import { regionContains } from './contains'
import type { CurveEdge, CurveRegion } from './curve'
import { pointAt } from './edgeAt'
import { EdgeGrid } from './edgeGrid'
import { edgeLength } from './edgeLength'
import { intersectEdges, runAlong } from './intersectEdges'

/** Of fewer edges than this, each looks through all of the boundary sooner than the boundary is sorted. */
const fewEdges = 8
/** Nearer than this to the boundary an edge may meet it. */
const nearM = 1e-6

/** The boundary edges that an edge may meet. */
function candidates(edges: readonly CurveEdge[], boundary: readonly CurveEdge[]) {
  if (edges.length < fewEdges)
    return (edge: CurveEdge) => {
      const box = edgeBounds(edge)
      return boundary.filter(each => edgeMeets(each, box, nearM))
    }
  const grid = new EdgeGrid(boundary)
  return (edge: CurveEdge) => grid.near(edgeBounds(edge), nearM).map(i => boundary[i]!)
}

/** Length of the edges' parts that lie inside any of the regions, meters; exact. A part along a boundary may count or not. */
export function lengthInside(edges: readonly CurveEdge[], regions: readonly CurveRegion[]): number {
  const near = candidates(
    edges,
    regions.flatMap(r => [r.outer, ...r.holes].flat()),
  )
  let sum = 0
  for (const edge of edges) {
    const length = edgeLength(edge)
    const cuts = [0, length]
    for (const other of near(edge))
      for (const p of intersectEdges(edge, other)) cuts.push(Math.max(0, Math.min(length, runAlong(edge, p))))
    cuts.sort((a, b) => a - b)
    for (let i = 1; i < cuts.length; i++) {
      const run = cuts[i]! - cuts[i - 1]!
      if (run < 1e-9) continue
      const middle = pointAt(edge, (cuts[i]! + cuts[i - 1]!) / 2 / length)
      if (regions.some(r => regionContains(r, middle))) sum += run
    }
  }
  return sum
}
