/** Makes a tree of cuts again on the true slab: what the search remembered is never trusted as the answer. */
import { type Chord, findChords, type Work } from '../region/chords'
import { isChain, measureCut, splitAtCut } from '../region/cut'
import type { CutRegion } from '../region/cutRegion'
import { type CutTree, isBranch } from './cutTree'
import type { SearchContext } from './searchContext'

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

/**
 * The tree cut again from `region` on, joints numbered from `joint` in preorder; the first cut is moved left by `byM`.
 * Null when a cut finds no place any more or a part outgrows its pours.
 */
export function replay(
  region: CutRegion,
  tree: CutTree,
  joint: number,
  byM: number,
  context: SearchContext,
): CutTree | null {
  const counter = { joint }
  const make = (part: CutRegion, node: CutTree, k: number, shiftM: number): CutTree | null => {
    if (part.areaM2 > k * context.capM2 * capSlack) return null
    if (!isBranch(node)) return context.refuses?.(part) ? null : { pour: part }
    const chain: Chord[] = []
    for (const like of node.chain) {
      const chord = findAgain(part, like, shiftM, context.work)
      if (!chord || context.forbidden?.forbids(chord.a.x, chord.a.y, chord.b.x, chord.b.y, context.work)) return null
      chain.push(chord)
    }
    if (!isChain(chain)) return null
    const measure = measureCut(part, chain)
    if (!measure || measure.upAreaM2 <= 1e-6 || measure.lowAreaM2 <= 1e-6) return null
    const first = counter.joint
    const faces = splitAtCut(part, chain, measure, first)
    counter.joint += chain.length
    const up = make(faces.up, node.up, node.upPours, 0)
    const low = up && make(faces.low, node.low, node.lowPours, 0)
    return low ? { ...node, region: part, chain, measure, up, low, joint: first } : null
  }
  return make(region, tree, Number.POSITIVE_INFINITY, byM)
}
