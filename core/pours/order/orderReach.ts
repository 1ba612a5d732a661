/** Paths from the outside to a pour: over unpoured base and hardened pours, never through fresh concrete. */
import type { OrderProblem } from './orderProblem'

/** A pour not yet placed; other values tell how many days a poured one still counts as fresh. */
export const unpoured = 255

/** Buffers of one search, filled anew by each flood. */
export class Reach {
  /** Hardened pours crossed on the way in; −1 where there is no way. */
  readonly crossings: Int32Array
  /** The pour before it on that way; −1 at the outside. */
  readonly from: Int32Array
  private readonly near: Int32Array
  private readonly far: Int32Array

  constructor(private readonly problem: OrderProblem) {
    this.crossings = new Int32Array(problem.count)
    this.from = new Int32Array(problem.count)
    this.near = new Int32Array(problem.count * 2)
    this.far = new Int32Array(problem.count * 2)
  }

  /**
   * One flood from the outside (0-1 breadth first). Blocked pours are arrived at but not gone through; `poured` costs a
   * crossing to go through.
   */
  flood(starts: readonly boolean[], isBlocked: (pour: number) => boolean, isPoured: (pour: number) => boolean): void {
    const { next, count } = this.problem
    const { crossings, from } = this
    crossings.fill(-1)
    let near = this.near
    let far = this.far
    let nears = 0
    let fars = 0
    for (let i = 0; i < count; i++)
      if (starts[i]) {
        crossings[i] = 0
        from[i] = -1
        near[nears++] = i
      }
    for (let level = 0; nears > 0; level++) {
      fars = 0
      for (let k = 0; k < nears; k++) {
        const u = near[k]!
        if (crossings[u] !== level || isBlocked(u)) continue
        const cost = level + (isPoured(u) ? 1 : 0)
        for (const v of next[u]!) {
          const known = crossings[v]!
          if (known >= 0 && known <= cost) continue
          crossings[v] = cost
          from[v] = u
          if (cost === level) near[nears++] = v
          else far[fars++] = v
        }
      }
      const spare = near
      near = far
      far = spare
      nears = fars
    }
  }

  /** True where the way in to a pour leads through one of these. */
  leadsThrough(pour: number, others: readonly number[]): boolean {
    for (let at = this.from[pour]!; at >= 0; at = this.from[at]!) if (others.includes(at)) return true
    return false
  }
}
