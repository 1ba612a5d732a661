/** The order of the pours and their days: the computed one, and what was accepted of it. */
import type { Caster } from '../../../shared/document/caster'
import type { Calendar, Crew, Way } from '../../../shared/document/day'
import type { Path } from '../../../shared/document/path'
import type { PourPart } from '../../../shared/document/pours'
import type { Pt } from '../../../shared/document/primitives'
import type { Placed } from '../../../shared/document/slab'
import type { Finding } from '../../../shared/problem'
import { type SettingName, type SettingOverrides, settingValue } from '../../../shared/settings'
import { regionContains } from '../../geometry/contains'
import type { CurveRegion } from '../../geometry/curve'
import type { ResolvedSlab } from '../../geometry/resolvedSlab'
import { printDay } from '../../units/printDay'
import { pourAdjacency } from '../pourAdjacency'
import { toCutRegion } from '../region/cutRegion'
import { insidePoint } from '../region/insidePoint'
import { checkDays } from './checkDays'
import { assignTurns, fillsDay, type OrderSun, turnsOf } from './dayTurns'
import { freshWaits } from './freshWaits'
import type { OrderProblem } from './orderProblem'
import { openGround, wayFronts } from './pourAccess'
import { type OrderAnswer, type OrderBudget, orderBudgets, searchOrder } from './searchOrder'
import type { DaySlot, DaysGround } from './settleDays'
import { type CalendarRules, clockOf, dateOf, dayNumber, pourDays, pourHoursOn } from './workCalendar'

export interface PourToPlan {
  readonly id: string
  readonly number: string
  readonly slabId: string
  readonly part: PourPart
  readonly region: CurveRegion
  readonly areaM2: number
  /** What the document holds of it. */
  readonly order?: number
  readonly date?: string
  readonly isPoured?: boolean
}

export interface SunByHour {
  /** From the start of a typical pour to its last print: the crew's next one starts then. */
  readonly turnMin: number
  /** Hours of direct sun on a pour, by its index, that starts at this minute of the day, until its last print. */
  readonly hoursFrom: (pour: number, startMin: number) => number
}

export interface DaysInput {
  readonly pours: readonly PourToPlan[]
  readonly slabs: readonly ResolvedSlab[]
  readonly casters: readonly Caster[]
  readonly noGo: readonly Path[]
  readonly ways: readonly Way[]
  readonly truckSpots: readonly Pt[]
  readonly crew?: Crew
  readonly calendar?: Calendar
  readonly capM2: number
  /** The first day that may be poured on, `YYYY-MM-DD`. */
  readonly startDate: string
  /** Minute of the day at which a pour is done as long as its day is not planned; the setting `pourDoneH` if left out. */
  readonly usualDoneMin?: number
  /** Sun by the hour of a pour; it is all the same when left out. */
  readonly sun?: SunByHour
  readonly settings?: SettingOverrides
  readonly budget?: 'small' | 'full' | OrderBudget
}

export interface PlacedPour {
  readonly id: string
  /** From 1 over all slabs. */
  readonly order: number
  /** From 1: the days with a pour, counted. */
  readonly day: number
  /** Null where the calendar has no day left. */
  readonly date: string | null
  /** `HH:MM` of the first truck, where a crew has another pour to finish first. */
  readonly firstTruck?: string
}

export interface OrderFigures {
  readonly proven: boolean
  readonly gap: number
  readonly cost: number
  readonly terms: readonly { readonly term: string; readonly value: number }[]
}

export interface DaysPlan {
  readonly pours: readonly PlacedPour[]
  /** What the hours of the days are settled on (`settleDays`). */
  readonly ground: DaysGround
  readonly figures: OrderFigures
  readonly findings: readonly Finding[]
}

/** Open edge a crew needs to get onto a pour (m): 3 ft, common practice, no source. */
const accessM = 0.9144
/** Width to pass at a door (m): 36 in, ADA 2010 Standards §403.5.1. */
const passM = 0.9144
/** Days searched: every pour may have to wait this often for its neighbors. */
const spareDays = 20

const placedOf = (pour: PourToPlan, at: Pt, slabs: readonly ResolvedSlab[]): Placed | null => {
  if (pour.part !== 'border') return null
  const slab = slabs.find(s => s.id === pour.slabId)
  const claims = slab ? [...slab.borders, ...slab.bands, ...slab.insets] : []
  const own = claims.find(c => c.shape.some(region => regionContains(region, at)))
  return own?.placed ?? 'after'
}

export const calendarRules = (
  calendar: Calendar | undefined,
  crew: Crew | undefined,
  setting: (name: SettingName) => number,
): CalendarRules => ({
  plantHours: calendar?.plantHours ?? [],
  noiseHours: calendar?.noiseHours ?? [],
  daysOff: crew?.daysOff ?? [],
  usual: { fromMin: 60 * setting('firstTruckH'), toMin: 60 * (setting('pourDoneH') + 1) },
})

const usualDone = ({ usualDoneMin }: DaysInput, setting: (name: SettingName) => number): number =>
  usualDoneMin ?? 60 * setting('pourDoneH')

interface Ground {
  readonly problem: OrderProblem
  readonly wayIds: readonly string[]
  readonly findings: readonly Finding[]
}

/** Null where every pour starts at the same hour. */
function orderSun(
  { pours, crew, sun }: DaysInput,
  rules: CalendarRules,
  days: readonly number[],
  load: readonly number[],
  perDay: number,
): OrderSun | null {
  if (!sun) return null
  const crews = crew?.crews ?? 1
  const turns = turnsOf(perDay, crews)
  const minutes = days.map(day => {
    const fromMin = pourHoursOn(rules, day)!.fromMin
    return Array.from({ length: turns }, (_, turn) => fromMin + turn * sun.turnMin)
  })
  const starts = [...new Set(minutes.flat())].sort((a, b) => a - b)
  if (starts.length < 2) return null
  return {
    crews,
    startOf: minutes.map(row => row.map(min => starts.indexOf(min))),
    extraH: pours.map((_, i) => {
      if (!fillsDay(load[i]!)) return starts.map(() => 0)
      const hours = starts.map(min => sun.hoursFrom(i, min))
      const least = Math.min(...hours)
      return hours.map(own => own - least)
    }),
  }
}

/** A pour without any way to it is placed all the same, as if it were open: the finding says so. */
function withUnreached(pours: readonly PourToPlan[], open: readonly boolean[], next: readonly (readonly number[])[]) {
  const seen = open.map(Boolean)
  const queue = open.flatMap((o, i) => (o ? [i] : []))
  for (let at = queue.pop(); at !== undefined; at = queue.pop())
    for (const n of next[at]!)
      if (!seen[n]) {
        seen[n] = true
        queue.push(n)
      }
  const nowhere = pours.length > 0 && !open.some(Boolean)
  const findings: Finding[] = nowhere
    ? [{ code: 'accessNowhere', severity: 'check', values: { pours: pours.length }, field: '/access' }]
    : pours.flatMap((pour, i): Finding[] =>
        seen[i]
          ? []
          : [
              {
                code: 'pourUnreachable',
                severity: 'check',
                values: { number: pour.number },
                at: { entityId: pour.id, point: insidePoint(toCutRegion(pour.region)) },
              },
            ],
      )
  return { open: seen.map((s, i) => open[i]! || !s), findings }
}

function posePuzzle(input: DaysInput, rules: CalendarRules, setting: (name: SettingName) => number): Ground {
  const { pours, slabs } = input
  const regions = pours.map(p => p.region)
  const outlines = slabs.map(s => s.outline)
  const index = new Map(pours.map((p, i) => [p.id, i]))
  const next: number[][] = pours.map(() => [])
  for (const { a, b } of pourAdjacency(pours).pairs) {
    next[index.get(a)!]!.push(index.get(b)!)
    next[index.get(b)!]!.push(index.get(a)!)
  }
  const ground = openGround(regions, { outlines, casters: input.casters, noGo: input.noGo }).map(m => m >= accessM)
  const fronts = wayFronts(regions, outlines, input.ways)
  const open = ground.map((o, i) => o || fronts.some(w => w.fronts.some(f => f.pour === i)))
  const reached = withUnreached(pours, open, next)
  const centers = regions.map(region => insidePoint(toCutRegion(region)))
  const placed = pours.map((p, i) => placedOf(p, centers[i]!, slabs))
  const rank = (i: number): number => (placed[i] === 'before' ? 0 : placed[i] === null ? 1 : 2)
  const haulM = centers.map(([x, y]) =>
    input.truckSpots.length === 0 ? 0 : Math.min(...input.truckSpots.map(([tx, ty]) => Math.hypot(x - tx, y - ty))),
  )
  const start = dayNumber(input.startDate)
  const days = pourDays(rules, start, 3 * pours.length + spareDays)
  const wayIds = fronts.map(({ wayId }) => wayId)
  const waits = freshWaits({ days, wayIds, ways: input.ways, settings: input.settings }, usualDone(input, setting))
  const load = pours.map(p => (p.part === 'border' ? Math.min(1, Math.max(0.1, p.areaM2 / input.capM2)) : 1))
  const perDay = Math.max(1, Math.floor((input.crew?.crews ?? 1) * setting('poursPerCrewDay')))
  const sun = orderSun(input, rules, days, load, perDay)
  return {
    findings: reached.findings,
    wayIds,
    problem: {
      ...(sun === null ? {} : { sun }),
      count: pours.length,
      next,
      open: reached.open,
      onGround: ground,
      load,
      perDay,
      haulM,
      after: pours.map((p, i) => pours.flatMap((q, j) => (q.slabId === p.slabId && rank(j) < rank(i) ? [j] : []))),
      days,
      ...waits,
      crossAge: Math.max(1, Math.ceil(setting('openToFeetH') / 24)),
      ways: fronts.map(({ fronts: own }) => ({
        fronts: own,
        leastM: Math.min(
          passM,
          own.reduce((sum, f) => sum + f.widthM, 0),
        ),
      })),
      poured: pours.flatMap((p, i) => (p.isPoured ? [{ pour: i, day: p.date ? dayNumber(p.date) : start - 30 }] : [])),
    },
  }
}

/** The pours of a day, those of an earlier turn first, then far from the trucks first. */
const slotsOf = (answer: OrderAnswer, problem: OrderProblem): DaySlot[] =>
  answer.days.flatMap((today, d) => {
    const far = [...today].sort((a, b) => problem.haulM[b]! - problem.haulM[a]! || a - b)
    const { sun } = problem
    const whole = far.filter(pour => fillsDay(problem.load[pour]!))
    const turns = sun ? assignTurns(whole, sun.startOf[d]!, sun).turns : []
    const turnOf = (pour: number): number => turns[whole.indexOf(pour)] ?? 0
    return far.toSorted((a, b) => turnOf(a) - turnOf(b)).map(pour => ({ pour, day: problem.days[d]! }))
  })

/** When the pours of one day start, minute of the day; null with the day's first truck. In the order given. */
function turnStarts(
  day: number,
  today: readonly number[],
  { load }: OrderProblem,
  { crew, sun }: DaysInput,
  rules: CalendarRules,
) {
  const fromMin = pourHoursOn(rules, day)?.fromMin ?? rules.usual.fromMin
  let placed = 0
  return today.map(pour => {
    const turn = fillsDay(load[pour]!) ? turnsOf(++placed, crew?.crews ?? 1) - 1 : 0
    return turn === 0 || !sun ? null : fromMin + turn * sun.turnMin
  })
}

/** Accepted orders and dates stand; the others take the first days that suit them, in the computed order. */
function keepAccepted(pours: readonly PourToPlan[], computed: readonly DaySlot[], problem: OrderProblem): DaySlot[] {
  const rankOf = new Map(computed.map((s, i) => [s.pour, pours[s.pour]!.order ?? i + 1]))
  const fixed: DaySlot[] = pours.flatMap((p, i) => (p.date !== undefined ? [{ pour: i, day: dayNumber(p.date) }] : []))
  const placed: DaySlot[] = [...fixed]
  const isFixed = new Set(fixed.map(s => s.pour))
  const rest = computed.filter(s => !isFixed.has(s.pour)).sort((a, b) => rankOf.get(a.pour)! - rankOf.get(b.pour)!)
  for (const { pour } of rest) {
    const earlier = placed.filter(s => s.day !== null && problem.after[pour]!.includes(s.pour)).map(s => s.day!)
    const before =
      pours[pour]!.order === undefined
        ? []
        : placed.flatMap(s => {
            const order = pours[s.pour]!.order
            return s.day !== null && order !== undefined && order < pours[pour]!.order! ? [s.day] : []
          })
    const suits = (day: number): boolean => {
      if (earlier.some(d => d >= day) || before.some(d => d > day)) return false
      const today = placed.filter(s => s.day === day)
      if (today.reduce((sum, s) => sum + problem.load[s.pour]!, problem.load[pour]!) > problem.perDay + 1e-6)
        return false
      return !placed.some(
        s => s.day !== null && problem.next[pour]!.includes(s.pour) && Math.abs(s.day - day) < problem.neighborAge,
      )
    }
    placed.push({ pour, day: problem.days.find(suits) ?? null })
  }
  const orderOf = (i: number): number => pours[i]!.order ?? rankOf.get(i) ?? 0
  const never = Number.MAX_SAFE_INTEGER
  // An accepted order stands even against the dates; the dates have findings of their own.
  const byOrder = pours.every(p => p.order !== undefined)
  return placed.sort((a, b) =>
    byOrder
      ? orderOf(a.pour) - orderOf(b.pour)
      : (a.day ?? never) - (b.day ?? never) || orderOf(a.pour) - orderOf(b.pour) || a.pour - b.pour,
  )
}

const describe = (slots: readonly DaySlot[], pours: readonly PourToPlan[]): string =>
  slots
    .map(({ pour, day }) => `${pours[pour]!.number}${day === null ? '' : ` on ${printDay(dateOf(day), 'short')}`}`)
    .join(', ')

function differs(pours: readonly PourToPlan[], kept: readonly DaySlot[], computed: readonly DaySlot[]): Finding[] {
  const dayIn = (slots: readonly DaySlot[], pour: number) => slots.find(s => s.pour === pour)?.day
  const own = kept.filter(s => !pours[s.pour]!.isPoured)
  const sameOrder = own.every((s, i) => s.pour === computed[i]?.pour)
  const sameDays = own.every(s => s.day === dayIn(computed, s.pour))
  if (sameOrder && sameDays) return []
  const last = (slots: readonly DaySlot[]): number => slots.reduce((m, s) => Math.max(m, s.day ?? m), 0)
  return [
    {
      code: 'orderDiffers',
      severity: 'note',
      values: {
        kept: describe(own, pours),
        computed: describe(computed, pours),
        fewerDays: Math.max(0, last(own) - last(computed)),
      },
      field: '/accepted',
    },
  ]
}

/**
 * Order and days of all pours. Neighbors are never poured on one day, each pour is reached without crossing fresh
 * concrete, far from the trucks first; plant hours, noise hours and days off bound the calendar. An accepted order or
 * date stands, and a note tells the difference. The hours of the days are settled afterwards, once it is known when each
 * pour is done. Impossible wishes come back as findings; every pour has its row.
 */
export function planDays(input: DaysInput): DaysPlan {
  const setting = (name: SettingName): number => settingValue(input.settings, name)
  const { pours } = input
  const rules = calendarRules(input.calendar, input.crew, setting)
  const open = pours.filter(p => !p.isPoured)
  // Where everything has its date, the computed days begin with the first of them.
  const dates = open.flatMap(p => (p.date === undefined ? [] : [p.date])).sort()
  const startDate = dates.length > 0 && dates.length === open.length ? dates[0]! : input.startDate
  return planFrom({ ...input, startDate }, rules, setting)
}

function planFrom(input: DaysInput, rules: CalendarRules, setting: (name: SettingName) => number): DaysPlan {
  const { pours } = input
  const { problem, wayIds, findings: reachFindings } = posePuzzle(input, rules, setting)
  const findings: Finding[] = [...reachFindings]
  const budget = typeof input.budget === 'object' ? input.budget : orderBudgets[input.budget ?? 'full']
  // Without a day to pour on, the order is still worth knowing.
  const free = Array.from({ length: 3 * pours.length + spareDays }, (_, i) => dayNumber(input.startDate) + i)
  const dated = problem.days.length > 0 ? searchOrder(problem, budget) : null
  const { sun: _, ...hourless } = problem
  const answer =
    dated ?? searchOrder({ ...hourless, days: free, closedBelow: free.map(() => wayIds.map(() => 0)) }, budget)
  const rest = pours.flatMap((p, i) => (p.isPoured ? [] : [i]))
  if (!dated && rest.length > 0)
    findings.push({
      code: 'noPourDay',
      severity: 'check',
      values: { from: input.startDate },
      field: '/calendar/plantHours',
    })
  const computed: DaySlot[] = answer
    ? slotsOf(answer, dated ? problem : { ...hourless, days: free }).map(s => (dated ? s : { ...s, day: null }))
    : rest.map(pour => ({ pour, day: null }))
  const hasWishes = pours.some(p => p.order !== undefined || p.date !== undefined || p.isPoured)
  const slots = hasWishes
    ? keepAccepted(
        pours,
        [...computed, ...pours.flatMap((p, i) => (p.isPoured ? [{ pour: i, day: null }] : []))],
        problem,
      )
    : computed
  if (hasWishes) {
    findings.push(...differs(pours, slots, computed))
    findings.push(...checkDays(pours, slots, problem, rules))
  }
  const dayNumbers = [...new Set(slots.flatMap(s => (s.day === null ? [] : [s.day])))].sort((a, b) => a - b)
  const dayOf = (day: number | null): number => (day === null ? dayNumbers.length + 1 : dayNumbers.indexOf(day) + 1)
  const firstTrucks = new Map(
    dayNumbers.flatMap(day => {
      const today = slots.flatMap(s => (s.day === day && !pours[s.pour]!.isPoured ? [s.pour] : []))
      return turnStarts(day, today, problem, input, rules).flatMap((min, i) =>
        min === null ? [] : [[today[i]!, clockOf(Math.min(min, 1439))] as const],
      )
    }),
  )
  const placed = slots.map((s, i): PlacedPour => {
    const firstTruck = firstTrucks.get(s.pour)
    return {
      ...{ id: pours[s.pour]!.id, order: i + 1, day: dayOf(s.day), date: s.day === null ? null : dateOf(s.day) },
      ...(firstTruck === undefined ? {} : { firstTruck }),
    }
  })
  if (answer && answer.gap > 0.02)
    findings.push({ code: 'orderGap', severity: 'note', values: { gap: answer.gap, pours: rest.length } })
  return {
    pours: placed,
    ground: {
      ...{ pours: pours.map(({ id, number, areaM2 }) => ({ id, number, areaM2 })), slots, problem, wayIds, rules },
      ...{ ways: input.ways, finishBy: input.calendar?.finishBy, weatherDays: input.calendar?.weatherDays ?? 0 },
      ...{ settings: input.settings, usualDoneMin: usualDone(input, setting) },
    },
    figures: {
      proven: answer?.proven ?? false,
      gap: answer?.gap ?? 1,
      cost: answer?.cost ?? 0,
      terms: Object.entries(answer?.terms ?? {}).map(([term, value]) => ({ term, value })),
    },
    findings,
  }
}
