/** The cheapest order of the pours over the days: exact for few, a beam for many. */
import { assignTurns, fillsDay, type LeastSun, leastSun } from './dayTurns'
import type { OrderProblem } from './orderProblem'
import { Reach, unpoured } from './orderReach'
import { orderWeights } from './orderWeights'

export interface OrderAnswer {
  /** For each day of `problem.days` up to the last one used: the pours of that day; empty on a day of waiting. */
  readonly days: readonly (readonly number[])[]
  readonly cost: number
  readonly terms: {
    readonly days: number
    readonly crossings: number
    readonly nearFirst: number
    readonly waysShut: number
    readonly sun: number
  }
  /** No order can cost less. */
  readonly bound: number
  /** True when no order of these pours is cheaper. */
  readonly proven: boolean
  /** How far the order may be above the cheapest, as a share of its cost; 0 when proven. */
  readonly gap: number
  /** Sets of pours tried. */
  readonly work: number
}

export interface OrderBudget {
  /** Most states kept for each day. */
  readonly beamWidth: number
  /** Fewer are kept where pours are many: this many ÷ pours². */
  readonly beamWork: number
  /** Sets of pours tried from one state of the beam. */
  readonly setsAState: number
  /** More pours than this are not searched exactly. */
  readonly exactPours: number
  /** Sets of pours the exact search may try. */
  readonly exactWork: number
}

export const orderBudgets: Readonly<Record<'small' | 'full', OrderBudget>> = {
  small: { beamWidth: 6, beamWork: 8_000, setsAState: 24, exactPours: 8, exactWork: 40_000 },
  full: { beamWidth: 48, beamWork: 90_000, setsAState: 64, exactPours: 12, exactWork: 4_000_000 },
}

const closeTo = 1e-9

/** What is known after a day; `marks` holds for each pour `unpoured` or for how many days it still counts as fresh. */
interface State {
  readonly marks: Uint8Array
  readonly cost: number
  readonly left: number
  readonly leftLoad: number
  readonly poured: readonly number[]
  readonly parent: State | null
  /** Cost and the least that is still to come. */
  readonly least: number
  readonly crossings: number
  readonly nearFirst: number
  readonly waysShut: number
  /** Hours beyond those of the best starts. */
  readonly sunH: number
}

class Search {
  work = 0
  private readonly reach: Reach
  private readonly publicReach: Reach
  /** Days until a pour no longer matters to its neighbors, its walkers and the ways it fronts. */
  private readonly freshDays: Uint8Array
  private readonly haulShare: number[]
  private readonly anyGround: boolean
  private readonly leastSun: readonly LeastSun[]
  /** Pours by how much a first turn gains them, the most first. */
  private readonly byGain: readonly number[]

  constructor(
    private readonly problem: OrderProblem,
    private readonly budget: OrderBudget,
  ) {
    const { count } = problem
    this.reach = new Reach(problem)
    this.publicReach = new Reach(problem)
    const wayAge = problem.closedBelow.reduce((most, row) => row.reduce((m, age) => Math.max(m, age), most), 0)
    const ownAge = Math.max(problem.neighborAge, problem.crossAge)
    // The public's way to a door leads over pours too: all of them count as fresh as long as a door is closed by one.
    this.freshDays = Uint8Array.from({ length: count }, () => Math.min(200, Math.max(ownAge, wayAge)))
    const longest = problem.haulM.reduce((m, h) => Math.max(m, h), 0)
    const shortest = problem.haulM.reduce((m, h) => Math.min(m, h), longest)
    const range = longest - shortest
    this.haulShare = problem.haulM.map(h => (range > closeTo ? (h - shortest) / range : 0))
    this.anyGround = problem.onGround.some(Boolean)
    this.leastSun = problem.sun ? leastSun(problem.sun) : []
    const gain = ({ first, later }: LeastSun): number => later - first
    this.byGain = this.leastSun
      .map((_, i) => i)
      .sort((a, b) => gain(this.leastSun[b]!) - gain(this.leastSun[a]!) || a - b)
  }

  start(): State {
    const { problem } = this
    const marks = new Uint8Array(problem.count).fill(unpoured)
    for (const { pour, day } of problem.poured)
      marks[pour] = Math.max(0, Math.min(this.freshDays[pour]!, this.freshDays[pour]! - (problem.days[0]! - day)))
    let left = 0
    let leftLoad = 0
    for (let i = 0; i < problem.count; i++)
      if (marks[i] === unpoured) {
        left++
        leftLoad += problem.load[i]!
      }
    const least = left === 0 ? 0 : this.leastToCome(marks, null, leftLoad)
    return {
      marks,
      cost: 0,
      left,
      leftLoad,
      poured: [],
      parent: null,
      least,
      crossings: 0,
      nearFirst: 0,
      waysShut: 0,
      sunH: 0,
    }
  }

  /** 1 where some pour closes every way that is needed on whatever day it is poured, else 0. */
  leastShut(): number {
    const { problem } = this
    const closesAll = (pour: number): boolean =>
      problem.closedBelow.length > 0 &&
      problem.closedBelow.every(
        ages =>
          ages.some(age => age > 0) &&
          problem.ways.every(({ fronts, leastM }, w) => {
            const roomM = fronts.reduce((sum, f) => sum + (f.pour === pour ? 0 : f.widthM), 0)
            return ages[w] === 0 || roomM < leastM - 1e-6
          }),
      )
    const done = new Set(problem.poured.map(({ pour }) => pour))
    return problem.ways.length > 0 && problem.next.some((_, i) => !done.has(i) && closesAll(i)) ? 1 : 0
  }

  private readonly fillsDay = (pour: number): boolean => fillsDay(this.problem.load[pour]!)

  private daysLeft(load: number): number {
    return Math.ceil(load / this.problem.perDay - 1e-6)
  }

  /**
   * No way to pour the rest costs less: days, and the sun where each pour has the best of its starts that has room. More
   * days than needed leave more room in their first turns.
   */
  private leastToCome(marks: Uint8Array, today: readonly number[] | null, leftLoad: number): number {
    const needed = Math.max(1, this.daysLeft(leftLoad))
    const { sun } = this.problem
    if (!sun) return needed * orderWeights.day
    let best = Number.POSITIVE_INFINITY
    for (let days = needed; ; days++) {
      let room = days * sun.crews
      let hours = 0
      for (const i of this.byGain) {
        if (marks[i] !== unpoured || today?.includes(i)) continue
        const { first, later } = this.leastSun[i]!
        hours += Math.min(first, later)
        if (later > first && --room < 0) hours += later - first
      }
      const cost = days * orderWeights.day + orderWeights.sunHour * hours
      if (cost >= best) return best
      best = cost
    }
  }

  /** All states one day on, each handed to `take`. `wide` tries every set of pours, else the likely ones. */
  expand(state: State, day: number, wide: boolean, take: (next: State) => void): void {
    const { problem, reach } = this
    const { count } = problem
    const { marks } = state
    const ageLimit = (own: number) => (i: number) => marks[i] !== unpoured && marks[i]! > this.freshDays[i]! - own
    const isFresh = ageLimit(problem.crossAge)
    const isYoung = ageLimit(problem.neighborAge)
    const isPoured = (i: number) => marks[i] !== unpoured
    reach.flood(problem.open, isFresh, isPoured)
    const ready: number[] = []
    const costOf: number[] = []
    const haulOf: number[] = []
    for (let i = 0; i < count; i++) {
      if (marks[i] !== unpoured || reach.crossings[i]! < 0) continue
      if (problem.next[i]!.some(isYoung) || problem.after[i]!.some(j => marks[j] === unpoured)) continue
      let haul = 0
      for (let j = 0; j < count; j++)
        if (marks[j] === unpoured) haul += Math.max(0, this.haulShare[j]! - this.haulShare[i]!)
      ready.push(i)
      haulOf.push(haul)
      costOf.push(orderWeights.crossing * reach.crossings[i]! + orderWeights.nearFirst * haul)
    }
    const rank = ready.map((_, k) => k).sort((a, b) => costOf[a]! - costOf[b]! || ready[a]! - ready[b]!)
    const crossings = Int32Array.from(ready, i => reach.crossings[i]!)
    const needed = problem.closedBelow[day] ?? []
    const wayIsNeeded = needed.some(age => age > 0)
    const emit = (set: readonly number[]): void => {
      this.work++
      const today = set.map(k => ready[k]!)
      let crossed = 0
      if (today.length > 1 && today.some(i => reach.leadsThrough(i, today))) {
        const other = this.publicReach
        other.flood(problem.open, i => isFresh(i) || today.includes(i), isPoured)
        for (const i of today) {
          if (other.crossings[i]! < 0) return
          crossed += other.crossings[i]!
        }
      } else for (const k of set) crossed += crossings[k]!
      let near = 0
      for (const k of set) {
        near += haulOf[k]!
        for (const other of today) near -= Math.max(0, this.haulShare[other]! - this.haulShare[ready[k]!]!)
      }
      const shut = wayIsNeeded && !this.someWayStays(marks, today, day) ? 1 : 0
      const { sun } = problem
      const sunny = sun ? assignTurns(today.filter(this.fillsDay), sun.startOf[day]!, sun).extraH : 0
      let load = 0
      for (const i of today) load += problem.load[i]!
      const cost =
        state.cost +
        orderWeights.day +
        orderWeights.crossing * crossed +
        orderWeights.nearFirst * near +
        orderWeights.waysShut * shut +
        orderWeights.sunHour * sunny
      const leftLoad = Math.max(0, state.leftLoad - load)
      const left = state.left - today.length
      take({
        marks: this.nextMorning(marks, today, day),
        cost,
        left,
        leftLoad,
        poured: today,
        parent: state,
        least: cost + (left === 0 ? 0 : this.leastToCome(marks, today, leftLoad)),
        crossings: state.crossings + crossed,
        nearFirst: state.nearFirst + near,
        waysShut: state.waysShut + shut,
        sunH: state.sunH + sunny,
      })
    }
    if (marks.some(mark => mark !== unpoured && mark > 0)) emit([])
    this.pickSets(ready, rank, wide, emit)
  }

  /** Sets of pours that do not touch and fit the crews' day. */
  private pickSets(
    ready: readonly number[],
    rank: readonly number[],
    wide: boolean,
    emit: (set: readonly number[]) => void,
  ): void {
    const { next, load, perDay } = this.problem
    const most = wide ? Number.POSITIVE_INFINITY : this.budget.setsAState
    let emitted = 0
    const fits = (set: readonly number[], sum: number, k: number): boolean =>
      sum + load[ready[k]!]! <= perDay + 1e-6 && !set.some(other => next[ready[k]!]!.includes(ready[other]!))
    const pick = (start: number, set: readonly number[], sum: number): void => {
      if (emitted >= most) return
      let full = true
      for (let r = start; r < rank.length; r++) {
        const k = rank[r]!
        if (!fits(set, sum, k)) continue
        full = false
        pick(r + 1, [...set, k], sum + load[ready[k]!]!)
      }
      if (set.length === 0) return
      // The beam fills each day; only the exact search leaves room on purpose.
      if (wide || (full && !rank.slice(0, start).some(k => !set.includes(k) && fits(set, sum, k)))) {
        emitted++
        emit(set)
      }
    }
    pick(0, [], 0)
  }

  private nextMorning(marks: Uint8Array, today: readonly number[], day: number): Uint8Array {
    const { days } = this.problem
    const passed = day + 1 < days.length ? days[day + 1]! - days[day]! : 1
    const next = new Uint8Array(marks)
    for (let i = 0; i < next.length; i++)
      if (next[i] !== unpoured && next[i]! > 0) next[i] = Math.max(0, next[i]! - passed)
    for (const i of today) next[i] = Math.max(0, this.freshDays[i]! - passed)
    return next
  }

  /** True when a way that is needed this day keeps room to pass, and leads over firm ground to the outside. */
  private someWayStays(marks: Uint8Array, today: readonly number[], day: number): boolean {
    const { ways, closedBelow, onGround } = this.problem
    const ages = closedBelow[day]!
    const publicAge = ages.reduce((m, age) => Math.max(m, age), 0)
    const isClosed = (i: number, below: number): boolean =>
      today.includes(i) || (marks[i] !== unpoured && marks[i]! > this.freshDays[i]! - below)
    let flooded = false
    for (const [w, way] of ways.entries()) {
      const below = ages[w]!
      if (below === 0) continue
      const firm = way.fronts.filter(f => !isClosed(f.pour, below))
      if (firm.reduce((sum, f) => sum + f.widthM, 0) < way.leastM - 1e-6) continue
      if (!this.anyGround) return true
      if (!flooded) {
        this.publicReach.flood(
          onGround,
          i => isClosed(i, publicAge),
          () => false,
        )
        flooded = true
      }
      if (firm.some(f => this.publicReach.crossings[f.pour]! >= 0)) return true
    }
    return false
  }

  /** Keys two states alike when the same pours are poured and equally fresh. */
  keyOf(marks: Uint8Array): string {
    return String.fromCharCode(...marks)
  }
}

function answerOf(state: State, bound: number, proven: boolean, work: number): OrderAnswer {
  const days: (readonly number[])[] = []
  for (let at: State | null = state; at?.parent; at = at.parent) days.unshift(at.poured)
  return {
    days,
    cost: state.cost,
    terms: {
      days: orderWeights.day * days.length,
      crossings: orderWeights.crossing * state.crossings,
      nearFirst: orderWeights.nearFirst * state.nearFirst,
      waysShut: orderWeights.waysShut * state.waysShut,
      sun: orderWeights.sunHour * state.sunH,
    },
    bound: proven ? state.cost : bound,
    proven,
    gap: proven || state.cost < closeTo ? 0 : Math.max(0, (state.cost - bound) / state.cost),
    work,
  }
}

const byLeast = (a: State, b: State): number => a.least - b.least || a.cost - b.cost

/** Day by day over the most promising states; orders that cannot beat `known` are left out. */
function beam(search: Search, problem: OrderProblem, width: number, known: State | null): State | null {
  let front: State[] = [search.start()]
  let best: State | null = known
  for (let day = 0; day < problem.days.length && front.length > 0; day++) {
    const found = new Map<string, State>()
    for (const state of front)
      search.expand(state, day, false, next => {
        if (best && next.least >= best.cost - closeTo) return
        if (next.left === 0) {
          best = next
          return
        }
        const key = search.keyOf(next.marks)
        const known = found.get(key)
        if (!known || next.cost < known.cost - closeTo) found.set(key, next)
      })
    front = [...found.values()].sort(byLeast).slice(0, width)
  }
  return best
}

/** True when `a` leaves at least what `b` leaves: the same pours poured, none fresher, at no more cost. */
function dominates(a: State, b: State): boolean {
  if (a.cost > b.cost + closeTo) return false
  for (let i = 0; i < a.marks.length; i++) if (a.marks[i]! > b.marks[i]!) return false
  return true
}

const maskOf = (marks: Uint8Array): number => {
  let mask = 0
  for (let i = 0; i < marks.length; i++) if (marks[i] !== unpoured) mask |= 1 << i
  return mask
}

/** Day by day over all states, those that cannot beat `known` left out. Null when the budget ran out. */
function exact(
  search: Search,
  problem: OrderProblem,
  known: State | null,
  budget: OrderBudget,
): { readonly best: State | null } | null {
  let best = known
  let front: State[] = [search.start()]
  const limit = search.work + budget.exactWork
  for (let day = 0; day < problem.days.length && front.length > 0; day++) {
    const byMask = new Map<number, State[]>()
    for (const state of front) {
      if (search.work > limit) return null
      if (best && state.least >= best.cost - closeTo) continue
      search.expand(state, day, true, next => {
        if (best && next.least >= best.cost - closeTo) return
        if (next.left === 0) {
          best = next
          return
        }
        const mask = maskOf(next.marks)
        const same = byMask.get(mask)
        if (!same) byMask.set(mask, [next])
        else if (!same.some(other => dominates(other, next))) {
          const kept = same.filter(other => !dominates(next, other))
          kept.push(next)
          byMask.set(mask, kept)
        }
      })
    }
    front = [...byMask.values()].flat()
  }
  return { best }
}

/**
 * The cheapest order found; null where no order exists within the days given. Up to `exactPours` pours the answer is
 * proven unless the budget runs out; beyond, `gap` tells how far it may be from the cheapest. The same problem and
 * budget give the same answer on any machine.
 */
export function searchOrder(problem: OrderProblem, budget: OrderBudget): OrderAnswer | null {
  const search = new Search(problem, budget)
  const start = search.start()
  if (start.left === 0) return answerOf(start, 0, true, 0)
  const bound = start.least + search.leastShut() * orderWeights.waysShut
  const width = Math.max(2, Math.min(budget.beamWidth, Math.floor(budget.beamWork / problem.count ** 2)))
  // Most sites have an order at the bound, and a narrow look finds it.
  let first = beam(search, problem, 2, null)
  if (first && first.cost > bound + closeTo) first = beam(search, problem, width, first)
  if (first && first.cost <= bound + closeTo) return answerOf(first, bound, true, search.work)
  if (problem.count <= budget.exactPours) {
    const found = exact(search, problem, first, budget)
    if (found?.best) return answerOf(found.best, bound, true, search.work)
  }
  return first ? answerOf(first, bound, false, search.work) : null
}
