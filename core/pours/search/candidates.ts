/** The cuts worth trying on one part: chords at re-entrant corners, beside corners, on grid lines and at target areas. */
import { acuteCost, convexBelowDeg, ftM, nearestCost, reentrantAboveDeg } from '../pourCost'
import { type AtTouch, type Chord, type ChordEnd, onLineM } from '../region/chords'
import type { Chain, CutMeasure } from '../region/cut'
import { type CutRegion, interiorDegs, tangentAt } from '../region/cutRegion'
import { offsetsAlong, wishCost } from '../wishes/wishCost'
import { boundRest, estimateRest } from './bounds'
import { cornerLines } from './cornerLines'
import { continuing, cutContinuing, cutsOnLine, type LineCut } from './lineCuts'
import { pivotCuts } from './pivotCuts'
import { type Direction, poursNeeded, type SearchContext } from './searchContext'
import { mostTurnedHoles, TurnedCuts } from './turnedCuts'

export interface Candidate {
  readonly chain: Chain
  readonly measure: CutMeasure
  readonly lengthM: number
  readonly direction: Direction
  /** Place of its direction in the list of those tried. */
  readonly family: number
  /** Pours for the upper and the lower face. */
  readonly upPours: number
  readonly lowPours: number
  /** Estimated cost of all that follows from this cut. */
  readonly estimate: number
  /** Never more than the cost of any plan with this cut, but for the joints the part already carries. */
  readonly bound: number
}

/** Budgets below this are for dragging and leave such cuts out. */
const leastTurnedBudget = 150_000
/** Work of judging one cut, in sides visited. */
const addWork = 10
/** Most pours for which cuts from single corners, in directions of their own, are tried. */
const mostCornerPours = 8
/** Most pours of a plan in which joints from corners are turned to suit the cap, or run to another corner. */
const mostPivotPours = 5
/** Most pours for which whole truckloads are aimed at. */
const mostLoadPours = 5
/** Faces smaller than this are noise of a cut along the boundary (m²). */
const leastFaceM2 = 1e-3
/** A family of chords is looked at this far inside the offsets where it begins and ends (m). */
const insetM = 2e-6
/** A joint meeting the boundary under a sharper angle than this cannot be formed. */
const leastEndDeg = 10

/** Angles between a chord leaving an end in direction (dx, dy) and the boundary on either side, degrees. */
export function endAngles(region: CutRegion, end: ChordEnd, dx: number, dy: number): readonly [number, number] {
  const ring = region.rings[end.ring]!
  const side = ring.sides[end.side]!
  let forward: readonly [number, number]
  let back: readonly [number, number]
  if (end.vertex) {
    forward = tangentAt(ring, end.side, false)
    const before = tangentAt(ring, end.side === 0 ? ring.sides.length - 1 : end.side - 1, true)
    back = [-before[0], -before[1]]
  } else {
    if (side.sweep === 0) forward = tangentAt(ring, end.side, false)
    else {
      const sign = side.sweep > 0 ? 1 / side.r : -1 / side.r
      forward = [-(end.y - side.cy) * sign, (end.x - side.cx) * sign]
    }
    back = [-forward[0], -forward[1]]
  }
  const turn = (ax: number, ay: number, bx: number, by: number): number => {
    const deg = (Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * 180) / Math.PI
    return deg < 0 ? deg + 360 : deg
  }
  return [turn(forward[0], forward[1], dx, dy), turn(dx, dy, back[0], back[1])]
}

/** Cost of the sharp corners a chord makes; null when an end is too sharp to form. */
function sharpCost(region: CutRegion, chord: Chord, context: SearchContext): number | null {
  const dx = (chord.b.x - chord.a.x) / chord.lengthM
  const dy = (chord.b.y - chord.a.y) / chord.lengthM
  let cost = 0
  for (const [end, sign] of [
    [chord.a, 1],
    [chord.b, -1],
  ] as const)
    for (const deg of endAngles(region, end, sign * dx, sign * dy)) {
      if (deg < leastEndDeg || deg > 360 - leastEndDeg) return null
      cost += acuteCost(deg, context.weights)
    }
  return cost
}

const isSameChord = (p: Chord, q: Chord): boolean =>
  Math.abs(p.a.x - q.a.x) < 1e-4 &&
  Math.abs(p.a.y - q.a.y) < 1e-4 &&
  Math.abs(p.b.x - q.b.x) < 1e-4 &&
  Math.abs(p.b.y - q.b.y) < 1e-4

const isSameChain = (p: Chain, q: Chain): boolean =>
  p.length === q.length && p.every((chord, i) => isSameChord(chord, q[i]!))

class CandidateList {
  readonly found: Candidate[] = []
  private readonly seen = new Map<number, Chain[]>()

  private readonly reentrant: readonly (readonly boolean[])[]
  private readonly reentrantCount: number

  constructor(
    private readonly region: CutRegion,
    private readonly k: number,
    private readonly context: SearchContext,
  ) {
    this.reentrant = region.rings.map(ring => Array.from(interiorDegs(ring), deg => deg > reentrantAboveDeg))
    this.reentrantCount = this.reentrant.reduce((n, ring) => n + ring.filter(Boolean).length, 0)
  }

  add({ chain, measure, lengthM }: LineCut, direction: Direction, family: number): void {
    const { region, k, context } = this
    context.work.done += addWork
    if (measure.upAreaM2 < leastFaceM2 || measure.lowAreaM2 < leastFaceM2) return
    const needUp = poursNeeded(measure.upAreaM2, context.capM2)
    const needLow = poursNeeded(measure.lowAreaM2, context.capM2)
    if (needUp + needLow > k) return
    const key = Math.round(measure.upAreaM2 * 1e4)
    const twins = this.seen.get(key)
    if (twins?.some(t => isSameChain(t, chain))) return
    if (twins) twins.push(chain)
    else this.seen.set(key, [chain])
    const w = context.weights
    let own = (w.jointLength * lengthM) / ftM + w.extraJoint * (chain.length - 1)
    let near = 0
    let left = this.reentrantCount
    for (const chord of chain) {
      if (context.forbidden?.forbids(chord.a.x, chord.a.y, chord.b.x, chord.b.y, context.work)) return
      const sharp = sharpCost(region, chord, context)
      if (sharp === null) return
      own += sharp
      if (context.wishes) own += wishCost(context.wishes, chord.a.x, chord.a.y, chord.b.x, chord.b.y, w)
      near += nearestCost(region, chord.a.x, chord.a.y, chord.b.x, chord.b.y, w)
      for (const end of [chord.a, chord.b]) if (end.vertex && this.reentrant[end.ring]![end.side]) left--
    }
    const holesLeft = measure.upRings.length + measure.lowRings.length - (measure.loop === 'both' ? 0 : 1)
    const corners = w.reentrantLeft * Math.max(0, left) + w.holeInside * holesLeft
    // The last cut leaves what it leaves; earlier ones hand corners on to later cuts.
    const bound = k === 2 ? own + near + corners : own
    const estimate = k === 2 ? bound : own + near + corners / 2
    const share = (k * measure.upAreaM2) / region.areaM2
    const fair = Math.min(Math.max(Math.round(share), needUp), k - needLow)
    const splits = [fair]
    const other = share > fair ? fair + 1 : fair - 1
    if (Math.abs(share - fair) > 0.3 && other >= needUp && other <= k - needLow && other > 0 && other < k)
      splits.push(other)
    for (const upPours of splits) {
      const lowPours = k - upPours
      if (upPours < 1 || lowPours < 1) continue
      this.found.push({
        chain,
        measure,
        lengthM,
        direction,
        family,
        upPours,
        lowPours,
        estimate:
          estimate +
          estimateRest(measure.upAreaM2, measure.upPerimeterM, upPours, context) +
          estimateRest(measure.lowAreaM2, measure.lowPerimeterM, lowPours, context),
        bound:
          bound +
          boundRest(measure.upAreaM2, measure.upPerimeterM, upPours, context) +
          boundRest(measure.lowAreaM2, measure.lowPerimeterM, lowPours, context),
      })
    }
  }
}

/** Offsets at which the family of chords changes: where the boundary turns around or runs along the direction. */
function criticalOffsets(region: CutRegion, { ux, uy }: Direction): number[] {
  const offsets: number[] = []
  for (const { sides } of region.rings) {
    const n = sides.length
    let before = 0
    // The last strict rise or fall before the first vertex.
    for (let k = n - 1; k >= 0 && before === 0; k--) {
      const s = sides[k]!
      const e = sides[k + 1 === n ? 0 : k + 1]!
      const d = -uy * (e.x - s.x) + ux * (e.y - s.y)
      if (Math.abs(d) > onLineM) before = Math.sign(d)
    }
    for (let i = 0; i < n; i++) {
      const s = sides[i]!
      const e = sides[i + 1 === n ? 0 : i + 1]!
      const d0 = -uy * s.x + ux * s.y
      const d1 = -uy * e.x + ux * e.y
      if (s.sweep === 0) {
        if (Math.abs(d1 - d0) <= onLineM) offsets.push(d0)
        else {
          const sign = Math.sign(d1 - d0)
          if (before !== 0 && sign !== before) offsets.push(d0)
          before = sign
        }
        continue
      }
      const turn = s.sweep > 0 ? 1 : -1
      const tc = ux * s.cx + uy * s.cy
      const rise0 = Math.sign(turn * (ux * s.x + uy * s.y - tc))
      const rise1 = Math.sign(turn * (ux * e.x + uy * e.y - tc))
      const start = rise0 === 0 ? rise1 : rise0
      if (before !== 0 && start !== before) offsets.push(d0)
      if (rise0 * rise1 < 0) offsets.push(-uy * s.cx + ux * s.cy + (rise0 > 0 ? s.r : -s.r))
      before = rise1 === 0 ? start : rise1
    }
  }
  return distinct(offsets)
}

function distinct(offsets: number[]): number[] {
  offsets.sort((a, b) => a - b)
  return offsets.filter((s, i) => i === 0 || s - offsets[i - 1]! > 1e-6)
}

/** Offsets tried for their own sake, whatever areas they give. */
function specialOffsets(
  region: CutRegion,
  { ux, uy }: Direction,
  k: number,
  context: SearchContext,
): {
  readonly onVertices: readonly number[]
  readonly between: readonly number[]
  readonly middles: readonly number[]
} {
  const onVertices: number[] = []
  const middles: number[] = []
  const offsets: number[] = []
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let r = 0; r < region.rings.length; r++) {
    const ring = region.rings[r]!
    let middle = 0
    const degs = interiorDegs(ring)
    for (let i = 0; i < ring.sides.length; i++) {
      const s = ring.sides[i]!
      const d = -uy * s.x + ux * s.y
      middle += d / ring.sides.length
      if (d < low) low = d
      if (d > high) high = d
      const deg = degs[i]!
      if (deg > reentrantAboveDeg) onVertices.push(d)
      if (k <= 6 && (deg > reentrantAboveDeg || deg < convexBelowDeg))
        offsets.push(d - context.weights.nearCornerM, d + context.weights.nearCornerM)
    }
    if (r > 0) middles.push(middle)
  }
  for (const line of context.grid) {
    const along = line.ux * ux + line.uy * uy
    if (Math.abs(along) < 0.999) continue
    const sign = along > 0 ? 1 : -1
    const from = Math.ceil((Math.min(sign * low, sign * high) - line.offsetM) / line.stepM)
    const to = Math.floor((Math.max(sign * low, sign * high) - line.offsetM) / line.stepM)
    for (let i = from; i <= to; i++) offsets.push(sign * (line.offsetM + i * line.stepM))
  }
  if (context.forbidden) offsets.push(...context.forbidden.offsetsBeside(ux, uy))
  if (context.wishes) offsets.push(...offsetsAlong(context.wishes, ux, uy))
  const isInside = (s: number): boolean => s > low + 1e-6 && s < high - 1e-6
  return {
    onVertices: distinct(onVertices.filter(isInside)),
    between: distinct([...offsets, ...middles].filter(isInside)),
    middles: distinct(middles),
  }
}

/** Areas of the upper face worth aiming at: equal shares, and the ends of what the cap allows. */
function targetAreas(areaM2: number, k: number, context: SearchContext): number[] {
  const counts = new Set<number>()
  if (k <= 6) for (let j = 1; j < k; j++) counts.add(j)
  else
    for (const j of [1, 2, Math.floor(k / 2) - 1, Math.floor(k / 2), Math.round(k / 3), Math.round(k / 4)]) {
      counts.add(j)
      counts.add(k - j)
    }
  const { capM2 } = context
  const targets: number[] = []
  if (k <= mostLoadPours)
    for (const fullM2 of context.loads?.fullTruckM2 ?? []) if (fullM2 <= capM2) targets.push(fullM2, areaM2 - fullM2)
  for (const j of counts) {
    if (j < 1 || j >= k) continue
    targets.push((j * areaM2) / k)
    const low = areaM2 - (k - j) * capM2
    const high = j * capM2
    if (k <= 8 && high - low > 0.05 * capM2)
      targets.push(low + 1e-6 * capM2, high - 1e-6 * capM2, low + (high - low) / 3, low + ((high - low) * 2) / 3)
  }
  return targets.sort((a, b) => a - b).filter((t, i) => t > 0 && (i === 0 || t - targets[i - 1]! > 1e-7 * capM2))
}

/**
 * Slides a cut between two offsets until its upper face has the target area. The area falls by the length of the cut
 * as the line rises, so that Newton's step is exact on straight edges up to the change of that length.
 */
function slideToArea(
  region: CutRegion,
  direction: Direction,
  from: { readonly offset: number; readonly cut: LineCut },
  to: { readonly offset: number; readonly cut: LineCut },
  targetM2: number,
  context: SearchContext,
): LineCut | null {
  let low = from.offset
  let high = to.offset
  const span = high - low
  const l0 = from.cut.lengthM
  const slope = (to.cut.lengthM - l0) / span
  const drop = from.cut.measure.upAreaM2 - targetM2
  const root = Math.sqrt(Math.max(0, l0 * l0 + 2 * slope * drop))
  let s = l0 + root > 0 ? low + (2 * drop) / (l0 + root) : (low + high) / 2
  const t0 = Math.max(from.cut.t0, to.cut.t0)
  const t1 = Math.min(from.cut.t1, to.cut.t1)
  let best: LineCut | null = null
  let bestOff = Number.POSITIVE_INFINITY
  for (let step = 0; step < 24; step++) {
    if (!(s > low && s < high)) s = (low + high) / 2
    const cut = cutContinuing(region, direction, s, t0, t1, from.cut, context)
    if (!cut) return best
    const off = cut.measure.upAreaM2 - targetM2
    if (Math.abs(off) < bestOff) {
      best = cut
      bestOff = Math.abs(off)
    }
    if (bestOff < 1e-11 * region.areaM2 || high - low < 1e-12) break
    if (off > 0) low = s
    else high = s
    s += off / cut.lengthM
  }
  return bestOff < 1e-7 * context.capM2 ? best : null
}

/** What the upper face may measure: [A − (k − j)·cap, j·cap] for each j. */
function areaWindows(areaM2: number, k: number, capM2: number): (readonly [number, number])[] {
  const windows: (readonly [number, number])[] = []
  const slack = 1e-9 * capM2
  for (let j = 1; j < k; j++) {
    const low = areaM2 - (k - j) * capM2
    const high = j * capM2
    if (high + slack >= low) windows.push([low - slack, high + slack])
  }
  return windows
}

interface Family {
  readonly low: LineCut
  readonly high: LineCut
}

export function candidateCuts(
  region: CutRegion,
  k: number,
  directions: readonly Direction[],
  context: SearchContext,
): Candidate[] {
  const list = new CandidateList(region, k, context)
  const targets = targetAreas(region.areaM2, k, context)
  const windows = areaWindows(region.areaM2, k, context.capM2)
  const holes = region.rings.length - 1
  const affordable =
    k <= context.mostTurnedPours && context.work.done <= context.workLimit && context.workLimit >= leastTurnedBudget
  const turned = affordable && holes > 0 && holes <= mostTurnedHoles ? new TurnedCuts(region, context) : null
  for (const [index, direction] of directions.entries()) {
    const addAll = (offset: number, onIsAbove: boolean, atTouch: AtTouch): void => {
      for (const cut of cutsOnLine(region, direction, offset, onIsAbove, context, atTouch))
        list.add(cut, direction, index)
    }
    const special = specialOffsets(region, direction, k, context)
    for (const offset of special.onVertices) {
      for (const onIsAbove of [true, false]) {
        addAll(offset, onIsAbove, 'inside')
        turned?.addLine(direction, offset, onIsAbove, index)
      }
    }
    for (const offset of special.middles) turned?.addLine(direction, offset, true, index)
    const critical = criticalOffsets(region, direction)
    for (let i = 0; i + 1 < critical.length; i++) {
      const gap = critical[i + 1]! - critical[i]!
      const inset = Math.min(gap / 4, insetM + 1e-6 * gap)
      const from = critical[i]! + inset
      const to = critical[i + 1]! - inset
      turned?.addInterval(direction, from, to, index)
      const lows = cutsOnLine(region, direction, from, true, context)
      const highs = cutsOnLine(region, direction, to, true, context)
      const families: Family[] = []
      for (const low of lows) {
        const high = continuing(highs, low)
        if (!high) continue
        const least = high.measure.upAreaM2
        const most = low.measure.upAreaM2
        if (windows.some(([a, b]) => a <= most && b >= least)) families.push({ low, high })
      }
      if (families.length === 0) continue
      for (const offset of special.between) if (offset > from && offset < to) addAll(offset, true, 'drop')
      for (const { low, high } of families)
        for (const target of targets) {
          if (target >= low.measure.upAreaM2 || target <= high.measure.upAreaM2) continue
          const cut = slideToArea(
            region,
            direction,
            { offset: from, cut: low },
            { offset: to, cut: high },
            target,
            context,
          )
          if (cut) list.add(cut, direction, index)
        }
    }
  }
  const fewPours = context.pours <= mostPivotPours
  if (k <= mostCornerPours)
    for (const { direction, offset, ring, side } of cornerLines(region, directions, fewPours))
      for (const cut of cutsOnLine(region, direction, offset, true, context, 'inside'))
        if (cut.chain.some(({ a, b }) => [a, b].some(end => end.vertex && end.ring === ring && end.side === side)))
          list.add(cut, direction, directions.length)
  if (fewPours)
    for (const { cut, direction, family } of pivotCuts(region, directions, windows, context))
      list.add(cut, direction, family)
  if (turned) {
    const shares = Array.from({ length: k - 1 }, (_, j) => ((j + 1) * region.areaM2) / k)
    for (const { cut, direction, family } of turned.cuts(shares)) list.add(cut, direction, family)
  }
  return list.found.sort((a, b) => a.estimate - b.estimate)
}
