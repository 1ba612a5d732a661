/**
 * Turns and slides the joints of a plan by ever smaller steps for as long as it gets cheaper. For slabs where joints
 * need not keep to a few directions: curved ones, and textures without a direction of their own.
 */
import type { Chord, ChordEnd } from '../region/chords'
import type { Chain } from '../region/cut'
import { type Branch, branchesBySize, type CutTree, replaceBranch } from './cutTree'
import { replay } from './replay'
import type { SearchContext } from './searchContext'
import { type PourCosts, treeCost } from './treeCost'

/** The longest steps; fineness is their share. */
const slideM = 0.6096
const turnRad = (8 * Math.PI) / 180
/** A first look at where a plan is heading, and the rest of the way. */
export const coarse = [1]
export const fine = [1, 1 / 4, 1 / 16, 1 / 64]
const sweeps = 3
/** A step must save as much, feet of joint. */
const leastGain = 1e-4
const collinearM = 1e-6

interface Move {
  readonly slideM: number
  readonly turnRad: number
  /** Where it turns about: 0 at the start of the first joint moved, 1 at the end of the last. */
  readonly pivot: number
}

function movesAt(fineness: number): Move[] {
  const moves: Move[] = []
  for (const sign of [1, -1]) {
    moves.push({ slideM: sign * slideM * fineness, turnRad: 0, pivot: 0 })
    for (const pivot of [0, 0.5, 1]) moves.push({ slideM: 0, turnRad: sign * turnRad * fineness, pivot })
  }
  return moves
}

/** Joints of a cut that move as one: all where they lie in line, else each by itself. */
function groupsOf(chain: Chain): (readonly [first: number, last: number])[] {
  const { a, b, lengthM } = chain[0]!
  const off = (p: ChordEnd): number => Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / lengthM
  const inLine = chain.every(chord => off(chord.a) < collinearM && off(chord.b) < collinearM)
  return inLine ? [[0, chain.length - 1]] : chain.map((_, i) => [i, i] as const)
}

function movedChain(chain: Chain, [first, last]: readonly [number, number], move: Move): Chain {
  const from = chain[first]!.a
  const to = chain[last]!.b
  const px = from.x + move.pivot * (to.x - from.x)
  const py = from.y + move.pivot * (to.y - from.y)
  const c = Math.cos(move.turnRad)
  const s = Math.sin(move.turnRad)
  const at = (end: ChordEnd, nx: number, ny: number): ChordEnd => ({
    ...end,
    x: px + c * (end.x - px) - s * (end.y - py) + move.slideM * nx,
    y: py + s * (end.x - px) + c * (end.y - py) + move.slideM * ny,
  })
  return chain.map((chord, i): Chord => {
    if (i < first || i > last) return chord
    const nx = -(chord.b.y - chord.a.y) / chord.lengthM
    const ny = (chord.b.x - chord.a.x) / chord.lengthM
    return { ...chord, a: at(chord.a, nx, ny), b: at(chord.b, nx, ny) }
  })
}

export function turnJoints(
  tree: CutTree,
  cost: number,
  finenesses: readonly number[],
  context: SearchContext,
  costs: PourCosts,
  isConcerned: (cut: Branch) => boolean = () => true,
): { readonly tree: CutTree; readonly cost: number } {
  let best = tree
  let least = cost
  const tryMove = (branch: Branch, group: readonly [number, number], move: Move): CutTree | null => {
    const chain = movedChain(branch.chain, group, move)
    const moved = replay(branch.region, { ...branch, chain }, branch.joint, 0, context, true)
    if (!moved) return null
    const whole = replaceBranch(best, branch, moved)
    const now = treeCost(whole, context, costs, least - leastGain)
    if (now >= least - leastGain) return null
    least = now
    return whole
  }
  const count = branchesBySize(best).length
  for (let sweep = 0; sweep < sweeps; sweep++) {
    const before = least
    for (let i = 0; i < count; i++)
      for (const fineness of finenesses)
        for (;;) {
          if (context.work.done > context.workLimit) return { tree: best, cost: least }
          const branch = branchesBySize(best)[i]!
          if (!isConcerned(branch)) break
          let better: CutTree | null = null
          for (const group of groupsOf(branch.chain))
            for (const move of movesAt(fineness)) better = tryMove(branch, group, move) ?? better
          if (!better) break
          best = better
        }
    if (least > before - leastGain) break
  }
  return { tree: best, cost: least }
}
