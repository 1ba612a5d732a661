/** The outline of a walk, its errors spread, with its arcs, put where it was said to start. */
import type { Shape } from '../../../core/document/commands/drawShape'
import { type Traverse, traverse } from '../../../core/geometry/field/traverse'
import { flatRingArea } from '../../../core/geometry/flatArea'
import type { Pt } from '../../../shared/document/primitives'
import type { Finding, Result } from '../../../shared/problem'
import type { ReadWalk } from '../../editor/entry/readWalk'

export interface WalkedShape {
  readonly walk: Traverse
  /** The first corner at `start`. */
  shapeAt(start: Pt): Shape
}

export function walkShape({ legs, options, risesM }: ReadWalk): Result<WalkedShape, readonly Finding[]> {
  const walked = traverse([0, 0], legs, options)
  if (!walked.ok) return walked
  const walk = walked.value
  // Out of the slab is to the right of a walk that turns left.
  const out = flatRingArea(walk.corners) < 0 ? -1 : 1
  return {
    ok: true,
    value: {
      walk,
      shapeAt: ([x, y]) => ({
        kind: 'corners',
        corners: walk.corners.map((at, i) => ({ at: [at[0] + x, at[1] + y], riseM: risesM[i]! * out })),
      }),
    },
  }
}
