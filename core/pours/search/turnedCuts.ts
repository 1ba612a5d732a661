/**
 * Cuts around an opening that turn there: one joint from the outline to the opening, another from the opening to the
 * outline, not in line. One of them may slide until the faces have a wanted area.
 */
import { type Chord, findChords } from '../region/chords'
import { type Chain, isChain, measureCut } from '../region/cut'
import type { CutRegion } from '../region/cutRegion'
import { falsePosition, type Tried } from './falsePosition'
import type { LineCut } from './lineCuts'
import type { Direction, SearchContext } from './searchContext'

/** A chord from the outline to an opening. */
export interface Slit {
  readonly chord: Chord
  readonly hole: number
  readonly direction: Direction
  readonly family: number
}

/** Slits of one direction between two offsets, the same rings throughout. */
interface SlitFamily {
  readonly low: Slit
  readonly high: Slit
  readonly from: number
  readonly to: number
}

export interface TurnedCut {
  readonly cut: LineCut
  readonly direction: Direction
  readonly family: number
}

const mostSlits = 16
const mostFixed = 6
const mostFamilies = 8
/** Work of measuring one such cut, in sides visited. */
const turnedWork = 15
/** A tenth of a millimeter. */
const clearM = 1e-4
/** Openings beyond which turned cuts are not tried: large courts are cut by straight lines. */
export const mostTurnedHoles = 4

export const turnedBack = (c: Chord): Chord => ({ a: c.b, b: c.a, lengthM: c.lengthM, t0: c.t0, t1: c.t1 })

export function slitsOnLine(
  region: CutRegion,
  direction: Direction,
  offset: number,
  onIsAbove: boolean,
  family: number,
  context: SearchContext,
): Slit[] {
  return findChords(region, direction.ux, direction.uy, offset, onIsAbove, context.work).flatMap(chord => {
    const { a, b } = chord
    if (a.ring === b.ring || (a.ring !== 0 && b.ring !== 0)) return []
    return a.ring === 0
      ? [{ chord, hole: b.ring, direction, family }]
      : [{ chord: turnedBack(chord), hole: a.ring, direction, family }]
  })
}

const cross = (p: Chord['a'], q: Chord['a'], r: Chord['a']): number =>
  (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)

const doCross = (s: Chord, o: Chord): boolean =>
  cross(s.a, s.b, o.a) * cross(s.a, s.b, o.b) < 0 && cross(o.a, o.b, s.a) * cross(o.a, o.b, s.b) < 0

const isInLine = (s: Chord, o: Chord): boolean =>
  Math.abs(cross(s.a, s.b, o.a)) < 1e-6 * s.lengthM && Math.abs(cross(s.a, s.b, o.b)) < 1e-6 * s.lengthM

export function turnedCut(region: CutRegion, into: Slit, out: Slit, context: SearchContext): LineCut | null {
  context.work.done += turnedWork
  if (into.hole !== out.hole || isInLine(into.chord, out.chord) || doCross(into.chord, out.chord)) return null
  const chain: Chain = [into.chord, turnedBack(out.chord)]
  if (!isChain(chain)) return null
  const measure = measureCut(region, chain)
  return measure && { chain, measure, lengthM: into.chord.lengthM + out.chord.lengthM, t0: 0, t1: 0 }
}

/** Slides the second slit until the upper face has the target area. */
function slideSlit(
  region: CutRegion,
  fixed: Slit,
  { low, high, from, to }: SlitFamily,
  targetM2: number,
  context: SearchContext,
): LineCut | null {
  const cutAt = (slit: Slit | undefined): Tried<LineCut> | null => {
    const cut = slit ? turnedCut(region, fixed, slit, context) : null
    return cut && { found: cut, miss: cut.measure.upAreaM2 - targetM2 }
  }
  const slitAt = (offset: number): Slit | undefined =>
    slitsOnLine(region, low.direction, offset, true, low.family, context).find(
      s => s.hole === low.hole && isLike(s, low),
    )
  return falsePosition(
    { at: from, miss: cutAt(low)?.miss ?? Number.NaN },
    { at: to, miss: cutAt(high)?.miss ?? Number.NaN },
    offset => cutAt(slitAt(offset)),
    1e-10 * region.areaM2,
    30,
  )
}

/** The two run the same way along their line. */
const isLike = (s: Slit, o: Slit): boolean =>
  (s.chord.b.x - s.chord.a.x) * (o.chord.b.x - o.chord.a.x) +
    (s.chord.b.y - s.chord.a.y) * (o.chord.b.y - o.chord.a.y) >
  0

/** The `most` shortest and all that are as short as the last of them, so that a tie is never broken by chance. */
function shortest<T>(items: readonly T[], lengthOf: (item: T) => number, most: number): T[] {
  const sorted = [...items].sort((p, q) => lengthOf(p) - lengthOf(q))
  const last = sorted[most - 1]
  return last ? sorted.filter(item => lengthOf(item) <= lengthOf(last) + 1e-6) : sorted
}

function distinctSlits(slits: readonly Slit[]): Slit[] {
  const kept: Slit[] = []
  for (const s of slits)
    if (!kept.some(k => isSamePoint(k.chord.a, s.chord.a) && isSamePoint(k.chord.b, s.chord.b))) kept.push(s)
  return kept
}

const isSamePoint = (p: Chord['a'], q: Chord['a']): boolean => Math.abs(p.x - q.x) < 1e-5 && Math.abs(p.y - q.y) < 1e-5

export class TurnedCuts {
  private readonly slits: Slit[] = []
  private readonly families: SlitFamily[] = []

  constructor(
    private readonly region: CutRegion,
    private readonly context: SearchContext,
  ) {}

  addLine(direction: Direction, offset: number, onIsAbove: boolean, family: number): void {
    this.slits.push(...slitsOnLine(this.region, direction, offset, onIsAbove, family, this.context))
  }

  /** A family of slits between two offsets, kept clear of them: there slits from other lines may begin. */
  addInterval(direction: Direction, start: number, end: number, family: number): void {
    const from = start + clearM
    const to = end - clearM
    if (from >= to) return
    const highs = slitsOnLine(this.region, direction, to, true, family, this.context)
    for (const low of slitsOnLine(this.region, direction, from, true, family, this.context)) {
      const high = highs.find(h => h.hole === low.hole && isLike(h, low))
      if (high) this.families.push({ low, high, from, to })
    }
  }

  *cuts(targets: readonly number[]): Generator<TurnedCut> {
    const { region, context } = this
    const slits = shortest(distinctSlits(this.slits), s => s.chord.lengthM, mostSlits)
    for (let i = 0; i < slits.length; i++)
      for (let j = i + 1; j < slits.length; j++) {
        const cut = turnedCut(region, slits[i]!, slits[j]!, context)
        if (cut) yield { cut, direction: slits[i]!.direction, family: slits[i]!.family }
      }
    const families = shortest(this.families, f => f.low.chord.lengthM + f.high.chord.lengthM, mostFamilies)
    for (const fixed of shortest(slits, s => s.chord.lengthM, mostFixed))
      for (const family of families)
        for (const target of targets) {
          const cut = slideSlit(region, fixed, family, target, context)
          if (cut) yield { cut, direction: fixed.direction, family: fixed.family }
        }
  }
}
