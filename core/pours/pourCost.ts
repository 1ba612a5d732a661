/** What one pour adds to the cost of a plan, in feet of joint: every term depends on the pour alone. */
import { segmentDistance } from '../geometry/segmentDistance'
import { addLoadCost, type LoadGround } from './loadGround'
import { type CutRegion, interiorDegs, type Side } from './region/cutRegion'
import { innerArea } from './region/innerArea'
import { minimumBox } from './region/minimumBox'
import type { SiteGround } from './siteGround'
import type { Weights } from './weights'
import { addWishCost, type WishGround } from './wishes/wishCost'

export const ftM = 0.3048
export const ft2M2 = ftM * ftM

export interface CostTerms {
  jointLength: number
  acuteCorner: number
  nearCorner: number
  finger: number
  reentrantLeft: number
  holeInside: number
  aspect: number
  narrow: number
  imbalance: number
  offGrid: number
  reach: number
  nearMiter: number
  offDirection: number
  hidden: number
  unusedTruck: number
  shortLoad: number
  shadeLine: number
  mixedPlacing: number
}

export const noCost = (): CostTerms => ({
  jointLength: 0,
  acuteCorner: 0,
  nearCorner: 0,
  finger: 0,
  reentrantLeft: 0,
  holeInside: 0,
  aspect: 0,
  narrow: 0,
  imbalance: 0,
  offGrid: 0,
  reach: 0,
  nearMiter: 0,
  offDirection: 0,
  hidden: 0,
  unusedTruck: 0,
  shortLoad: 0,
  shadeLine: 0,
  mixedPlacing: 0,
})

export const sumOf = (t: CostTerms): number =>
  t.jointLength +
  t.acuteCorner +
  t.nearCorner +
  t.finger +
  t.reentrantLeft +
  t.holeInside +
  t.aspect +
  t.narrow +
  t.imbalance +
  t.offGrid +
  t.reach +
  t.nearMiter +
  t.offDirection +
  t.hidden +
  t.unusedTruck +
  t.shortLoad +
  t.shadeLine +
  t.mixedPlacing

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
  /** What the joints of this part should keep to; null where that costs nothing. */
  readonly wishes: WishGround | null
  /** What the loads of a pour are reckoned from; null where they cost nothing. */
  readonly loads: LoadGround | null
  /** Where sun, shade and trucks are; null where the site is not looked at. */
  readonly site: SiteGround | null
}

/** Interior angles beyond these mark a true corner; between them the boundary goes on. */
export const reentrantAboveDeg = 205
export const convexBelowDeg = 155

/** An angle this close to the limit (degrees) is at it, whatever its last bits say. */
const sameDeg = 1e-6

export const isUnder = (deg: number, limitDeg: number): boolean => deg < limitDeg - sameDeg

/** A corner sharper than joints should make; one that the slab itself has is left out (`slabDeg`, 0 for none). */
export const isSharp = (deg: number, slabDeg: number, belowDeg: number): boolean =>
  isUnder(deg, belowDeg) && (slabDeg === 0 || deg < slabDeg - 1)

export const acuteCost = (deg: number, w: Weights): number =>
  isUnder(deg, w.acuteBelowDeg) ? w.acuteFloor + (w.acuteCorner * (w.acuteBelowDeg - deg)) / w.acuteBelowDeg : 0

/** A joint laid out right at the limit (m) is not too near, whatever its last bits say. */
const sameM = 1e-6

/** Cost of a slab corner at distance d from a joint. */
export const nearCost = (distanceM: number, w: Weights): number =>
  distanceM > 1e-4 && distanceM < w.nearCornerM - sameM ? w.nearCorner * (1.25 - distanceM / w.nearCornerM) : 0

export const isCorner = (slabDeg: number): boolean =>
  slabDeg !== 0 && (slabDeg <= convexBelowDeg || slabDeg >= reentrantAboveDeg)

/** How close an arc bulges toward a line: the distance of its point nearest to it, 0 where that is not on the arc. */
function bulgeDistance(s: Side, e: Side, ax: number, ay: number, ux: number, uy: number, length: number): number {
  const along = (s.cx - ax) * ux + (s.cy - ay) * uy
  if (along < 0 || along > length) return 0
  const off = -(s.cx - ax) * uy + (s.cy - ay) * ux
  const sign = off > 0 ? -1 : 1
  const x = -uy * sign
  const y = ux * sign
  const turn = s.sweep > 0 ? 1 : -1
  const after = turn * ((s.x - s.cx) * y - (s.y - s.cy) * x)
  const before = turn * (x * (e.y - s.cy) - y * (e.x - s.cx))
  const slack = -1e-9 * s.r
  return after >= slack && before >= slack ? Math.abs(off) - s.r : 0
}

/** Cost of the slab's corners and of openings' arcs close to a joint: the worst of them. */
export function nearestCost(region: CutRegion, ax: number, ay: number, bx: number, by: number, w: Weights): number {
  const length = Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay))
  const ux = (bx - ax) / length
  const uy = (by - ay) / length
  const near = w.nearCornerM
  let worst = 0
  for (const { sides } of region.rings)
    for (let i = 0; i < sides.length; i++) {
      const s = sides[i]!
      let cost = 0
      if (isCorner(s.slabDeg)) {
        const t = (s.x - ax) * ux + (s.y - ay) * uy
        const d = -(s.x - ax) * uy + (s.y - ay) * ux
        if (d < near && d > -near && t > -near && t < length + near)
          cost = nearCost(segmentDistance(s.x, s.y, ax, ay, bx, by), w)
      }
      if (s.sweep < 0)
        cost = Math.max(
          cost,
          nearCost(bulgeDistance(s, sides[i + 1 === sides.length ? 0 : i + 1]!, ax, ay, ux, uy, length), w),
        )
      if (cost > worst) worst = cost
    }
  return worst
}

/** cos of 15°: within it two edges run side by side. */
const sideBySide = 0.966

const isReentrant = ({ slabDeg }: Side): boolean => slabDeg > reentrantAboveDeg

/**
 * Cost of the strips between a joint and edges beside it that are too narrow: less wide than `legM`, or `fingerM` along
 * edges of openings and others that a re-entrant corner begins or ends: ground beside those is the slab's own doing.
 */
function fingerCost(region: CutRegion, joint: Side, end: Side, legM: number, w: Weights): number {
  const length = Math.sqrt((end.x - joint.x) * (end.x - joint.x) + (end.y - joint.y) * (end.y - joint.y))
  const ux = (end.x - joint.x) / length
  const uy = (end.y - joint.y) / length
  let cost = 0
  for (let r = 0; r < region.rings.length; r++) {
    const { sides } = region.rings[r]!
    for (let i = 0; i < sides.length; i++) {
      const s = sides[i]!
      if (s === joint) continue
      const e = sides[i + 1 === sides.length ? 0 : i + 1]!
      const d0 = -(s.x - joint.x) * uy + (s.y - joint.y) * ux
      if (d0 < -1e-6 || d0 > 2 * legM) continue
      const dx = e.x - s.x
      const dy = e.y - s.y
      const along = dx * ux + dy * uy
      if (along > 0 || -along < sideBySide * Math.sqrt(dx * dx + dy * dy)) continue
      const t0 = (s.x - joint.x) * ux + (s.y - joint.y) * uy
      const shared = Math.min(length, t0) - Math.max(0, t0 + along)
      if (shared < 0.3) continue
      const wide = d0 + (-dx * uy + dy * ux) / 2
      const isOwn = r > 0 || s.sweep < 0 || isReentrant(s) || isReentrant(e)
      const belowM = isOwn ? w.fingerM : legM
      if (wide > 1e-3 && wide < belowM) cost += (w.finger * shared * (1 - wide / belowM)) / ftM
    }
  }
  return cost
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

export function aspectCost(aspect: number, w: Weights): number {
  const beyond = aspect - w.aspectAbove
  return beyond > 0 ? Math.min(w.aspectMost, w.aspect * (beyond + beyond * beyond)) : 0
}

/** Of a rectangle. */
export const reachCost = (longM: number, shortM: number, w: Weights): number =>
  (w.reach * Math.max(0, longM - 2 * w.reachM) * Math.max(0, shortM - 2 * w.reachM)) / ft2M2

/** Adds the pour's terms to `terms`. Joints count by half: the other half is the neighbor's. */
export function addPourCost(pour: CutRegion, context: CostContext, terms: CostTerms): void {
  const w = context.weights
  const box = minimumBox(pour.rings[0]!)
  const { longM, shortM } = box
  const legM = Math.max(w.fingerM, Math.min(w.legM, w.legShare * shortM))
  terms.jointLength += (w.jointLength * pour.jointM) / 2 / ftM
  for (const ring of pour.rings) {
    const n = ring.sides.length
    const degs = interiorDegs(ring)
    for (let i = 0; i < n; i++) {
      const side = ring.sides[i]!
      const deg = degs[i]!
      if (deg > reentrantAboveDeg) terms.reentrantLeft += w.reentrantLeft
      else if (isSharp(deg, side.slabDeg, w.acuteBelowDeg)) terms.acuteCorner += acuteCost(deg, w)
      if (side.joint < 0) continue
      const end = ring.sides[i + 1 === n ? 0 : i + 1]!
      terms.nearCorner += nearestCost(pour, side.x, side.y, end.x, end.y, w)
      terms.finger += fingerCost(pour, side, end, legM, w)
      if (context.grid.length > 0 && !isOnGrid(context.grid, side.x, side.y, end.x, end.y))
        terms.offGrid += (w.offGrid * (ring.length[i + 1]! - ring.length[i]!)) / 2 / ftM
      if (context.wishes) addWishCost(context.wishes, side.x, side.y, end.x, end.y, 1 / 2, w, terms)
    }
  }
  terms.holeInside += w.holeInside * (pour.rings.length - 1)
  terms.aspect += aspectCost(longM / shortM, w)
  if (shortM < w.narrowM && shortM < context.slabWidthM - 0.003) terms.narrow += w.narrow
  terms.imbalance += imbalanceCost(pour.areaM2, 1, context)
  if (w.reach > 0) terms.reach += (w.reach * innerArea(pour, box, w.reachM)) / ft2M2
  if (context.loads) addLoadCost(pour.areaM2, context.loads, terms)
  context.site?.addCost(pour, w, terms)
}

export function pourCost(pour: CutRegion, context: CostContext): number {
  const terms = noCost()
  addPourCost(pour, context, terms)
  return sumOf(terms)
}
