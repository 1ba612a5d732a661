/** The ring of a drawn path, turned the way it should run, with what is wrong about it. */
import type { Slab } from '../../shared/document/slab'
import { onceFrozen } from '../../shared/onceFrozen'
import type { Finding } from '../../shared/problem'
import type { CurveRing } from './curve'
import { findSelfCrossing } from './findSelfCrossing'
import { resolvePath } from './resolvePath'
import { reverseRing } from './reverseRing'
import { ringArea } from './ringArea'

export interface CheckedRing {
  readonly ring: CurveRing
  readonly findings: readonly Finding[]
  readonly bad: boolean
}

/** Kept with its path: what an edit leaves alone keeps its ring and chords. A path is of one entity and runs one way. */
export const checkedRing: (path: Slab['outline'], entityId: string, clockwise: boolean) => CheckedRing = onceFrozen(
  (path: Slab['outline'], entityId: string, clockwise: boolean) => ({
    ...checkRing(path, entityId, clockwise),
    entityId,
  }),
  (known, entityId) => known.entityId === entityId,
)

/** The path's ring turned the way it should run, with what was wrong about it; empty after a stop. */
function checkRing(path: Slab['outline'], entityId: string, clockwise: boolean): CheckedRing {
  const { ring, findings } = resolvePath(path, entityId)
  if (ring.length === 0) return { ring, findings: [...findings], bad: true }
  const crossing = findSelfCrossing(ring)
  if (crossing) {
    const found: Finding = { code: 'selfCrossing', severity: 'stop', values: {}, at: { entityId, point: crossing } }
    return { ring, findings: [...findings, found], bad: true }
  }
  if (ringArea(ring) > 0 !== clockwise) return { ring, findings: [...findings], bad: false }
  const turned: Finding = {
    code: 'wrongWinding',
    severity: 'check',
    values: {},
    at: { entityId, point: ring[0]!.from },
  }
  return { ring: reverseRing(ring), findings: [...findings, turned], bad: false }
}
