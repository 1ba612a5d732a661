import { describe, expect, it } from 'vitest'
import type { Plan } from '../../core/plan/plan'
import { printPlanJson } from '../../core/plan/printPlanJson'
import { redatePour } from '../../core/pours/editing/changePour'
import { dayNumber, pourHoursOn, weekdayOf } from '../../core/pours/order/workCalendar'
import { pourAdjacency } from '../../core/pours/pourAdjacency'
import { courtMaps } from '../../core/reports/courtMaps'
import { planSheetData } from '../../core/reports/planSheetData'
import type { Site } from '../../shared/document/site'
import { PlanJson } from '../../shared/planJson'
import { orderCodes } from '../../shared/problem'
import { acceptedSite, at, bareSite, ftM, plan } from '../jointEditing/acceptedSlab'
import { planOf, sampleSite } from '../plan/sampleSite'
import { circle, reversed } from '../pours/shapes'

const strip = (lengthFt: number) =>
  [
    [0, 0],
    [lengthFt, 0],
    [lengthFt, 30],
    [0, 30],
  ] as const
const everyDay = [1, 2, 3, 4, 5, 6, 7]
const access = { truckSpots: [], pumpSpots: [], washouts: [], noGo: [], chuteReachM: 5, ways: [] }
const workDays = {
  plantHours: [{ weekdays: [1, 2, 3, 4, 5], from: '06:00', to: '16:00' }],
  noiseHours: [],
  weatherDays: 0,
}
const crew = { hands: 6, experience: 'steady' as const, crews: 1, daysOff: [] as string[] }

const fence = (points: readonly (readonly [number, number])[]): Site['casters'][number] => ({
  id: 'c900',
  name: 'Fence',
  kind: 'wall',
  line: points.map(([x, y]) => at(x, y)),
  baseM: 0,
  topM: 2,
  solidity: 1,
})

const problemsOf = (site: Site) =>
  plan(site).problems.filter(({ code }) => (orderCodes as readonly string[]).includes(code))

let known: Plan | undefined
const court = (): Plan => {
  known ??= planOf(sampleSite('school-court'), { date: '2026-07-06' })
  return known
}

describe('two pours a day by one crew', () => {
  // Three pours in a row: the outer two share a day, and a wall at one end throws shade in the morning or after noon.
  const twoADay = (wallFt: number, settings = {}) => ({
    ...bareSite(strip(90)),
    nextId: 1000,
    casters: [
      fence([
        [wallFt, -30],
        [wallFt, 60],
      ]),
    ].map(wall => ({ ...wall, topM: 5 })),
    settings: { poursPerCrewDay: 2, ...settings },
  })
  const fullDay = (site: Site) => {
    const { pours, days } = plan(site)
    const order = days
      .find(({ pourIds }) => pourIds.length === 2)!
      .pourIds.map(id => pours.find(pour => pour.id === id)!)
    return order.map(({ region, firstTruck }) => ({
      isEast: region.outer.some(({ from: [x] }) => x > 80 * ftM),
      firstTruck,
    }))
  }

  it('the one that stands in shade in the morning goes first, the one that does after noon goes last', () => {
    const isEastFirst = (site: Site, northDeg: number) =>
      fullDay({ ...site, place: { ...site.place, northDeg } }).map(({ isEast }) => isEast)
    expect(isEastFirst(twoADay(91), 0)).toEqual([true, false])
    expect(isEastFirst(twoADay(-1), 0)).toEqual([true, false])
    // Turned half around, the morning's shade lies at the other end.
    expect(isEastFirst(twoADay(91), 180)).toEqual([false, true])
    expect(isEastFirst(twoADay(-1), 180)).toEqual([false, true])
  })

  it('the second begins when the first is done', () => {
    const [first, second] = fullDay(twoADay(91))
    expect(first!.firstTruck).toBeUndefined()
    // By the settings: 900 ft² placed at the most one screed does, and the last mat 3 h after, from 7 o'clock on.
    expect(second!.firstTruck).toBe('11:30')
  })

  it('one pour a day has no turns, whatever the sun', () => {
    const site = { ...twoADay(91), settings: {} }
    expect(plan(site).order.terms.find(({ term }) => term === 'sun')!.value).toBe(0)
    expect(plan(site).pours.every(({ firstTruck }) => firstTruck === undefined)).toBe(true)
  })
})

describe('the days of a site', () => {
  it('fall on days when the plant delivers, never on a weekend or a day off', () => {
    const site = { ...bareSite(strip(240)), calendar: workDays, crew: { ...crew, daysOff: ['2026-07-22'] } }
    const dates = plan(site).days.map(({ date }) => date!)
    expect(dates).toEqual([...dates].sort())
    expect(dates.length).toBe(8)
    expect(dates).not.toContain('2026-07-22')
    for (const date of dates) expect(weekdayOf(dayNumber(date))).toBeLessThanOrEqual(5)
  })

  it('know the weekday of a date', () => {
    expect(weekdayOf(dayNumber('2000-01-01'))).toBe(6)
    expect(weekdayOf(dayNumber('2026-07-21'))).toBe(2)
    expect(weekdayOf(dayNumber('1969-12-31'))).toBe(3)
  })

  it('have the hours that plant and noise leave in common', () => {
    const rules = {
      plantHours: [{ weekdays: [1], from: '06:00', to: '16:00' }],
      noiseHours: [{ weekdays: everyDay, from: '07:00', to: '19:00' }],
      daysOff: [],
      usual: { fromMin: 420, toMin: 960 },
    }
    expect(pourHoursOn(rules, dayNumber('2026-07-20'))).toEqual({ fromMin: 420, toMin: 960 })
    expect(pourHoursOn(rules, dayNumber('2026-07-21'))).toBeNull()
  })

  it('print as the published JSON, every pour once', () => {
    const derived = court()
    const json = PlanJson.parse(printPlanJson(derived))
    expect(json.days.flatMap(({ pourIds }) => pourIds)).toEqual(json.pours.map(({ id }) => id))
    expect([...json.pours.map(({ order }) => order)]).toEqual(json.pours.map((_, i) => i + 1))
    for (const { day, date, pourIds } of json.days)
      for (const id of pourIds) expect(json.pours.find(p => p.id === id)).toMatchObject({ day, date })
    for (const { date, afterTasks } of json.days) for (const task of afterTasks) expect(task.date >= date!).toBe(true)
    const neverAllClosed = json.days.every(({ closedWayIds }) => closedWayIds.length < 5)
    expect(neverAllClosed).toBe(true)
    expect(json.order.proven).toBe(true)
  })

  it('are drawn with their closed doors', () => {
    const maps = courtMaps(planSheetData(court()))
    const text = maps.map(({ svg }) => svg).join('')
    expect(maps.length).toBe(4)
    for (const door of ['North doors', 'Library door', 'West door', 'East door', 'South gate'])
      expect(text).toContain(door)
    expect(text).toContain('East door closed')
    expect(text).not.toContain('NaN')
  })

  it('wash, open and pull forms after their waits', () => {
    const site = { ...bareSite(strip(20)), calendar: workDays, settings: { washReleaseH: 48, pourDoneH: 14 } }
    const [day] = plan(site).days
    const dateOf = (task: string) => day!.afterTasks.find(row => row.task === task)
    expect(dateOf('pullForms')).toMatchObject({ date: '2026-07-22', time: '07:00', blocks: 'neighbors' })
    expect(dateOf('washRelease')).toMatchObject({ date: '2026-07-23', time: '14:00' })
    expect(dateOf('openToFeet')).toMatchObject({ date: '2026-07-22', time: '14:00', blocks: 'feet' })
    expect(dateOf('openToCars')).toMatchObject({ date: '2026-07-28', blocks: 'cars' })
  })

  it('give a border poured alone a day of its own, before or after the field', () => {
    for (const placed of ['before', 'after'] as const) {
      const bare = bareSite(strip(40))
      const slab = bare.slabs[0]!
      const border = {
        id: 'b901',
        pathId: slab.outline.id,
        edges: 'all' as const,
        widthM: 0.4572,
        finishId: slab.finishId,
        placed,
      }
      const site = { ...bare, nextId: 1000, slabs: [{ ...slab, borders: [border] }] }
      const { pours } = plan(site)
      const days = (part: string) => pours.filter(p => p.part === part).map(({ day }) => day)
      if (placed === 'before') expect(Math.max(...days('border'))).toBeLessThan(Math.min(...days('field')))
      else expect(Math.min(...days('border'))).toBeGreaterThan(Math.max(...days('field')))
    }
  })
})

describe('pours that share an arc', () => {
  it('touch along it', () => {
    const ring = circle(0, 0, 20)
    const band = { outer: circle(0, 0, 22), holes: [reversed(circle(0, 0, 20))] }
    const { pairs, openM } = pourAdjacency([
      { id: 'field', region: { outer: ring, holes: [] } },
      { id: 'border', region: band },
    ])
    expect(pairs.length).toBe(1)
    expect(pairs[0]!.lengthM).toBeCloseTo(2 * Math.PI * 20 * ftM, 6)
    expect(openM.get('field')).toBeCloseTo(0, 6)
  })
})

describe('what was accepted', () => {
  const dated = (): Site => {
    const site = { ...acceptedSite(strip(90)), calendar: workDays }
    const ids = site.accepted[0]!.pours.map(({ id }) => id)
    return ids.reduce((s, id, i) => {
      const next = redatePour(s, id, { date: `2026-07-2${i + 1}`, order: i + 1 })
      if (!next.ok) throw new Error('refused')
      return next.value as typeof site
    }, site)
  }

  it('stands, and a note tells what the planner would do', () => {
    const site = dated()
    const derived = plan({ ...site, access: { ...access, truckSpots: [{ id: 't901', at: at(0, 15) }] }, nextId: 1000 })
    expect(derived.pours.map(({ date }) => date)).toEqual(['2026-07-21', '2026-07-22', '2026-07-23'])
    const xs = derived.pours.map(({ region }) => Math.min(...region.outer.map(({ from }) => from[0])))
    const isFarFirst = xs[0]! > xs[2]!
    expect(derived.problems.some(({ code }) => code === 'orderDiffers')).toBe(!isFarFirst)
  })

  it('is told where it breaks a rule', () => {
    const site = dated()
    const [first, second, third] = site.accepted[0]!.pours
    const sunday = redatePour(site, first!.id, { date: '2026-07-19' })
    if (!sunday.ok) throw new Error('refused')
    expect(problemsOf(sunday.value).map(({ code }) => code)).toContain('notPourDay')
    const together = redatePour(site, second!.id, { date: '2026-07-21' })
    const sameDay = together.ok ? redatePour(together.value, third!.id, { date: '2026-07-21' }) : together
    if (!sameDay.ok) throw new Error('refused')
    const codes = problemsOf(sameDay.value).map(({ code }) => code)
    expect(codes).toContain('neighborTooYoung')
    expect(codes).toContain('crewOverDay')
  })
})

describe('what cannot be', () => {
  it('a slab that nobody gets onto', () => {
    const walls = fence([
      [-0.3, -0.3],
      [60.3, -0.3],
      [60.3, 30.3],
      [-0.3, 30.3],
      [-0.3, -0.3],
    ])
    const site = { ...bareSite(strip(60)), nextId: 1000, casters: [walls] }
    const [problem] = problemsOf(site)
    expect(problem).toMatchObject({ code: 'accessNowhere' })
    expect(problem!.hint).toMatch(/way in and out/)
    const withGate = { ...site, access: { ...access, ways: [{ id: 'g901', at: at(30, 0), widthM: 2, open: [] }] } }
    expect(problemsOf(withGate)).toEqual([])
  })

  it('an island that only one of two slabs can be reached on', () => {
    const site = bareSite(strip(40))
    const other = bareSite([
      [100, 0],
      [140, 0],
      [140, 30],
      [100, 30],
    ])
    const renamed = JSON.parse(JSON.stringify(other.slabs[0]).replaceAll(/"([a-z])(\d+)"/g, '"$18$2"'))
    const walls = fence([
      [99.7, -0.3],
      [140.3, -0.3],
      [140.3, 30.3],
      [99.7, 30.3],
      [99.7, -0.3],
    ])
    const both = {
      ...site,
      nextId: 1000,
      slabs: [...site.slabs, { ...renamed, finishId: site.slabs[0]!.finishId }],
      casters: [walls],
    }
    const found = problemsOf(both).filter(({ code }) => code === 'pourUnreachable')
    expect(found.length).toBe(2)
    for (const { hint } of found) expect(hint).toMatch(/open ground/)
    expect(plan(both).days.flatMap(({ pourIds }) => pourIds).length).toBe(4)
  })

  it('a day on which every door is closed', () => {
    const door = {
      id: 'g901',
      name: 'Kitchen door',
      at: at(10, 30),
      widthM: 1,
      open: [{ weekdays: everyDay, from: '08:00', to: '18:00' }],
    }
    const site = { ...bareSite(strip(20)), nextId: 1000, access: { ...access, ways: [door] } }
    const [problem] = problemsOf(site)
    expect(problem).toMatchObject({ code: 'waysClosed', values: { date: '2026-07-21', until: '2026-07-22' } })
    expect(problem!.message).toContain('Kitchen door')
    expect(problem!.hint).toMatch(/plank/)
    const { name: _, ...unnamed } = door
    const [noName] = problemsOf({ ...site, access: { ...access, ways: [unnamed] } })
    expect(noName!.message).toContain('the way in and out')
    expect(noName!.message).not.toContain('g901')
  })

  it('a finish date that one crew misses: two pours a day or another crew may meet it', () => {
    const base = { ...bareSite(strip(240)), crew }
    const late = { ...base, calendar: { ...workDays, finishBy: '2026-07-28' } }
    const [problem] = problemsOf(late)
    expect(problem).toMatchObject({ code: 'finishLate', values: { finish: '2026-07-31' } })
    expect(problem!.values.twoADay).toBe('2026-07-25')
    expect(problem!.values.secondCrew).toBe('2026-07-25')
    expect(Number(problem!.values.largerM2)).toBeCloseTo((240 * 30 * ftM * ftM) / 5, 6)
    const second = plan({ ...late, crew: { ...crew, crews: 2 } })
    expect(second.problems.some(({ code }) => code === 'finishLate')).toBe(false)
    expect(second.days.length).toBe(4)
    expect(problemsOf({ ...late, calendar: { ...late.calendar, finishBy: '2026-07-31' } })).toEqual([])
    const weather = problemsOf({ ...late, calendar: { ...late.calendar, finishBy: '2026-07-31', weatherDays: 2 } })
    expect(weather[0]).toMatchObject({ code: 'finishLate', values: { finish: '2026-08-04' } })
  })

  it('a finish date that nothing meets', () => {
    const site = { ...bareSite(strip(240)), calendar: { ...workDays, finishBy: '2026-07-01' } }
    const [problem] = problemsOf(site)
    expect(problem).toMatchObject({ code: 'finishLate', values: { twoADay: '', secondCrew: '' } })
    expect(problem!.hint).not.toBe('')
  })

  it('a calendar without a day', () => {
    const site = {
      ...bareSite(strip(40)),
      calendar: { ...workDays, noiseHours: [{ weekdays: [6], from: '08:00', to: '12:00' }] },
    }
    const derived = plan(site)
    expect(derived.problems.map(({ code }) => code)).toContain('noPourDay')
    expect(derived.pours.every(({ date }) => date === null)).toBe(true)
    expect(derived.days.flatMap(({ pourIds }) => pourIds).length).toBe(derived.pours.length)
  })
})
