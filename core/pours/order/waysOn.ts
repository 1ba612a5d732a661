/** Which ways in and out fresh concrete closes, date by date. */
import type { Way } from '../../../shared/document/day'
import type { OrderProblem } from './orderProblem'
import type { DaySlot } from './settleDays'
import { clockOf, dateOf, minutesOf, weekdayOf } from './workCalendar'

export interface ShutDay {
  readonly day: number
  /** Each way needed that day, with the pours in front that close it; none where only its path is closed. */
  readonly closed: readonly { readonly wayId: string; readonly pours: readonly number[] }[]
}

export interface WaysOn {
  readonly closedOn: (day: number) => string[]
  readonly reopen: (day: number) => { wayId: string; date: string; time: string }[]
  /** Days on which every way that is needed is closed. */
  readonly shut: readonly ShutDay[]
}

/**
 * `doneMin` = minute of its day at which each pour is done, by the index of the pour; `usualMin` = the minute at which a
 * way is looked at on a day without hours of its own, `waitMin` = from done until a pour bears feet.
 */
export function waysOn(
  slots: readonly DaySlot[],
  problem: OrderProblem,
  wayIds: readonly string[],
  ways: readonly Way[],
  doneMin: readonly number[],
  usualMin: number,
  waitMin: number,
): WaysOn {
  const dayOf = new Map(slots.flatMap(s => (s.day === null ? [] : [[s.pour, s.day] as const])))
  /** Minutes since day 0 from which a pour bears feet; −∞ before it is poured. */
  const openFrom = (pour: number): number => {
    const own = dayOf.get(pour)
    return own === undefined ? Number.NEGATIVE_INFINITY : own * 1440 + doneMin[pour]! + waitMin
  }
  /** Poured by this day, and not firm at a minute since day 0. */
  const isFreshAt = (pour: number, day: number, atMin: number): boolean =>
    (dayOf.get(pour) ?? Number.POSITIVE_INFINITY) <= day && openFrom(pour) > atMin
  const hoursOf = (wayId: string, day: number) =>
    (ways.find(w => w.id === wayId)?.open ?? []).filter(row => row.weekdays.includes(weekdayOf(day)))
  const neededFrom = (wayId: string, day: number): number | null => {
    const rows = hoursOf(wayId, day)
    return rows.length === 0 ? null : Math.min(...rows.map(row => minutesOf(row.from)))
  }
  const hasGround = problem.onGround.some(Boolean)
  const leadsOut = (start: number, fresh: (pour: number) => boolean): boolean => {
    const seen = new Set([start])
    const queue = [start]
    for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
      if (problem.onGround[at]) return true
      for (const n of problem.next[at]!)
        if (!seen.has(n) && !fresh(n)) {
          seen.add(n)
          queue.push(n)
        }
    }
    return false
  }
  const lookAt = (w: number, day: number, atMin: number): { closed: boolean; pours: number[] } => {
    const { fronts, leastM } = problem.ways[w]!
    const fresh = (pour: number) => isFreshAt(pour, day, atMin)
    const pours = fronts.filter(f => fresh(f.pour)).map(f => f.pour)
    const firm = fronts.filter(f => !fresh(f.pour))
    const roomM = firm.reduce((sum, f) => sum + f.widthM, 0)
    if (roomM < leastM - 1e-6) return { closed: true, pours }
    return { closed: hasGround && !firm.some(f => leadsOut(f.pour, fresh)), pours: [] }
  }
  /** At the first hour of this day at which the way is needed. */
  const look = (w: number, day: number): { closed: boolean; pours: number[] } =>
    lookAt(w, day, day * 1440 + (neededFrom(wayIds[w]!, day) ?? usualMin))
  /** The first minute since day 0 at which nothing poured by this day closes the way. */
  const reopens = (w: number, day: number): number =>
    [...dayOf]
      .flatMap(([pour, own]) => (own <= day ? [openFrom(pour)] : []))
      .sort((a, b) => a - b)
      .find(atMin => atMin > day * 1440 && !lookAt(w, day, atMin).closed) ?? Number.NaN
  const shut: ShutDay[] = []
  const poured = [...new Set(dayOf.values())].sort((a, b) => a - b)
  const waitDays = Math.ceil((Math.max(usualMin, ...doneMin) + waitMin) / 1440)
  const watched = [...new Set(poured.flatMap(day => Array.from({ length: waitDays }, (_, i) => day + i)))]
  for (const day of watched.sort((a, b) => a - b)) {
    const needed = wayIds.flatMap((wayId, w) => (neededFrom(wayId, day) === null ? [] : [{ wayId, w }]))
    if (needed.length === 0) continue
    const looks = needed.map(({ wayId, w }) => ({ wayId, ...look(w, day) }))
    if (looks.every(l => l.closed)) shut.push({ day, closed: looks.map(({ wayId, pours }) => ({ wayId, pours })) })
  }
  return {
    closedOn: day => wayIds.filter((_, w) => look(w, day).closed),
    reopen: day =>
      wayIds.flatMap((wayId, w) => {
        const closes = problem.ways[w]!.fronts.some(f => dayOf.get(f.pour) === day)
        if (!closes || !look(w, day).closed) return []
        const at = reopens(w, day)
        return Number.isFinite(at)
          ? [{ wayId, date: dateOf(Math.floor(at / 1440)), time: clockOf(Math.round(at % 1440)) }]
          : []
      }),
    shut,
  }
}
