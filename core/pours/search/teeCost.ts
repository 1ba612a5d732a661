import type { Weights } from '../weights'
import type { JointLine } from './cutTree'

/** Ends this close count as one point of the joint they meet (m). */
const onJointM = 1e-4
/** Tee ends closer than this are in line (m): 1/4 in, less than a saw cut is off. */
const inLineM = 0.0064

/** Two joints that meet a third from opposite sides, nearly but not exactly in line. Feet of joint. */
export function teeCost(joints: readonly JointLine[], weights: Weights): number {
  let cost = 0
  for (const s of joints) {
    const ux = (s.bx - s.ax) / s.lengthM
    const uy = (s.by - s.ay) / s.lengthM
    const left: number[] = []
    const right: number[] = []
    const meet = (px: number, py: number, qx: number, qy: number): void => {
      const t = (px - s.ax) * ux + (py - s.ay) * uy
      if (t < onJointM || t > s.lengthM - onJointM) return
      if (Math.abs(-(px - s.ax) * uy + (py - s.ay) * ux) > onJointM) return
      const side = -(qx - s.ax) * uy + (qy - s.ay) * ux
      if (side > 1e-3) left.push(t)
      else if (side < -1e-3) right.push(t)
    }
    for (const o of joints) {
      if (o === s) continue
      meet(o.ax, o.ay, o.bx, o.by)
      meet(o.bx, o.by, o.ax, o.ay)
    }
    for (const a of left)
      for (const b of right) {
        const d = Math.abs(a - b)
        if (d > inLineM && d < weights.teeWithinM)
          cost += weights.teeFloor + weights.teeOffset * (1 - d / weights.teeWithinM)
      }
  }
  return cost
}
