/** What one pour adds to the cost of a plan, in feet of joint: every term depends on the pour alone. */
import type { CutRegion } from './region/cutRegion'
import { interiorDeg } from './region/cutRegion'
import { minimumBox } from './region/minimumBox'
import type { Weights } from './weights'

export const ftM = 0.3048
const ft2M2 = ftM * ftM

export interface CostTerms {
  jointLength: number
  acuteCorner: number
  nearCorner: number
  reentrantLeft: number
  holeInside: number
  aspect: number
  narrow: number
  imbalance: number
  offGrid: number
  reach: number
}

export const noCost = (): CostTerms => ({
  jointLength: 0,
  acuteCorner: 0,
  nearCorner: 0,
  reentrantLeft: 0,
  holeInside: 0,
  aspect: 0,
  narrow: 0,
  imbalance: 0,
  offGrid: 0,
  reach: 0,
})

export const sumOf = (t: CostTerms): number =>
  t.jointLength +
  t.acuteCorner +
  t.nearCorner +
  t.reentrantLeft +
  t.holeInside +
  t.aspect +
  t.narrow +
  t.imbalance +
  t.offGrid +
  t.reach

/** Parallel lines {p : −uy·x + ux·y = offsetM + i·stepM} that joints should fall on. */
export interface GridLines {
  readonly ux: number
  readonly uy: number
  readonly offsetM: number
  readonly stepM: number
}

export interface CostContext {
  readonly weights: Weights
  readonly capM2: number
  readonly meanM2: number
  /** Width of the slab where it is narrowest overall: 2·area ÷ perimeter. */
  readonly slabWidthM: number
  readonly grid: readonly GridLines[]
}

/** Interior angles beyond these mark a true corner; between them the boundary goes on. */
export const reentrantAboveDeg = 205
export const convexBelowDeg = 155

export const acuteCost = (deg: number, w: Weights): number =>
  deg < w.acuteBelowDeg ? w.acuteFloor + (w.acuteCorner * (w.acuteBelowDeg - deg)) / w.acuteBelowDeg : 0

/** Cost of a slab corner at distance d from a joint. */
export const nearCost = (distanceM: number, w: Weights): number =>
  distanceM > 1e-4 && distanceM < w.nearCornerM ? w.nearCorner * (1.25 - distanceM / w.nearCornerM) : 0

export function segmentDistance(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax
  const dy = by - ay
  const t = Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy)))
  return Math.hypot(px - ax - t * dx, py - ay - t * dy)
}

const onGridM = 0.015

export function isOnGrid(grid: readonly GridLines[], ax: number, ay: number, bx: number, by: number): boolean {
  const length = Math.hypot(bx - ax, by - ay)
  return grid.some(line => {
    const along = ((bx - ax) * line.ux + (by - ay) * line.uy) / length
    if (Math.abs(along) < 0.999) return false
    const steps = (-line.uy * ax + line.ux * ay - line.offsetM) / line.stepM
    return Math.abs(steps - Math.round(steps)) * line.stepM < onGridM
  })
}

export const imbalanceCost = (areaM2: number, k: number, context: CostContext): number => {
  const off = 1 - areaM2 / k / context.meanM2
  return context.weights.imbalance * k * off * off
}

/** Adds the pour's terms to `terms`. Joints count by half: the other half is the neighbor's. */
export function addPourCost(pour: CutRegion, context: CostContext, terms: CostTerms): void {
  const w = context.weights
  terms.jointLength += (w.jointLength * pour.jointM) / 2 / ftM
  for (const ring of pour.rings) {
    const n = ring.sides.length
    for (let i = 0; i < n; i++) {
      const side = ring.sides[i]!
      const deg = interiorDeg(ring, i)
      if (deg > reentrantAboveDeg) terms.reentrantLeft += w.reentrantLeft
      else if (deg < w.acuteBelowDeg && (side.slabDeg === 0 || deg < side.slabDeg - 1))
        terms.acuteCorner += acuteCost(deg, w)
      if (side.joint < 0) continue
      const end = ring.sides[i + 1 === n ? 0 : i + 1]!
      let worst = 0
      for (const other of pour.rings)
        for (const corner of other.sides) {
          if (corner.slabDeg === 0 || (corner.slabDeg > convexBelowDeg && corner.slabDeg < reentrantAboveDeg)) continue
          const cost = nearCost(segmentDistance(corner.x, corner.y, side.x, side.y, end.x, end.y), w)
          if (cost > worst) worst = cost
        }
      terms.nearCorner += worst
      if (context.grid.length > 0 && !isOnGrid(context.grid, side.x, side.y, end.x, end.y))
        terms.offGrid += (w.offGrid * (ring.length[i + 1]! - ring.length[i]!)) / 2 / ftM
    }
  }
  terms.holeInside += w.holeInside * (pour.rings.length - 1)
  const { longM, shortM } = minimumBox(pour.rings[0]!)
  const beyond = longM / shortM - w.aspectAbove
  if (beyond > 0) terms.aspect += Math.min(w.aspectMost, w.aspect * (beyond + beyond * beyond))
  if (shortM < w.narrowM && shortM < context.slabWidthM - 0.003) terms.narrow += w.narrow
  terms.imbalance += imbalanceCost(pour.areaM2, 1, context)
  const coreM2 =
    (Math.max(0, longM - 2 * w.reachM) * Math.max(0, shortM - 2 * w.reachM) * pour.areaM2) / (longM * shortM)
  terms.reach += (w.reach * coreM2) / ft2M2
}

export function pourCost(pour: CutRegion, context: CostContext): number {
  const terms = noCost()
  addPourCost(pour, context, terms)
  return sumOf(terms)
}
