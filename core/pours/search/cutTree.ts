/** A plan of pours as the tree of cuts that makes it. */
import type { Chain, CutMeasure } from '../region/cut'
import type { CutRegion } from '../region/cutRegion'
import type { Direction } from './searchContext'

export type CutTree = Leaf | Branch

export interface Leaf {
  readonly pour: CutRegion
}

export interface Branch {
  /** The part this cut divides. */
  readonly region: CutRegion
  readonly chain: Chain
  readonly measure: CutMeasure
  readonly direction: Direction
  readonly upPours: number
  readonly lowPours: number
  readonly up: CutTree
  readonly low: CutTree
  /** Number of the chain's first joint; 0 until the tree is replayed. */
  readonly joint: number
}

export const isBranch = (tree: CutTree): tree is Branch => 'chain' in tree

export function leavesOf(tree: CutTree, out: CutRegion[] = []): CutRegion[] {
  if (isBranch(tree)) {
    leavesOf(tree.up, out)
    leavesOf(tree.low, out)
  } else out.push(tree.pour)
  return out
}

export function branchesOf(tree: CutTree, out: Branch[] = []): Branch[] {
  if (isBranch(tree)) {
    out.push(tree)
    branchesOf(tree.up, out)
    branchesOf(tree.low, out)
  }
  return out
}

/** Branches from the largest part down: an order that turning or mirroring the slab does not change. */
export const branchesBySize = (tree: CutTree): Branch[] =>
  branchesOf(tree).sort((a, b) =>
    Math.abs(a.region.areaM2 - b.region.areaM2) > 1e-6
      ? b.region.areaM2 - a.region.areaM2
      : b.region.perimeterM - a.region.perimeterM,
  )

/** The tree with one branch put in the place of another. */
export function replaceBranch(tree: CutTree, old: Branch, by: CutTree): CutTree {
  if (tree === old) return by
  if (!isBranch(tree)) return tree
  const up = replaceBranch(tree.up, old, by)
  const low = up === tree.up ? replaceBranch(tree.low, old, by) : tree.low
  return up === tree.up && low === tree.low ? tree : { ...tree, up, low }
}

export interface JointLine {
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
  readonly lengthM: number
}

/** Joints in the order of their numbers. */
export function jointsOf(tree: CutTree): JointLine[] {
  const joints: JointLine[] = []
  for (const branch of branchesOf(tree))
    branch.chain.forEach(({ a, b, lengthM }, i) => {
      joints[branch.joint + i] = { ax: a.x, ay: a.y, bx: b.x, by: b.y, lengthM }
    })
  return joints
}
