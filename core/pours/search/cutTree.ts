/** A plan of pours as the tree of cuts that makes it. */

import type { Chain, CutMeasure } from '../region/cut'
import type { CutRegion } from '../region/cutRegion'
import type { Direction } from './searchContext'

export type CutTree = Leaf | Branch

export interface Leaf {
  readonly pour: CutRegion
}

export interface Branch {
  readonly chain: Chain
  readonly measure: CutMeasure
  readonly direction: Direction
  readonly upPours: number
  readonly lowPours: number
  readonly up: CutTree
  readonly low: CutTree
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
