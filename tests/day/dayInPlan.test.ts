/** What the day plan tells the plan of the site: how much at one time, when to start, when it is done. */
import { describe, expect, it } from 'vitest'
import { capsOf } from '../../core/plan/capsOf'
import { dayHolds } from '../../core/plan/dayHolds'
import { createMemo } from '../../core/plan/memo'
import { planCapacityMap } from '../../core/plan/planCapacity'
import { planExposures } from '../../core/plan/planShade'
import { dayConditions } from '../../core/pours/day/dayConditions'
import { hourlyStarts, workSpan } from '../../core/pours/day/workSpan'
import { openHours } from '../../core/pours/provisionalDay'
import { repairPours } from '../../core/pours/replan/repairPours'
import { resolveCaster } from '../../core/sun/resolveCaster'
import { isoWithOffset } from '../../core/sun/siteDay'
import type { Pour } from '../../shared/document/pours'
import type { Site } from '../../shared/document/site'
import { settingValue } from '../../shared/settings'
import { planOf, sampleSite } from '../plan/sampleSite'
import { ft2M2 } from './crewDay'

const accepted = sampleSite('l-patio-accepted')
const { capacity: _, ...uncapped } = { ...accepted, accepted: [] }
const hotDay = (highC: number, lowC: number): Site['conditions'] => ({
  ...{ kind: 'day', date: '2026-07-21', highC, lowC, dewPointC: 12, windMs: 3, sky: 'sunny' },
})
/** The splits matter less here than how many there are. */
const quick = { date: '2026-07-21', budget: 'small' } as const
const hot: Site = { ...uncapped, crew: { ...uncapped.crew!, hands: 4 }, conditions: hotDay(41, 30)! }

describe('the capacity the splitter is held to', () => {
  it('is what the user typed, whatever the crew can do', () => {
    const [own] = planOf({ ...hot, capacity: { capM2: 70 } }, quick).capacities
    expect(own).toMatchObject({ capM2: 70, rule: 'userCap', userM2: 70 })
    expect(own!.crew!.areaM2).toBeLessThan(70)
  })

  it('is common practice without crew or weather', () => {
    const { crew: _c, conditions: _w, ...bare } = uncapped
    expect(planOf(bare).capacities).toEqual([
      {
        ...{ slabId: accepted.slabs[0]!.id, userM2: null, crew: null },
        ...{ rule: 'commonPractice', clock: null, clockMissing: 'crew' },
        capM2: settingValue(undefined, 'capM2'),
        practiceM2: settingValue(undefined, 'capM2'),
      },
    ])
  })

  it('is what this crew takes in this heat where that is less, and every pour keeps to it', () => {
    const plan = planOf(hot, quick)
    const [own] = plan.capacities
    expect(own).toMatchObject({ rule: 'crewAndWeather', capM2: own!.crew!.areaM2 })
    expect(own!.capM2).toBeLessThan(settingValue(undefined, 'capM2'))
    // To whole 5 ft², so that a shade line that moves a little asks for no new split.
    expect((own!.capM2 / ft2M2 / 5) % 1).toBeCloseTo(0, 5)
    expect(plan.pours.length).toBeGreaterThan(2)
    for (const pour of plan.pours) expect(pour.areaM2).toBeLessThanOrEqual(own!.capM2 * (1 + 1e-6))
    expect(plan.dayPlans.every(day => day.capacity.rule === 'crewAndWeather')).toBe(true)
  })

  it('rules accepted pours too: one larger than this crew takes is told of once, by its own day and first truck', () => {
    const { capacity: _c, ...uncappedSite } = accepted
    const [part] = accepted.accepted
    const [{ start: _s, ...first }, ...others] = part!.pours as [Pour, ...Pour[]]
    const site = { ...uncappedSite, accepted: [{ ...part!, pours: [first, ...others] }] }
    const plan = planOf({ ...site, crew: hot.crew!, conditions: hot.conditions! }, quick)
    const told = (code: string) => plan.problems.filter(own => own.code === code)
    const over = plan.pours.filter(pour => pour.areaM2 > plan.capacities[0]!.capM2 * (1 + 1e-9))
    const dateOf = new Map(site.accepted.flatMap(({ pours }) => pours.map(({ id, date }) => [id, date] as const)))
    const today = over.filter(({ id }) => dateOf.get(id) === plan.date)
    expect(today.length).toBeGreaterThan(0)
    expect(over.length).toBeGreaterThan(today.length)
    expect(told('pourOverCap').map(({ at }) => at?.entityId)).toEqual(today.map(({ id }) => id))
    for (const { message } of told('pourOverCap'))
      expect(message).toMatch(/that these 4 hands finish at one time in this weather/)
    // The others by the plan of their day: over what the crew takes then, and short of slack.
    const late = over.filter(({ id }) => {
      const own = plan.dayPlans.find(({ pourId }) => pourId === id)!
      return !today.some(pour => pour.id === id) && own.plan.slackMin < settingValue(undefined, 'wantedSlackMin')
    })
    expect(told('overCrewCapacity')).toHaveLength(late.length)
    for (const { message } of told('overCrewCapacity'))
      expect(message).toMatch(/this crew at this hour and weather takes/)
  })

  it('a pour over what its own day holds is split by that in a repair, and told of no more', () => {
    const { capacity: _c, ...uncappedSite } = accepted
    const [part] = accepted.accepted
    const free = part!.pours.map(pour => ({ ...pour, lock: { shape: false, time: false } }))
    const site = {
      ...uncappedSite,
      accepted: [{ ...part!, pours: free }],
      crew: hot.crew!,
      conditions: hot.conditions!,
    }
    const plan = planOf(site, quick)
    const holds = dayHolds(plan.problems, plan.dayPlans, undefined)
    expect(holds.size).toBeGreaterThan(0)
    const repair = repairPours(site, part!.slabId, part!.part, null, capsOf(site, plan.capacities), holds)
    if (!repair.ok) throw new Error(JSON.stringify(repair.error))
    expect(repair.value.deeds.map(({ does }) => does)).toEqual([...holds].map(() => 'pourSplit'))
    const after = planOf(repair.value.site, quick)
    expect(after.pours).toHaveLength(plan.pours.length + holds.size)
    for (const [id, dayM2] of holds) {
      expect(after.pours.find(pour => pour.id === id)!.areaM2).toBeLessThanOrEqual(dayM2 * (1 + 1e-9))
      expect(after.problems.filter(({ code, at }) => code === 'overCrewCapacity' && at?.entityId === id)).toEqual([])
    }
  })

  it('stays common practice with a check where the crew’s answer is no pour at all', () => {
    const plan = planOf(
      { ...hot, crew: { ...hot.crew!, hands: 3, experience: 'new' }, conditions: hotDay(49, 44)! },
      quick,
    )
    const [own] = plan.capacities
    expect(own).toMatchObject({ rule: 'commonPractice', capM2: settingValue(undefined, 'capM2') })
    expect(plan.problems.find(({ code }) => code === 'capacityBelowLeast')?.message).toMatch(
      /^3 hands at the usual start take about \d+ ft² of this slab in that weather: less than 200 ft² is no pour\.$/,
    )
  })

  it('a price, a name or a moved point asks for no capacity anew', () => {
    const memo = createMemo()
    planOf(hot, quick, memo)
    const before = memo.computed.get('capacity')
    planOf({ ...hot, name: 'Another name' }, quick, memo)
    expect(memo.computed.get('capacity')).toBe(before)
  })

  it('the map of it falls with the hour on a hot day and never with a hand more', () => {
    const memo = createMemo()
    const { slabs, day, capacities } = planOf(hot, quick)
    const casters = hot.casters.map(caster => resolveCaster(caster).value)
    const of = {
      slabs,
      casters,
      place: hot.place,
      day,
      stepMin: settingValue(undefined, 'shadeStepMin'),
      settings: undefined,
    }
    const run = <T>(steps: Generator<void, T>): T => {
      for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value
    }
    const exposures = run(planExposures(memo, of))
    const map = run(planCapacityMap(memo, { site: hot, slabs, exposures, date: '2026-07-21' }, capacities))!
    expect(map.hands).toEqual([3, 4, 5, 6])
    expect(map.startsMs.length).toBeGreaterThan(5)
    const at = (startMs: number, hands: number) =>
      map.cells.find(cell => cell.startMs === startMs && cell.hands === hands)!.answer.crewM2
    for (const startMs of map.startsMs)
      for (const hands of [4, 5, 6]) expect(at(startMs, hands)).toBeGreaterThanOrEqual(at(startMs, hands - 1) - 0.4)
    expect(at(map.startsMs[0]!, 4)).toBeGreaterThan(at(map.startsMs[6]!, 4))
  })
})

describe('the hours that splits are weighed by', () => {
  const rectangle = sampleSite('plain-rectangle')
  const site: Site = { ...rectangle, accepted: [], crew: accepted.crew!, conditions: hotDay(27, 15)! }
  const capacityOf = (of: Site) => planOf(of, quick).capacities[0]!
  const openMin = (of: Site) => {
    const { clock, capM2 } = capacityOf(of)
    return 60 * openHours(capM2, clock!)
  }

  it('are those of the crew and the weather: a pour of that size is done about when its own day says', () => {
    const plan = planOf({ ...site, capacity: { capM2: 200 } }, quick)
    const [day] = plan.dayPlans
    const { clock } = plan.capacities[0]!
    expect(plan.dayPlans).toHaveLength(1)
    expect(clock!.startMs).toBe(day!.plan.startMs)
    const doneH = (Math.max(...day!.plan.strips.map(strip => strip.stampToMs)) - day!.plan.startMs) / 3_600_000
    // The typical pour is twice as long as wide and has no header; half an hour of stamping at most.
    expect(Math.abs(openHours(plan.pours[0]!.areaM2, clock!) - doneH)).toBeLessThan(0.5)
    expect(clock!.firstMatH).toBeLessThan(doneH)
  })

  it('are shorter the hotter it is, and the larger the crew', () => {
    const hotter = [18, 32].map(highC => openMin({ ...site, conditions: hotDay(highC, highC - 12)! }))
    expect(hotter[1]).toBeLessThan(hotter[0]!)
    const placing = [4, 6].map(hands => capacityOf({ ...site, crew: { ...site.crew!, hands } }).clock!.placeM2H)
    expect(placing[1]).toBeGreaterThan(placing[0]!)
  })

  it('begin with the start that was fixed for a pour, and the capacity is not asked for again', () => {
    const memo = createMemo()
    const at = (time: string): Site => ({
      ...accepted,
      accepted: accepted.accepted.map(a => ({ ...a, pours: a.pours.map(p => ({ ...p, start: { time } })) })),
    })
    const [seven, ten] = ['07:00', '10:00'].map(time => planOf(at(time), quick, memo).capacities[0]!)
    expect(ten!.clock!.startMs - seven!.clock!.startMs).toBe(3 * 3_600_000)
    expect(ten!.crew).toBe(seven!.crew)
    expect(memo.computed.get('capacity')).toBe(1)
  })

  it('are the settings’ where something is missing, and it is told what', () => {
    const { crew: _c, ...noCrew } = site
    const { conditions: _w, ...noWeather } = site
    const missing = [noCrew, noWeather, { ...site, crew: { ...site.crew!, hands: 2 } }, site].map(capacityOf)
    expect(missing.map(({ clockMissing }) => clockMissing)).toEqual(['crew', 'weather', 'hands', null])
    expect(missing.map(({ clock }) => clock === null)).toEqual([true, true, true, false])
  })
})

describe('the starts of a pour', () => {
  const plan = planOf(accepted)

  it('earliest and latest give the slack wanted and are done by dark; the best has the most', () => {
    for (const { starts } of plan.dayPlans) {
      expect(starts.rows.length).toBeGreaterThan(4)
      const most = Math.max(...starts.rows.map(row => row.slackMin))
      expect(starts.rows.find(row => row.startMs === starts.bestMs)!.slackMin).toBe(most)
      for (const ms of [starts.earliestMs, starts.latestMs])
        if (ms !== null) expect(starts.rows.find(row => row.startMs === ms)!.slackMin).toBeGreaterThanOrEqual(10)
    }
  })

  it('keep to the hours of the plant', () => {
    const hours = { weekdays: [1, 2, 3, 4, 5, 6, 7], from: '08:00', to: '10:00' }
    const early = planOf({ ...accepted, calendar: { weatherDays: 0, noiseHours: [], plantHours: [hours] } })
    const clock = (ms: number) => new Date(ms - 6 * 3_600_000).getUTCHours()
    for (const { starts } of early.dayPlans) expect(starts.rows.map(row => clock(row.startMs))).toEqual([8, 9, 10])
  })
})

describe('a pour on the day the clocks change', () => {
  // 2 o'clock on 8 March and 1 November 2026, both Sundays: IANA time zone database, America/Denver.
  const iso = (ms: number) => isoWithOffset(ms, 'America/Denver')
  const weekdays = [1, 2, 3, 4, 5, 6, 7]
  const sunday: Site = {
    ...accepted,
    place: { ...accepted.place, zone: 'America/Denver' },
    calendar: {
      weatherDays: 0,
      plantHours: [{ weekdays, from: '08:00', to: '15:00' }],
      noiseHours: [{ weekdays, from: '08:00', to: '19:00' }],
    },
  }
  it.each([
    ['2026-03-08', '-06:00'],
    ['2026-11-01', '-07:00'],
  ])('keeps the hours of the plant and the quiet hours by the clock on %s', (date, offset) => {
    const day = dayConditions(hotDay(25, 10)!, date, sunday.place, undefined)
    if (!day.ok) throw new Error('no weather')
    const span = workSpan(sunday, date, day.value)
    expect([span.usualMs, span.fromMs, span.toMs, span.quietMs!].map(iso)).toEqual(
      ['08:00', '08:00', '15:00', '19:00'].map(time => `${date}T${time}:00${offset}`),
    )
    const starts = hourlyStarts(span, day.value.day).map(iso)
    expect([starts[0], starts.at(-1), starts.length]).toEqual([
      `${date}T08:00:00${offset}`,
      `${date}T15:00:00${offset}`,
      8,
    ])
  })
})

describe('a day’s done hour', () => {
  it('is that of its last print: forms, washing and feet wait from then', () => {
    const plan = planOf(accepted)
    for (const day of plan.days) {
      const doneMin = Math.max(...day.pourIds.map(id => plan.dayPlans.find(own => own.pourId === id)!.doneMin!))
      const feet = day.afterTasks.find(task => task.task === 'openToFeet')!
      const openMin = doneMin + 60 * settingValue(undefined, 'openToFeetH')
      expect(feet.time).toBe(
        `${String(Math.floor(openMin / 60) % 24).padStart(2, '0')}:${String(openMin % 60).padStart(2, '0')}`,
      )
    }
  })

  it('a pour started two hours later opens two hours later, about', () => {
    const feetOf = (time: string) => {
      const site: Site = {
        ...accepted,
        accepted: accepted.accepted.map(a => ({ ...a, pours: a.pours.map(p => ({ ...p, start: { time } })) })),
      }
      const task = planOf(site).days[0]!.afterTasks.find(own => own.task === 'openToFeet')!
      return Date.parse(`${task.date}T${task.time}Z`)
    }
    const apartH = (feetOf('09:00') - feetOf('07:00')) / 3_600_000
    expect(apartH).toBeGreaterThan(0.9)
    expect(apartH).toBeLessThan(2.5)
  })

  it('without a day plan it is the setting, 15:00', () => {
    const { crew: _c, ...bare } = accepted
    const feet = planOf(bare).days[0]!.afterTasks.find(task => task.task === 'openToFeet')!
    expect(feet.time).toBe('15:00')
  })
})
