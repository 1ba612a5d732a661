import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { OrderProblem } from '../../core/pours/order/orderProblem'
import { orderWeights } from '../../core/pours/order/orderWeights'
import { type OrderAnswer, orderBudgets, searchOrder } from '../../core/pours/order/searchOrder'
import { mulberry32 } from '../geometry/mulberry32'
import { gridPuzzle, randomPuzzle, withSun } from './puzzles'

const must = (answer: OrderAnswer | null): OrderAnswer => {
  if (!answer) throw new Error('no order')
  return answer
}

/** Least crossings of hardened pours on the way in to `pour`, by plain relaxation; Infinity where there is no way. */
function crossingsTo(p: OrderProblem, pour: number, poured: ReadonlySet<number>, fresh: ReadonlySet<number>): number {
  const cost = Array.from({ length: p.count }, (_, i) => (p.open[i] ? 0 : Number.POSITIVE_INFINITY))
  for (let round = 0; round < p.count; round++)
    for (let u = 0; u < p.count; u++) {
      if (fresh.has(u) || u === pour) continue
      for (const v of p.next[u]!) cost[v] = Math.min(cost[v]!, cost[u]! + (poured.has(u) ? 1 : 0))
    }
  return cost[pour]!
}

/** Least hours of sun of a day's pours over every way to line them up, each turn full before the next. */
function sunOf(p: OrderProblem, day: number, today: readonly number[]): number {
  const { sun } = p
  if (!sun) return 0
  const starts = sun.startOf[day]!
  const tryAll = (line: readonly number[], rest: readonly number[]): number =>
    rest.length === 0
      ? line.reduce((sum, i, at) => sum + sun.extraH[i]![starts[Math.floor(at / sun.crews)]!]!, 0)
      : Math.min(
          ...rest.map(i =>
            tryAll(
              [...line, i],
              rest.filter(j => j !== i),
            ),
          ),
        )
  return tryAll([], today)
}

/** The cost of an order, worked out anew; throws where a rule is broken. */
function judge(p: OrderProblem, days: readonly (readonly number[])[]): number {
  const dayOf = new Map<number, number>()
  let cost = 0
  const longest = Math.max(...p.haulM)
  const range = longest - Math.min(...p.haulM)
  days.forEach((today, d) => {
    cost += orderWeights.day
    const date = p.days[d]!
    if (today.length > p.perDay) throw new Error('too many pours in a day')
    const ageOf = (i: number) => (dayOf.has(i) ? date - dayOf.get(i)! : Number.POSITIVE_INFINITY)
    const poured = new Set(dayOf.keys())
    for (const i of today) {
      if (dayOf.has(i)) throw new Error('poured twice')
      if (p.next[i]!.some(j => today.includes(j) || ageOf(j) < p.neighborAge)) throw new Error('neighbor too young')
      if (p.after[i]!.some(j => !dayOf.has(j))) throw new Error('poured too early')
      const fresh = new Set([...today.filter(j => j !== i), ...[...poured].filter(j => ageOf(j) < p.crossAge)])
      const crossed = crossingsTo(p, i, poured, fresh)
      if (crossed === Number.POSITIVE_INFINITY) throw new Error('reached through fresh concrete')
      cost += orderWeights.crossing * crossed
      for (let j = 0; j < p.count; j++)
        if (!poured.has(j) && !today.includes(j) && range > 0)
          cost += (orderWeights.nearFirst * Math.max(0, p.haulM[j]! - p.haulM[i]!)) / range
    }
    cost += orderWeights.sunHour * sunOf(p, d, today)
    const closed = (i: number) => today.includes(i) || ageOf(i) < 2
    if (p.ways.length > 0) {
      const stays = p.ways.some(({ fronts: [front] }) => {
        const seen = new Set([front!.pour])
        for (const at of seen) {
          if (closed(at)) seen.delete(at)
          else for (const n of p.next[at]!) seen.add(n)
        }
        return [...seen].some(i => p.onGround[i] && !closed(i))
      })
      if (!stays) cost += orderWeights.waysShut
    }
    for (const i of today) dayOf.set(i, date)
  })
  if (dayOf.size !== p.count) throw new Error('a pour is missing')
  return cost
}

/** The cheapest cost by trying every sequence of days: for at most five pours. */
function cheapest(p: OrderProblem): number {
  let best = Number.POSITIVE_INFINITY
  const sets = Array.from({ length: 2 ** p.count }, (_, mask) =>
    Array.from({ length: p.count }, (_, i) => i).filter(i => mask & (1 << i)),
  ).filter(set => set.length <= p.perDay)
  const go = (days: number[][], left: number): void => {
    if (left === 0) {
      try {
        best = Math.min(best, judge(p, days))
      } catch {
        // Breaks a rule: no order at all.
      }
      return
    }
    if (days.length * orderWeights.day >= best || days.length > 2 * p.count) return
    for (const set of sets) {
      if (set.some(i => days.some(day => day.includes(i)))) continue
      if (set.length === 0 && (days.length === 0 || days.at(-1)!.length === 0)) continue
      go([...days, set], left - set.length)
    }
  }
  go([], p.count)
  return best
}

describe('the order of the pours', () => {
  it('is the cheapest of all where every one can be tried', () => {
    const random = mulberry32(11)
    for (let k = 0; k < 40; k++) {
      const p = randomPuzzle(random, 2 + (k % 4), 1 + (k % 2), 1 + (k % 3 === 0 ? 1 : 0))
      const answer = must(searchOrder(p, orderBudgets.full))
      expect(answer.proven).toBe(true)
      expect(answer.cost).toBeCloseTo(judge(p, answer.days), 6)
      expect(answer.cost).toBeCloseTo(cheapest(p), 6)
    }
  })

  it('is the cheapest of all with sun by the hour too, two turns a day or two crews of two', () => {
    const random = mulberry32(12)
    for (let k = 0; k < 12; k++) {
      const [crews, turns] = k % 3 === 0 ? [2, 2] : k % 3 === 1 ? [1, 3] : [1, 2]
      const p = withSun(randomPuzzle(random, 2 + (k % 4), crews * turns, 1), random, crews, turns)
      const answer = must(searchOrder(p, orderBudgets.full))
      expect(answer.proven).toBe(true)
      expect(answer.cost).toBeCloseTo(judge(p, answer.days), 6)
      expect(answer.cost).toBeCloseTo(cheapest(p), 6)
    }
  })

  it('has every pour once, keeps limits and ages, and leads through no fresh concrete', { timeout: 40_000 }, () => {
    fc.assert(
      fc.property(
        fc.nat(1e6),
        fc.integer({ min: 1, max: 24 }),
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 1, max: 3 }),
        (seed, n, m, age) => {
          const p = randomPuzzle(mulberry32(seed), n, m, age)
          const answer = must(searchOrder(p, orderBudgets.small))
          expect(answer.cost).toBeCloseTo(judge(p, answer.days), 6)
          const sum = Object.values(answer.terms).reduce((s, v) => s + v, 0)
          expect(sum).toBeCloseTo(answer.cost, 6)
          expect(answer.bound).toBeLessThanOrEqual(answer.cost + 1e-9)
          expect(answer.gap).toBeCloseTo((answer.cost - answer.bound) / Math.max(answer.cost, 1e-9), 9)
        },
      ),
      { seed: 7, numRuns: 150 },
    )
  })

  it('is proven up to twelve pours, with two crews and old neighbors too', () => {
    for (const perDay of [1, 2])
      for (const age of [1, 2]) {
        const p = gridPuzzle(4, 3, { perDay, neighborAge: age, crossAge: age })
        const answer = must(searchOrder(p, orderBudgets.full))
        expect(answer.proven).toBe(true)
        expect(answer.cost).toBeCloseTo(judge(p, answer.days), 6)
        expect(answer.work).toBeLessThan(100_000)
      }
  })

  it('is proven up to twelve pours with sun by the hour, and its gap is told on 24', () => {
    const random = mulberry32(5)
    for (const [crews, turns] of [
      [1, 2],
      [2, 2],
    ] as const) {
      const p = withSun(gridPuzzle(4, 3, { perDay: crews * turns }), random, crews, turns)
      const answer = must(searchOrder(p, orderBudgets.full))
      expect(answer.proven).toBe(true)
      expect(answer.cost).toBeCloseTo(judge(p, answer.days), 6)
    }
    const large = withSun(gridPuzzle(6, 4, { perDay: 2 }), random, 1, 2)
    const answer = must(searchOrder(large, orderBudgets.full))
    expect(answer.cost).toBeCloseTo(judge(large, answer.days), 6)
    expect(answer.bound).toBeLessThanOrEqual(answer.cost)
    expect(answer.gap).toBeLessThan(0.1)
  })

  it('lies within 2 % of the bound on 55 pours, and says the same each time', () => {
    for (const perDay of [1, 2]) {
      const p = gridPuzzle(11, 5, { perDay })
      const answer = must(searchOrder(p, orderBudgets.full))
      expect(answer.gap).toBeLessThan(0.02)
      expect(answer.cost).toBeCloseTo(judge(p, answer.days), 6)
      expect(searchOrder(p, orderBudgets.full)).toEqual(answer)
    }
  })

  it('goes from far to near when nothing speaks against it', () => {
    const answer = must(searchOrder(gridPuzzle(1, 6), orderBudgets.full))
    expect(answer.days).toEqual([[5], [4], [3], [2], [1], [0]])
  })

  it('waits for a header to be pulled: three days between neighbors of age three', () => {
    const p = gridPuzzle(2, 1, { neighborAge: 3, days: Array.from({ length: 20 }, (_, i) => i) })
    expect(must(searchOrder(p, orderBudgets.full)).days.map(day => day.length)).toEqual([1, 0, 0, 1])
  })

  it('counts a weekend as age', () => {
    const p = gridPuzzle(2, 1, { neighborAge: 3, days: [8, 11, 12] })
    expect(must(searchOrder(p, orderBudgets.full)).days.map(day => day.length)).toEqual([1, 1])
  })

  it('starts from what is poured', () => {
    const p = gridPuzzle(3, 1, { poured: [{ pour: 1, day: 0 }], perDay: 2 })
    expect(must(searchOrder(p, orderBudgets.full)).days).toEqual([[2, 0]])
  })

  it('keeps one of two doors usable', () => {
    const door = (pour: number) => ({ fronts: [{ pour, widthM: 2 }], leastM: 0.9 })
    const p = gridPuzzle(4, 1, { ways: [door(0), door(3)], perDay: 2 })
    const answer = must(searchOrder(p, orderBudgets.full))
    expect(answer.terms.waysShut).toBe(0)
    const dayOf = (pour: number) => answer.days.findIndex(day => day.includes(pour))
    expect(Math.abs(dayOf(0) - dayOf(3))).toBeGreaterThan(1)
  })
})
