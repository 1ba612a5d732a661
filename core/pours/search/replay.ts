/** Makes a tree of cuts again on the true slab: what the search remembered is never trusted as the answer. */
import { type Chord, findChordsOfBoth, type Work } from '../region/chords'
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
  for (const chord of findChordsOfBoth(region, ux, uy, offset, work, 'inside')) {
    if (Math.min(chord.t1, t1) <= Math.max(chord.t0, t0)) continue
    const off = Math.abs(chord.t0 - t0) + Math.abs(chord.t1 - t1)
    if (off < least - 1e-9) {
      least = off
      best = chord
    }
  }
  return best
}

/** A point that moved less is where it was (m). */
const sameM = 1e-10

/** The same sides in the same order, on the same joints. */
function isSame(a: CutRegion, b: CutRegion): boolean {
  if (a === b) return true
  if (a.rings.length !== b.rings.length || Math.abs(a.areaM2 - b.areaM2) > 1e-7) return false
  for (let r = 0; r < a.rings.length; r++) {
    const own = a.rings[r]!.sides
    const other = b.rings[r]!.sides
    if (own === other) continue
    if (own.length !== other.length) return false
    for (let i = 0; i < own.length; i++) {
      const s = own[i]!
      const o = other[i]!
      if (s === o) continue
      if (s.joint !== o.joint || Math.abs(s.x - o.x) > sameM || Math.abs(s.y - o.y) > sameM || s.r !== o.r) return false
    }
  }
  return true
}

export const countJoints = (tree: CutTree): number =>
  isBranch(tree) ? tree.chain.length + countJoints(tree.up) + countJoints(tree.low) : 0

/**
 * The tree cut again from `region` on, joints numbered from `joint` in preorder; the first cut is moved left by `byM`.
 * Null when a cut finds no place any more or a part outgrows its pours. With `keep`, parts of a tree made by replay
 * that come out as they were are taken over: only its first cut may be new.
 */
export function replay(
  region: CutRegion,
  tree: CutTree,
  joint: number,
  byM: number,
  context: SearchContext,
  keep = false,
): CutTree | null {
  const counter = { joint }
  const make = (part: CutRegion, node: CutTree, k: number, shiftM: number): CutTree | null => {
    if (part.areaM2 > k * context.capM2 * capSlack) return null
    if (!isBranch(node)) {
      if (keep && isSame(part, node.pour)) return node
      return context.refuses?.(part) ? null : { pour: part }
    }
    if (keep && node !== tree && node.joint === counter.joint && isSame(part, node.region)) {
      counter.joint += countJoints(node)
      return node
    }
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
