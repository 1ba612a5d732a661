/** Plans for a slab around one opening: joints that run out from it like spokes, at the angles that give equal pours. */
import type { CutRegion } from '../region/cutRegion'
import type { CutTree } from './cutTree'
import { directionsOf } from './directions'
import { falsePosition, type Tried } from './falsePosition'
import { replay } from './replay'
import type { SearchContext } from './searchContext'
import { type Slit, slitsOnLine, turnedBack, turnedCut } from './turnedCuts'

/** First spokes tried, evenly around the opening. */
const spokes = 12
/** The second spoke keeps away from the first by this (radians). */
const leastAngle = 0.15
const mostSteps = 25
const mostSpokePours = 8

/** Runs out from the middle of the opening at an angle; null where it does not meet the outline first. */
function spokeAt(region: CutRegion, x: number, y: number, angle: number, context: SearchContext): Slit | null {
  const ux = Math.cos(angle)
  const uy = Math.sin(angle)
  const middle = ux * x + uy * y
  const slits = slitsOnLine(region, { ux, uy }, -uy * x + ux * y, true, 0, context)
  return slits.find(s => s.chord.t0 >= middle) ?? null
}

/** The second spoke whose cut leaves the target area above it. */
function secondSpoke(
  region: CutRegion,
  first: Slit,
  at: (angle: number) => Slit | null,
  from: number,
  to: number,
  targetM2: number,
  context: SearchContext,
): Slit | null {
  const spoke = (angle: number): Tried<Slit> | null => {
    const slit = at(angle)
    const cut = slit && turnedCut(region, first, slit, context)
    return cut && { found: slit, miss: cut.measure.upAreaM2 - targetM2 }
  }
  return falsePosition(
    { at: from, miss: spoke(from)?.miss ?? Number.NaN },
    { at: to, miss: spoke(to)?.miss ?? Number.NaN },
    spoke,
    1e-9 * region.areaM2,
    mostSteps,
  )
}

/** The plan that spokes in order of their angles make, as cuts to be made on the slab. */
function planOf(slab: CutRegion, [first, second, ...rest]: readonly Slit[], context: SearchContext): CutTree | null {
  const cut = first && second && turnedCut(slab, first, second, context)
  if (!cut) return null
  const shared = { region: slab, measure: cut.measure, direction: first.direction, joint: 0, lowPours: 1 }
  const pour: CutTree = { pour: slab }
  let inner: CutTree = pour
  let pours = 1
  // The last sector is cut off last.
  for (const { chord } of rest.reverse())
    inner = { ...shared, chain: [turnedBack(chord)], upPours: pours++, up: inner, low: pour }
  return replay(slab, { ...shared, chain: cut.chain, upPours: pours, up: inner, low: pour }, 0, 0, context)
}

/** One plan for each first spoke; empty where the slab does not lie around one opening. */
export function spokePlans(slab: CutRegion, context: SearchContext): CutTree[] {
  const hole = slab.rings[1]
  const axis = directionsOf(slab, [], 1, [])[0]
  const k = context.pours
  if (slab.rings.length !== 2 || !hole || !axis || k < 2 || k > mostSpokePours) return []
  let x = 0
  let y = 0
  for (const s of hole.sides) {
    x += s.x / hole.sides.length
    y += s.y / hole.sides.length
  }
  // Angles are counted from an axis of the slab, so that the plans turn with it.
  const base = Math.atan2(axis.uy, axis.ux)
  const at = (angle: number): Slit | null => spokeAt(slab, x, y, angle, context)
  const plans: CutTree[] = []
  for (let i = 0; i < spokes; i++) {
    const angle = base + (2 * Math.PI * i) / spokes
    const first = at(angle)
    if (!first) continue
    const slits: Slit[] = [first]
    for (let j = 1; j < k; j++) {
      const areaM2 = slab.areaM2 * (1 - j / k)
      const last = angle + 2 * Math.PI - leastAngle
      const slit = secondSpoke(slab, first, at, angle + leastAngle, last, areaM2, context)
      if (slit) slits.push(slit)
    }
    const plan = slits.length === k ? planOf(slab, slits, context) : null
    if (plan) plans.push(plan)
  }
  return plans
}
