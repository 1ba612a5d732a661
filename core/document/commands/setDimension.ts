import type { Path } from '../../../shared/document/path'
import type { Id, Pt } from '../../../shared/document/primitives'
import { editEdge } from './editEdge'
import type { Command } from './editSite'
import { isClosed } from './findPath'
import { edgeLengthOf } from './reversePath'

export interface DimensionChange {
  /** The end that moves; the start of an edge is where travel begins. */
  readonly moves: 'start' | 'end' | 'both'
  /** `corner`: the moving corner alone; `side`: the whole next edge moves along, so that a rectangle stays one. */
  readonly with: 'corner' | 'side'
  /** `chord` measures an arc straight across. */
  readonly along?: 'edge' | 'chord'
}

const shift = (path: Path, indices: readonly number[], [x, y]: Pt): void => {
  const n = path.vertices.length
  for (const index of new Set(indices.map(i => ((i % n) + n) % n))) {
    const vertex = path.vertices[index]!
    vertex.at = [vertex.at[0] + x, vertex.at[1] + y]
  }
}

/**
 * Makes an edge as long as typed: it keeps its direction, and an arc its shape (its rise grows with its chord).
 * Typed between corners: the radius of a rounded corner does not shorten it.
 */
export const setDimension = (edgeId: Id, lengthM: number, change: DimensionChange): Command =>
  editEdge(edgeId, ({ path, index, edge, from, to }, edit) => {
    edit.onlyMoved = true
    const [chordX, chordY] = [to.at[0] - from.at[0], to.at[1] - from.at[1]]
    const chordM = Math.hypot(chordX, chordY)
    const nowM = change.along === 'chord' ? chordM : edgeLengthOf(path, index)
    if (!(lengthM > 0 && Number.isFinite(lengthM)) || nowM === 0)
      return { code: 'badMeasure', severity: 'stop', values: { foundM: lengthM, what: 'length of an edge' } }
    const grow = lengthM / nowM - 1
    if (grow === 0) return undefined
    const [dx, dy] = [chordX * grow, chordY * grow]
    if (edge.riseM !== undefined) edge.riseM *= 1 + grow
    const share = change.moves === 'both' ? 0.5 : 1
    const last = path.vertices.length - 1
    const follow = change.with === 'side' && path.vertices.length > 3
    const hasAfter = isClosed(path) || index + 2 <= last
    const hasBefore = isClosed(path) || index > 0
    if (change.moves !== 'start')
      shift(path, follow && hasAfter ? [index + 1, index + 2] : [index + 1], [dx * share, dy * share])
    if (change.moves !== 'end')
      shift(path, follow && hasBefore ? [index, index - 1] : [index], [-dx * share, -dy * share])
    return undefined
  })
