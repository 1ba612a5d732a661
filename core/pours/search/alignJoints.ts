/** Slides each cut to where other joints end, to re-entrant corners and a little to either side; keeps what is cheaper. */
import { reentrantAboveDeg } from '../pourCost'
import type { CutRegion, Side } from '../region/cutRegion'
import { shiftsToCourses, type WishGround } from '../wishes/wishCost'
import { type Branch, branchesBySize, type CutTree, type JointLine, replaceBranch } from './cutTree'
import { replay } from './replay'
import type { SearchContext } from './searchContext'
import { type PourCosts, treeCost } from './treeCost'

/** Farthest slide (m): 8 ft. */
const farM = 2.4384
/** Slides tried for their own sake (m): 6 in and 2 ft. */
const nudgesM = [0.1524, 0.6096]
const mostShifts = 18
const sweeps = 3

function shiftsOf(
  branch: Branch,
  all: readonly Branch[],
  beside: readonly JointLine[],
  corners: readonly (readonly [number, number])[],
  wishes: WishGround | null,
): number[] {
  const { a, b, lengthM } = branch.chain[0]!
  const nx = -(b.y - a.y) / lengthM
  const ny = (b.x - a.x) / lengthM
  const offset = nx * a.x + ny * a.y
  const shifts: number[] = []
  const add = (x: number, y: number): void => {
    const d = nx * x + ny * y - offset
    if (Math.abs(d) > 1e-4 && Math.abs(d) < farM && !shifts.some(s => Math.abs(s - d) < 1e-6)) shifts.push(d)
  }
  for (const other of all)
    for (const chord of other.chain) {
      add(chord.a.x, chord.a.y)
      add(chord.b.x, chord.b.y)
    }
  for (const { ax, ay, bx, by } of beside) {
    add(ax, ay)
    add(bx, by)
  }
  for (const [x, y] of corners) add(x, y)
  for (const nudge of nudgesM) shifts.push(nudge, -nudge)
  if (wishes) shifts.push(...shiftsToCourses(wishes, a.x, a.y, ny, -nx).filter(d => Math.abs(d) > 1e-4))
  return shifts.sort((p, q) => Math.abs(p) - Math.abs(q)).slice(0, mostShifts)
}

/** The corner at the start of a side; of an arc that bulges inwards its center: a joint meets a round opening squarely. */
const aimsOf = (s: Side): (readonly [number, number])[] => [
  ...(s.slabDeg > reentrantAboveDeg ? [[s.x, s.y] as const] : []),
  ...(s.sweep < 0 ? [[s.cx, s.cy] as const] : []),
]

export function alignJoints(
  slab: CutRegion,
  tree: CutTree,
  context: SearchContext,
  costs: PourCosts,
): { readonly tree: CutTree; readonly cost: number } {
  const corners = slab.rings.flatMap(ring => ring.sides.flatMap(aimsOf))
  let best = tree
  let cost = treeCost(tree, context, costs)
  for (let sweep = 0; sweep < sweeps; sweep++) {
    let improved = false
    const count = branchesBySize(best).length
    for (let i = 0; i < count; i++) {
      if (context.work.done > context.workLimit) return { tree: best, cost }
      const all = branchesBySize(best)
      const branch = all[i]!
      let better: CutTree | null = null
      for (const shift of shiftsOf(branch, all, context.beside, corners, context.wishes)) {
        const moved = replay(branch.region, branch, branch.joint, shift, context, true)
        if (!moved) continue
        const whole = replaceBranch(best, branch, moved)
        const now = treeCost(whole, context, costs, cost - 1e-6)
        if (now < cost - 1e-6) {
          cost = now
          better = whole
        }
      }
      if (better) {
        best = better
        improved = true
      }
    }
    if (!improved) break
  }
  return { tree: best, cost }
}
