/**
 * How long joints must be by what their ends do to the pours: a bound from below that is good for many pours.
 *
 * A pour's hull has no more perimeter and no less area than the pour, and no corner but the pour's convex ones. Of all
 * polygons of n sides and one area the regular one has the least perimeter, 2·√(area · n·tan(π/n)). A joint has two ends,
 * and an end makes two convex corners at most. With j openings joined to others or to the outline, k pours take
 * k − 1 + j joints: pours of a slab with V convex corners have no more than N = V + 4·(k − 1 + j) together.
 * φ(n) = √(n·tan(π/n)) is convex: it lies above its tangent at any n₀. With s the root of a pour's area, S that of the
 * largest allowed, and P the boundary of the slab, the joints measure
 *
 *   Σ s·φ(n) − P/2 ≥ (φ(n₀) − n₀·φ′(n₀))·Σ s + φ′(n₀)·S·N − P/2.
 *
 * Arcs are taken by chords. Where the pour lies inside the arc it loses the segment, together no more than the slab's own
 * segments; where it lies outside it gains by them, which is left out. With n₀ → ∞ it is the bound by circles
 * (φ = √π), which needs no chords.
 *
 * What is left is to share the area out so that C·Σ s and the imbalance of the pours together cost least. For any prices
 * λ of area and μ of lost segments, k times the least of one pour's cost less its area at λ, plus the whole area at λ,
 * less the segments at μ, is never too much (weak duality).
 *
 * Source: isoperimetric inequality of polygons: L. Fejes Tóth, Lagerungen in der Ebene, auf der Kugel und im Raum, 1953.
 */
import type { CostContext } from '../pourCost'
import { type CutRegion, interiorDegs, segmentTerm } from '../region/cutRegion'

/** Where the tangents of φ are taken. Pours of straight joints have about four corners. */
const tangents = [3.5, 3.75, 4, 4.25, 4.5, 5, 6]
/** Parts that an arc of at most 45° is taken by. */
const chordings = [1, 2, 4]
/** Steps the root of a pour's area is looked at in. */
const steps = 100
/** Angles from here on, degrees, make no corner. */
const straightDeg = 180 - 1e-6

/** √(n·tan(π/n)): half the perimeter of a regular polygon of n corners and area 1. n ≥ 3. */
export const halfPerimeter = (n: number): number => Math.sqrt(n * Math.tan(Math.PI / n))

const slopeOf = (n: number): number => {
  const tan = Math.tan(Math.PI / n)
  return (tan - (Math.PI / n) * (1 + tan * tan)) / (2 * halfPerimeter(n))
}

interface Outline {
  /** Convex ones, those between chords included. */
  readonly corners: number
  /** Area between the arcs that bulge out and their chords. */
  readonly segmentsM2: number
}

function outlineOf(slab: CutRegion, parts: number): Outline {
  let corners = 0
  let segmentsM2 = 0
  for (const ring of slab.rings) {
    const degs = interiorDegs(ring)
    ring.sides.forEach((side, i) => {
      const bulges = Math.max(0, side.sweep) + Math.max(0, ring.sides.at(i - 1)!.sweep)
      if (degs[i]! - ((bulges / parts / 2) * 180) / Math.PI < straightDeg) corners++
      if (side.sweep <= 0) return
      corners += parts - 1
      segmentsM2 += (parts * segmentTerm(side.r, side.sweep / parts)) / 2
    })
  }
  return { corners, segmentsM2 }
}

interface Shares {
  readonly k: number
  readonly areaM2: number
  readonly lostM2: number
  readonly capM2: number
  readonly meanM2: number
  /** Cost of a pour: perRootM · √area + imbalance · (1 − area ÷ mean)². */
  readonly perRootM: number
  readonly imbalance: number
}

/** No way to share the area out costs less, at this price of area. */
function leastAt(areaPrice: number, shares: Shares): number {
  const { k, areaM2, lostM2, capM2, meanM2, perRootM, imbalance: w } = shares
  const most = Math.sqrt(capM2)
  const step = most / steps
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i <= steps; i++) {
    const root = i * step
    const off = 1 - (root * root) / meanM2
    least = Math.min(least, perRootM * root + w * off * off - areaPrice * root * root)
  }
  // Between two steps a function lies below its ends by no more than an eighth of its greatest curvature.
  const falling = (4 * w) / meanM2 + 2 * areaPrice
  const curvature = Math.max(falling, (12 * w * capM2) / (meanM2 * meanM2) - falling)
  least -= (curvature * step * step) / 8
  // A pour that has lost all of its area must not be cheaper: the price of lost segments sees to that.
  const lostPrice = areaPrice + (least > 0 ? (2 * w * (1 - Math.sqrt(Math.max(0, 1 - least / w)))) / meanM2 : 0)
  return k * least + areaPrice * areaM2 - lostPrice * lostM2
}

function leastShared(shares: Shares): number {
  const { perRootM, capM2, meanM2 } = shares
  const even = perRootM / (2 * Math.sqrt(meanM2))
  const full = perRootM / Math.sqrt(capM2)
  return Math.max(...[even, (even + full) / 2, full].map(price => leastAt(price, shares)))
}

/**
 * Least cost, feet of joint, of the joints that part a slab into k pours of at most `capM2`, of the openings joined or left
 * inside a pour, and of the pours' imbalance, each by the search's weights. `perM` is the least cost of a meter of joint.
 * k ≥ 2.
 */
export function sidesBound(
  slab: CutRegion,
  k: number,
  perM: number,
  { weights: w, capM2, meanM2 }: Pick<CostContext, 'weights' | 'capM2' | 'meanM2'>,
): number {
  const { areaM2, perimeterM } = slab
  const around = (perM * perimeterM) / 2
  const openings = slab.rings.length - 1
  const shared = { k, areaM2, capM2, meanM2, imbalance: w.imbalance }
  const byCircles = leastShared({ ...shared, lostM2: 0, perRootM: perM * Math.sqrt(Math.PI) }) - around
  let best = byCircles + openings * Math.min(w.extraJoint, w.holeInside)
  for (const parts of chordings) {
    const { corners, segmentsM2 } = outlineOf(slab, parts)
    for (const n of tangents) {
      const slope = slopeOf(n)
      const perRootM = perM * (halfPerimeter(n) - n * slope)
      const perCorner = perM * slope * Math.sqrt(capM2)
      const perOpening = Math.min(w.holeInside, w.extraJoint + 4 * perCorner)
      const least = leastShared({ ...shared, lostM2: segmentsM2, perRootM }) - around
      best = Math.max(best, least + perCorner * (corners + 4 * (k - 1)) + perOpening * openings)
    }
    if (segmentsM2 === 0) break
  }
  return best
}
