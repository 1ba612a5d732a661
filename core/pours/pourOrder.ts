/** The order of the pours and their days: neighbors never on one day, every pour reached without crossing fresh concrete. */
import type { Pt } from '../../shared/document/primitives'
import type { CurveRegion } from '../geometry/curve'
import { pourAdjacency } from './pourAdjacency'
import { toCutRegion } from './region/cutRegion'
import { insidePoint } from './region/insidePoint'

export interface PourToOrder {
  readonly id: string
  readonly slabId: string
  readonly region: CurveRegion
  readonly areaM2: number
}

export interface OrderInput {
  readonly pours: readonly PourToOrder[]
  /** Pairs of pours that touch; read from the shapes when absent. */
  readonly adjacency?: readonly (readonly [string, string])[]
  readonly poursPerDay: number
  /** Day 1, `YYYY-MM-DD`. */
  readonly startDate?: string
  readonly daysOff?: readonly string[]
  readonly truckSpots?: readonly Pt[]
}

export interface OrderedPour {
  readonly id: string
  /** From 1 over all slabs. */
  readonly order: number
  /** From 1; days off are not counted. */
  readonly day: number
  readonly date: string | null
}

/** Open edge a crew needs to get onto a pour (m): 3 ft, common practice, no source. */
const accessM = 0.9144

function dayAfter(date: string): string {
  const [y, m, d] = date.split('-').map(Number)
  return new Date(Date.UTC(y!, m! - 1, d! + 1)).toISOString().slice(0, 10)
}

/** Dates of days 1, 2, … from the start, days off left out. */
function workingDates(start: string, daysOff: readonly string[], days: number): string[] {
  const dates: string[] = []
  for (let date = start; dates.length < days; date = dayAfter(date)) if (!daysOff.includes(date)) dates.push(date)
  return dates
}

/** True when `from` is joined to the outside over pours that are not fresh today. */
function isReached(
  from: number,
  fresh: ReadonlySet<number>,
  next: readonly number[][],
  open: readonly boolean[],
): boolean {
  const seen = new Set([from])
  const queue = [from]
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    if (open[at]) return true
    for (const n of next[at]!)
      if (!seen.has(n) && !fresh.has(n)) {
        seen.add(n)
        queue.push(n)
      }
  }
  return false
}

/** Far from the trucks first. Every pour appears once; a pour nothing reaches is placed all the same. */
export function orderPours(input: OrderInput): OrderedPour[] {
  const { pours } = input
  const index = new Map(pours.map((p, i) => [p.id, i]))
  const shapes = pourAdjacency(pours)
  const next: number[][] = pours.map(() => [])
  for (const [a, b] of input.adjacency ?? shapes.pairs.map(p => [p.a, p.b] as const)) {
    const i = index.get(a)
    const j = index.get(b)
    if (i === undefined || j === undefined) continue
    next[i]!.push(j)
    next[j]!.push(i)
  }
  const open = pours.map(p => shapes.openM.get(p.id)! >= accessM)
  const centers = pours.map(p => insidePoint(toCutRegion(p.region)))
  const haul = centers.map(([x, y]) =>
    (input.truckSpots ?? []).reduce((least, [tx, ty]) => Math.min(least, Math.hypot(x - tx, y - ty)), 1e9),
  )
  const rest = pours.map((_, i) => i).sort((a, b) => haul[b]! - haul[a]! || a - b)
  const days: number[][] = []
  while (rest.length > 0) {
    const today: number[] = []
    for (const i of [...rest]) {
      if (today.length >= input.poursPerDay) break
      if (today.some(j => next[i]!.includes(j))) continue
      const fresh = new Set([...today, i])
      if ([...fresh].every(j => isReached(j, fresh, next, open))) today.push(i)
    }
    if (today.length === 0) today.push(rest[0]!)
    for (const i of today) rest.splice(rest.indexOf(i), 1)
    days.push(today)
  }
  const dates = input.startDate === undefined ? null : workingDates(input.startDate, input.daysOff ?? [], days.length)
  let order = 0
  return days.flatMap((today, d) =>
    today.map(i => ({ id: pours[i]!.id, order: ++order, day: d + 1, date: dates?.[d] ?? null })),
  )
}
