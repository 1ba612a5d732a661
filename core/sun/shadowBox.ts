/** Boxes around solids and their shadows, to pass over what cannot reach a slab. */

import type { Pt } from '../../shared/document/primitives'
import { type Box, pointBounds } from '../geometry/bounds'
import type { Solid } from './solid'

const pairs = (flat: Float64Array, stride: 2 | 3): Pt[] => {
  const points: Pt[] = []
  for (let i = 0; i < flat.length; i += stride) points.push([flat[i]!, flat[i + 1]!])
  return points
}

/** The box around a solid in plan. */
export const solidBox = (solid: Solid): Box => {
  switch (solid.form) {
    case 'prism':
      return pointBounds(solid.rings.flatMap(ring => pairs(ring, 2)))
    case 'faces':
      return pointBounds(solid.faces.flatMap(face => pairs(face, 3)))
    case 'screen':
      return pointBounds([solid.from, solid.to])
    case 'crown': {
      const [x, y] = solid.at
      const r = solid.radiusM
      return { minX: x - r, minY: y - r, maxX: x + r, maxY: y + r }
    }
  }
}

/** Whether the shadow of the solid on z = `levelM` can reach the box: its plan box, shifted by the shadow of its bottom
 * and of its top. */
export const canReach = (solid: Solid, plan: Box, target: Box, levelM: number, kx: number, ky: number): boolean => {
  const high = solid.topM - levelM
  if (high <= 0) return false
  const low = Math.max(0, solid.bottomM - levelM)
  return (
    plan.minX + Math.min(low * kx, high * kx) < target.maxX &&
    plan.maxX + Math.max(low * kx, high * kx) > target.minX &&
    plan.minY + Math.min(low * ky, high * ky) < target.maxY &&
    plan.maxY + Math.max(low * ky, high * ky) > target.minY
  )
}
