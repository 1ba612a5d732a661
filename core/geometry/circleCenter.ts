import type { Pt } from '../../shared/document/primitives'
import type { CurveRing } from './curve'

/** The center of a ring whose arcs all turn about one point; undefined of any other. */
export const circleCenter = (ring: CurveRing): Pt | undefined => {
  const center = ring[0]?.arc?.center
  const isAbout = ({ arc }: CurveRing[number]) =>
    arc !== undefined && Math.hypot(arc.center[0] - center![0], arc.center[1] - center![1]) < 1e-6
  return center && ring.every(isAbout) ? center : undefined
}
