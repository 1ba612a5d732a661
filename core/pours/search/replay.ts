/** Makes a tree of cuts again on the true slab: what the search remembered is never trusted as the answer. */
import { type Chord, findChords, type Work } from '../region/chords'
import { type Chain, isChain, measureCut, splitAtCut } from '../region/cut'
import type { CutRegion } from '../region/cutRegion'
import { type Branch, type CutTree, isBranch } from './cutTree'
import type { SearchContext } from './searchContext'

export interface Shift {
  readonly branch: Branch
  /** To the left of the cut's direction. */
  readonly byM: number
}

export interface JointLine {
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
  readonly lengthM: number
}

export interface Replayed {
  readonly tree: CutTree
  readonly pours: CutRegion[]
  /** Joint i of the pours' sides. */
  readonly joints: JointLine[]
  readonly cuts: number
}

const capSlack = 1 + 1e-9

/** The chord of the region on the line of `like`, moved left by `byM`, that comes closest to it. */
function findAgain(region: CutRegion, like: Chord, byM: number, work: Work): Chord | null {
  const ux = (like.b.x - like.a.x) / like.lengthM
  const uy = (like.b.y - like.a.y) / like.lengthM
  const offset = -uy * like.a.x + ux * like.a.y + byM
  const t0 = ux * like.a.x + uy * like.a.y
  const t1 = t0 + like.lengthM
  let best: Chord | null = null
  let least = Number.POSITIVE_INFINITY
  for (const onIsAbove of [true, false])
    for (const chord of findChords(region, ux, uy, offset, onIsAbove, work)) {
      if (Math.min(chord.t1, t1) <= Math.max(chord.t0, t0)) continue
      const off = Math.abs(chord.t0 - t0) + Math.abs(chord.t1 - t1)
      if (off < least - 1e-9) {
        least = off
        best = chord
      }
    }
  return best
}

export function replay(slab: CutRegion, tree: CutTree, shift: Shift | null, context: SearchContext): Replayed | null {
  const pours: CutRegion[] = []
  const joints: JointLine[] = []
  let cuts = 0
  const make = (region: CutRegion, node: CutTree, k: number): CutTree | null => {
    if (region.areaM2 > k * context.capM2 * capSlack) return null
    if (!isBranch(node)) {
      pours.push(region)
      return { pour: region }
    }
    const chain: Chord[] = []
    for (const like of node.chain) {
      const chord = findAgain(region, like, shift?.branch === node ? shift.byM : 0, context.work)
      if (!chord || context.forbids?.(chord.a.x, chord.a.y, chord.b.x, chord.b.y)) return null
      chain.push(chord)
    }
    if (!isChain(chain)) return null
    const measure = measureCut(region, chain)
    if (!measure || measure.upAreaM2 <= 0 || measure.lowAreaM2 <= 0) return null
    const parts = splitAtCut(region, chain, measure, joints.length)
    cuts++
    for (const { a, b, lengthM } of chain) joints.push({ ax: a.x, ay: a.y, bx: b.x, by: b.y, lengthM })
    const up = make(parts.up, node.up, node.upPours)
    if (!up) return null
    const low = make(parts.low, node.low, node.lowPours)
    if (!low) return null
    return { ...node, chain: chain as Chain, measure, up, low }
  }
  const made = make(slab, tree, Number.POSITIVE_INFINITY)
  return made ? { tree: made, pours, joints, cuts } : null
}
