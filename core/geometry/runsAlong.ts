import { pointBounds } from './bounds'
import { distanceToEdge } from './contains'
import type { CurveEdge } from './curve'
import { pointAt } from './edgeAt'
import { EdgeGrid } from './edgeGrid'

const apartM = 1e-6

/** Whether an edge runs along one of the given ones, told by its middle. The edges it is asked of end where these do. */
export function runsAlong(edges: readonly CurveEdge[]): (edge: CurveEdge) => boolean {
  const grid = new EdgeGrid(edges)
  return edge => {
    const middle = pointAt(edge, 0.5)
    return grid.near(pointBounds([middle]), apartM).some(i => distanceToEdge(edges[i]!, middle) < apartM)
  }
}
