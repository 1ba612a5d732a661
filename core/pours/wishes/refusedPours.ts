/** Pours that may not be: narrower than wished, or with the same required joint on both of their sides. */
import type { CutRegion } from '../region/cutRegion'
import { minimumBox } from '../region/minimumBox'
import { firstFixed } from './fixedFaces'

/** Overlaps shorter than this are two ends that meet (m). */
const meetM = 1e-3
/** A pour this little too narrow is wide enough (m). */
const roundOffM = 1e-6

interface Stretch {
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
}

/** How long two stretches of one line lie on each other while they run opposite ways, m. */
function facing(s: Stretch, o: Stretch): number {
  const lengthM = Math.hypot(s.bx - s.ax, s.by - s.ay)
  const along = (x: number, y: number) => ((x - s.ax) * (s.bx - s.ax) + (y - s.ay) * (s.by - s.ay)) / lengthM
  const [from, to] = [along(o.ax, o.ay), along(o.bx, o.by)]
  return to > from ? 0 : Math.min(lengthM, from) - Math.max(0, to)
}

/** True where a required joint runs into a region and has it on both sides: it divides nothing there. */
export function hasJointInside(region: CutRegion): boolean {
  const byJoint = new Map<number, Stretch[]>()
  for (const { sides } of region.rings)
    for (let i = 0; i < sides.length; i++) {
      const side = sides[i]!
      if (side.joint < firstFixed) continue
      const end = sides[i + 1 === sides.length ? 0 : i + 1]!
      const own = { ax: side.x, ay: side.y, bx: end.x, by: end.y }
      const others = byJoint.get(side.joint) ?? []
      if (others.some(other => facing(own, other) > meetM)) return true
      byJoint.set(side.joint, [...others, own])
    }
  return false
}

export const isNarrower = (pour: CutRegion, leastWidthM: number): boolean =>
  minimumBox(pour.rings[0]!).shortM < leastWidthM - roundOffM

/** The test for the pours of one face; null where every pour may be. */
export function refusedIn(face: CutRegion, leastWidthM: number): ((pour: CutRegion) => boolean) | null {
  const isSlit = hasJointInside(face)
  if (!isSlit) return leastWidthM > 0 ? pour => isNarrower(pour, leastWidthM) : null
  return pour => hasJointInside(pour) || (leastWidthM > 0 && isNarrower(pour, leastWidthM))
}
