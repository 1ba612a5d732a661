import type { Pt } from '../../shared/document/primitives'
import type { CurveRing } from './curve'
import { tangentAt } from './edgeAt'

export interface CornerAngle {
  readonly at: Pt
  /** Between the two tangents, on the left of travel, radians in (0, 2π); π where the edges run on smoothly. */
  readonly angleRad: number
}

/**
 * The angle inside the material (left of travel) at the start of each edge of a ring, from the tangents of the edges
 * that meet there: true corners, whatever chords a picture has. For a hole (clockwise) this is the angle in the slab.
 */
export function cornerAngles(ring: CurveRing): CornerAngle[] {
  return ring.map((edge, i) => {
    const [ux, uy] = tangentAt(ring[(i + ring.length - 1) % ring.length]!, 1)
    const [vx, vy] = tangentAt(edge, 0)
    return { at: edge.from, angleRad: Math.PI - Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) }
  })
}
