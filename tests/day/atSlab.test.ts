import { describe, expect, it } from 'vitest'
import {
  changeTap,
  logReading,
  logTap,
  openEntry,
  removeTap,
  setLearnedFrom,
  setLoadReading,
  setLogNotes,
} from '../../core/document/commands/logTaps'
import { readSite } from '../../core/document/readSite'
import { serializeSite } from '../../core/document/serializeSite'
import { derivePlan } from '../../core/plan/derivePlan'
import { learnedSet } from '../../core/pours/day/learnedSet'
import type { PourDayPlan } from '../../core/pours/day/pourDay'
import { packagesFor } from '../../core/pours/day/retarder'
import { solveDay } from '../../core/pours/day/solveDay'
import { acceptPours } from '../../core/pours/editing/acceptPours'
import { replanRest } from '../../core/pours/replan/replanRest'
import { balanceAtSlab } from '../../core/pours/slab/balanceAtSlab'
import { slabFront } from '../../core/pours/slab/front'
import { markPoured } from '../../core/pours/slab/markPoured'
import { measuredInput } from '../../core/pours/slab/measuredInput'
import { nextSteps } from '../../core/pours/slab/nextSteps'
import { planAtSlab } from '../../core/pours/slab/planAtSlab'
import { pourStart } from '../../core/pours/slab/pourStart'
import { readTaps, utcMinute } from '../../core/pours/slab/slabState'
import { tellBalance, tellPlan, tellStep } from '../../core/pours/slab/slabWords'
import { printMeasures } from '../../core/units/printMeasures'
import { printDayTable } from '../../electron/cli/printDayTable'
import { lPatioAccepted } from '../../samples/sites/lPatioAccepted'
import type { LogTap } from '../../shared/document/day'
import type { Site } from '../../shared/document/site'
import { chain, done, faultsOf, refusal } from '../commands/edit'
import { mulberry32, normal } from '../concrete/dayFixture'

const minuteMs = 60_000
const site = lPatioAccepted()
const derived = (of: Site) => {
  const made = derivePlan(of, { date: '2026-07-21' })
  if (!made.ok) throw new Error('no plan')
  return made.value
}
const plan = derived(site)
const first = plan.dayPlans[0]!
const start = pourStart(site, first)!
const { pourId } = first
const print = printMeasures('ftin')
const clock = (ms: number): string => new Date(ms).toISOString().slice(11, 16)

const solvedOf = ({ input }: PourDayPlan) => {
  const made = solveDay(input, { withLargest: true })
  if (!made.ok) throw new Error('no day')
  return made.value
}
const solved = solvedOf(first)

type Tapped = Omit<LogTap, 'id' | 'source' | 'atUtc'>
const tap = (afterMin: number, of: Tapped): Omit<LogTap, 'id'> => ({
  ...of,
  atUtc: utcMinute(first.plan.startMs + afterMin * minuteMs),
  source: 'tap',
})
const stateOf = (...taps: readonly Omit<LogTap, 'id'>[]) =>
  readTaps(
    taps.map((own, i) => ({ ...own, id: `t${i + 1}` })),
    first.input.strips,
    first.plan.loads.length,
  )
const planned = (afterMin: number, ...taps: readonly Omit<LogTap, 'id'>[]) => {
  const state = stateOf(...taps)
  const nowMs = first.plan.startMs + afterMin * minuteMs
  const made = planAtSlab({ day: first.input, plan: first.plan, solved, state, nowMs })
  if (!made.ok) throw new Error(made.error[0]?.code)
  return { state, nowMs, plan: made.value }
}

describe('the log', () => {
  const placed = tap(30, { what: 'placed', strip: 'a' })
  const batched = tap(-35, { what: 'batched', load: 1 })

  it('opens an entry with the first tap and keeps taps in the order in which they happened', () => {
    const logged = chain(site, logTap(pourId, placed, start), logTap(pourId, batched, start))
    const entry = openEntry(logged, pourId)!
    expect(logged.log).toHaveLength(1)
    expect(entry.taps!.map(({ what }) => what)).toEqual(['batched', 'placed'])
    expect(entry.planned).toMatch(/^a .*, placed 7:\d\d, ready \d+:\d\d, too hard/)
    expect(entry.begun!.strips.map(({ name }) => name)).toEqual(first.input.strips.map(({ id }) => id))
    expect(faultsOf(logged)).toEqual([])
  })

  it('comes back from its file as it was', () => {
    const logged = chain(
      site,
      logTap(pourId, placed, start),
      logTap(pourId, tap(31, { what: 'come', comeM: 2.4, outM3: 1.1 }), start),
    )
    const read = readSite(serializeSite(logged))
    expect(read).toEqual({ ok: true, value: logged })
  })

  it('is corrected: time typed over, note, and taken out; an empty entry goes', () => {
    const logged = chain(site, logTap(pourId, batched, start), logTap(pourId, placed, start))
    const [one, two] = openEntry(logged, pourId)!.taps!
    const typed = chain(logged, changeTap(two!.id, { atUtc: utcMinute(first.plan.startMs - 60 * minuteMs) }))
    expect(openEntry(typed, pourId)!.taps!.map(({ what, source }) => [what, source])).toEqual([
      ['placed', 'typed'],
      ['batched', 'tap'],
    ])
    expect(openEntry(chain(logged, changeTap(one!.id, { note: 'ticket 4411' })), pourId)!.taps![0]!.note).toBe(
      'ticket 4411',
    )
    expect(chain(logged, removeTap(one!.id), removeTap(two!.id)).log).toBeUndefined()
    const noted = chain(
      logged,
      setLogNotes(openEntry(logged, pourId)!.id, 'wind from the west'),
      removeTap(one!.id),
      removeTap(two!.id),
    )
    expect(noted.log).toHaveLength(1)
  })

  it('keeps what was measured of a load, in the order of the loads; a row that says nothing goes', () => {
    const logged = chain(
      site,
      logReading(pourId, 2, { tempC: 29 }, start),
      logReading(pourId, 1, { tempC: 27, slumpMm: 100 }, start),
      logReading(pourId, 1, { tempC: 28 }, start),
    )
    const entry = openEntry(logged, pourId)!
    expect(entry.loads).toEqual([
      { no: 1, tempC: 28, slumpMm: 100 },
      { no: 2, tempC: 29 },
    ])
    expect(entry.begun).toEqual(start.begun)
    const ticketed = chain(logged, setLoadReading(entry.id, 2, { tempC: undefined, ticket: '4411', airC: 21 }))
    expect(openEntry(ticketed, pourId)!.loads[1]).toEqual({ no: 2, ticket: '4411', airC: 21 })
    expect(readSite(serializeSite(ticketed))).toEqual({ ok: true, value: ticketed })
    const emptied = chain(ticketed, setLoadReading(entry.id, 2, { ticket: undefined, airC: undefined }))
    expect(openEntry(emptied, pourId)!.loads.map(({ no }) => no)).toEqual([1])
    expect(refusal(logReading('n9999', 1, { tempC: 20 }, start)(site))).toBe('entityMissing')
    expect(refusal(setLoadReading('l9999', 1, { tempC: 20 })(site))).toBe('entityMissing')
  })

  it('plans the day on with the concrete as warm as it was measured', () => {
    const readyWith = (tempC: number): number => {
      const input = measuredInput(first.input, [{ no: 1, tempC }])
      const made = solveDay({ ...input, tables: new Map() }, { withLargest: true })
      if (!made.ok) throw new Error('no day')
      const now = planAtSlab({ day: input, plan: first.plan, solved: made.value, state: stateOf(), nowMs: 0 })
      if (!now.ok) throw new Error('no plan')
      return now.value.strips[0]!.readyMs
    }
    expect(measuredInput(first.input, [{ no: 1, slumpMm: 100 }])).toBe(first.input)
    // Ten degrees Celsius of the load are worth far more than the error of a clock.
    expect(readyWith(20) - readyWith(30)).toBeGreaterThan(20 * minuteMs)
  })

  it('refuses a pour, a tap and a minute that there is not', () => {
    expect(refusal(logTap('n9999', placed, start)(site))).toBe('entityMissing')
    expect(refusal(removeTap('t9999')(site))).toBe('entityMissing')
    expect(refusal(setLearnedFrom('l9999', false)(site))).toBe('entityMissing')
    expect(refusal(logTap(pourId, { ...placed, atUtc: '2026-02-30T07:00Z' }, start)(site))).toBe('badDate')
  })

  it('does not change the plan of its own day', () => {
    const logged = chain(
      site,
      logTap(pourId, placed, start),
      logTap(pourId, tap(150, { what: 'ready', strip: 'a' }), start),
    )
    expect(derived(logged).dayPlans[0]!.plan).toEqual(first.plan)
  })
})

describe('the pour under way', () => {
  const times = first.plan.strips
  const minOf = (ms: number): number => (ms - first.plan.startMs) / minuteMs

  it('without a tap, before the start, is the plan', () => {
    const { plan: now } = planned(-40)
    expect(now.slackMin).toBeCloseTo(first.plan.slackMin, 6)
    expect(now.strips.map(({ doseMin }) => doseMin)).toEqual(times.map(({ doseMin }) => doseMin))
    expect(now.dosesChanged).toBe(false)
    now.strips.forEach((strip, i) => {
      expect(strip.placedMs).toBeCloseTo(times[i]!.placedMs, 0)
      expect(strip.readyMs).toBeCloseTo(times[i]!.readyMs, 0)
    })
  })

  it('asks first for what is due first, and goes on through the pour to its end', () => {
    const taps: Omit<LogTap, 'id'>[] = []
    const asked: string[] = []
    let nowMs = first.plan.startMs - 40 * minuteMs
    for (let turn = 0; turn < 60; turn++) {
      const { state, plan: now } = planned(minOf(nowMs), ...taps)
      const step = nextSteps(first.input, state, now)[0]
      if (!step) break
      asked.push(`${step.what} ${step.strip ?? step.load ?? ''}`.trim())
      expect(tellStep(step, first.input, now, print, clock).ask).toMatch(/\S/)
      nowMs = Math.max(nowMs, step.dueMs)
      taps.push({
        ...{ what: step.what, atUtc: utcMinute(nowMs), source: 'tap' },
        ...(step.what === 'dosed' ? { load: step.load!, minutes: step.doseMin!, count: step.packages! } : {}),
        ...(step.load !== undefined && step.what !== 'dosed' ? { load: step.load } : {}),
        ...(step.strip !== undefined && step.what !== 'dosed' ? { strip: step.strip } : {}),
      })
    }
    expect(asked[0]).toBe('batched 1')
    expect(asked.at(-1)).toBe('done')
    for (const { id } of times)
      for (const what of ['placed', 'ready', 'stamped'])
        expect(asked.filter(own => own === `${what} ${id}`)).toHaveLength(1)
    const doses = times.filter(
      ({ doseMin }, i) => doseMin > (times[i - 1]?.load === times[i]!.load ? times[i - 1]!.doseMin : 0),
    )
    expect(asked.filter(own => own.startsWith('dosed'))).toHaveLength(doses.length)
    const end = planned(minOf(nowMs), ...taps)
    expect(end.plan.strips.every(({ state }) => state === 'stamped')).toBe(true)
    expect(tellPlan(first.input, end.plan, end.state, clock)).toContain('All strips are stamped.')
  })

  it('a truck told 45 min late moves its strips by as much and says so', () => {
    const late = planned(-30, tap(-30, { what: 'late', load: 1, minutes: 45 }))
    expect(minOf(late.plan.loads[0]!.onSiteMs)).toBeCloseTo(45, 6)
    expect(late.plan.strips[0]!.placedMs - times[0]!.placedMs).toBeCloseTo(45 * minuteMs, -3)
    expect(tellPlan(first.input, late.plan, late.state, clock, first.plan.slackMin + 30)).toMatch(/less than before/)
  })

  it('time that runs without a tap is not planned into the past', () => {
    const { plan: now, nowMs } = planned(90, tap(0, { what: 'onSite', load: 1 }))
    for (const strip of now.strips) expect(strip.placedMs).toBeGreaterThanOrEqual(nowMs)
    const down = times.map(({ id }, i) => tap(20 * (i + 1), { what: 'placed', strip: id }))
    const later = planned(600, tap(0, { what: 'onSite', load: 1 }), ...down)
    for (const strip of later.plan.strips) expect(strip.stampToMs).toBeGreaterThanOrEqual(later.nowMs - 1)
    expect(later.plan.slackMin).toBeLessThan(0)
    expect(tellPlan(first.input, later.plan, later.state, clock)).toMatch(/^Strip . is lost first, .*All hands/)
  })

  it('a strip seen ready early makes the rest early, and its own time stands', () => {
    const down = times.map(({ id, placedMs }) => tap(minOf(placedMs), { what: 'placed', strip: id }))
    const before = planned(minOf(times.at(-1)!.placedMs) + 1, ...down)
    const seen = minOf(times[0]!.readyMs) - 15
    const after = planned(seen, ...down, tap(seen, { what: 'ready', strip: 'a' }))
    expect(after.plan.setFactor).toBeLessThan(1)
    expect(after.plan.strips[1]!.readyMs).toBeLessThan(before.plan.strips[1]!.readyMs)
    expect(minOf(after.plan.strips[0]!.readyMs)).toBe(Math.floor(seen))
    expect(after.plan.strips[0]!.stampFromMs).toBeLessThan(before.plan.strips[0]!.stampFromMs)
    expect(tellPlan(first.input, after.plan, after.state, clock)).toMatch(/% sooner than planned/)
  })

  it('a hand that goes costs slack, and one that comes back brings it', () => {
    const one = planned(-10, tap(-10, { what: 'handShort' }))
    expect(one.plan.hands).toBe(first.input.hands - 1)
    // More retarder may win back some of it, never more than all hands could have.
    expect(one.plan.slackMin).toBeLessThanOrEqual(solved.largestSlackMin + 1e-9)
    expect(planned(-10, tap(-10, { what: 'handShort' }), tap(-9, { what: 'handBack' })).plan.slackMin).toBe(
      planned(-10).plan.slackMin,
    )
    const gone = Array.from({ length: first.input.hands }, () => tap(-10, { what: 'handShort' }))
    const state = stateOf(...gone)
    expect(planAtSlab({ day: first.input, plan: first.plan, solved, state, nowMs: first.plan.startMs })).toMatchObject({
      ok: false,
      error: [{ code: 'crewTooSmall' }],
    })
  })

  it('a drum is dosed on from what it has, and asked about once before each strip, whatever goes in', () => {
    const atLoad = (doseMin: number, inDrumMin: number) =>
      planned(
        60,
        tap(0, { what: 'onSite', load: 1 }),
        tap(1, { what: 'dosed', load: 1, count: 1, minutes: inDrumMin }),
        tap(40, { what: 'placed', strip: times[0]!.id }),
        ...(doseMin < 0 ? [] : [tap(40, { what: 'dosed', load: 1, count: doseMin > 0 ? 2 : 0, minutes: doseMin })]),
      )
    const wanting = (doseMin: number, told: number) => {
      const { state, plan: now } = atLoad(told, 30)
      const strips = now.strips.map((strip, i) => (i === 1 ? { ...strip, doseMin } : strip))
      return nextSteps(first.input, state, { ...now, strips }).find(({ what }) => what === 'dosed')
    }
    const asked = wanting(60, -1)
    expect(asked).toMatchObject({ doseMin: 60, inDrumMin: 30, strip: times[1]!.id })
    expect(asked!.packages).toBe(packagesFor(30, asked!.leftM3!, first.input))
    expect(tellStep(asked!, first.input, atLoad(-1, 30).plan, print, clock).detail).toContain('From 30 to 60 min')
    for (const told of [0, 40, 60]) expect(wanting(60, told), `${told} min`).toBe(undefined)
    expect(atLoad(0, 30).plan.strips[1]!.doseMin).toBe(30)
    expect(atLoad(60, 30).plan.strips[1]!.doseMin).toBe(60)
  })

  it('tells no time where the weather hours end before a strip sets', () => {
    const { weather } = first.input
    const steps = Math.floor((first.plan.startMs + 60 * minuteMs - weather.fromMs) / weather.stepMs)
    const day = { ...first.input, weather: { ...weather, steps } }
    const down = times.map(({ id, placedMs }) => tap(minOf(placedMs), { what: 'placed', strip: id }))
    const nowMs = times.at(-1)!.placedMs + 5 * minuteMs
    const state = stateOf(tap(0, { what: 'onSite', load: 1 }), ...down)
    const made = planAtSlab({ day, plan: first.plan, solved: { ...solved, tables: new Map() }, state, nowMs })
    if (!made.ok) throw new Error('no plan')
    const words = 'The weather hours end before this sets: watch it by hand.'
    expect(tellPlan(day, made.value, state, clock)).toContain(words)
    const ready = nextSteps(day, state, made.value).find(({ what }) => what === 'ready')!
    expect(ready.isTimeless).toBe(true)
    expect(tellStep(ready, day, made.value, print, clock).detail).toBe(words)
    expect(tellStep({ ...ready, what: 'stamped' }, day, made.value, print, clock).detail).toBe(words)
  })

  it('rain names the strips that are still open', () => {
    const { plan: now, state } = planned(0, tap(0, { what: 'rain', minutes: 60 }))
    expect(tellPlan(first.input, now, state, clock)).toMatch(/still open when the rain comes at/)
  })

  it('a dose that went in is kept for the next strip', () => {
    const { plan: now } = planned(
      5,
      tap(0, { what: 'onSite', load: 1 }),
      tap(2, { what: 'dosed', load: 1, count: 4, minutes: 28 }),
    )
    expect(now.strips[0]!.doseMin).toBe(30)
    expect(now.strips.every(({ doseMin }) => doseMin >= 30)).toBe(true)
  })

  it('one stamped is out of the reckoning', () => {
    const down = times.map(({ id, placedMs }) => tap(minOf(placedMs), { what: 'placed', strip: id }))
    const at = minOf(times[0]!.tooHardMs) + 30
    const { plan: now } = planned(at, ...down, tap(at, { what: 'stamped', strip: 'a' }))
    expect(now.strips[0]).toMatchObject({ state: 'stamped', slackMin: Number.POSITIVE_INFINITY })
    expect(now.tightestStripId).not.toBe('a')
  })
})

describe('how far the concrete has come', () => {
  const pour = plan.pours.find(({ id }) => id === pourId)!
  const front = slabFront(pour.region, first.direction)

  it('tells the area behind it and back', () => {
    expect(front.areaTo(front.lengthM)).toBeCloseTo(pour.areaM2, 9)
    expect(front.areaTo(0)).toBe(0)
    for (const share of [0.2, 0.5, 0.8])
      expect(front.areaTo(front.comeFor(share * pour.areaM2))).toBeCloseTo(share * pour.areaM2, 3)
    const [a] = first.shapes
    expect(front.comeFor(a!.areaM2)).toBeCloseTo(a!.depthM, 3)
  })

  it('with the concrete out gives the thickness running and the call', () => {
    const whole = first.plan.loads.reduce((sum, load) => sum + load.volumeM3, 0)
    const comeM = front.comeFor(pour.areaM2 / 2)
    const {
      state,
      plan: now,
      nowMs,
    } = planned(40, tap(0, { what: 'onSite', load: 1 }), tap(40, { what: 'come', comeM, outM3: 0.6 * whole }))
    const balance = balanceAtSlab({ day: first.input, state }, now, front)!
    expect(balance.thicknessM).toBeCloseTo((0.6 * whole) / (pour.areaM2 / 2), 4)
    // The other half needs 0.6 of the order, and 10 % of over-run; 0.4 are there.
    expect(balance.neededM3).toBeCloseTo(0.66 * whole - 0.4 * whole, 3)
    expect(tellBalance(balance, 0.1016, print, clock, nowMs)).toMatch(
      /^Running .*″ thick, 4″ planned\. Check the base\. .* yd³ more than ordered\. Call the plant now\.$/,
    )
    const fine = planned(40, tap(0, { what: 'onSite', load: 1 }), tap(40, { what: 'come', comeM, outM3: 0.45 * whole }))
    expect(
      tellBalance(balanceAtSlab({ day: first.input, state: fine.state }, fine.plan, front)!, 0.1016, print, clock, 0),
    ).toContain('What is ordered is enough.')
  })
})

describe('the end of a pour', () => {
  const pour = plan.pours.find(({ id }) => id === pourId)!
  const whole = { region: pour.region, areaM2: pour.areaM2, direction: first.direction }
  const poured = (of: Site) => of.accepted.flatMap(({ pours }) => pours).find(({ id }) => id === pourId)!.poured

  it('freezes its shape as built', () => {
    const ended = done(markPoured(pourId, '2026-07-21T19:40Z', start, whole)(site))
    expect(faultsOf(ended)).toEqual([])
    expect(poured(ended)).toMatchObject({ areaM2: pour.areaM2, logId: ended.log![0]!.id })
    expect(refusal(markPoured(pourId, '2026-07-21T19:41Z', start, whole)(ended))).toBe('pourIsPoured')
    expect(derived(ended).pours.find(({ id }) => id === pourId)!.areaM2).toBeCloseTo(pour.areaM2, 6)
  })

  it('stopped short leaves the rest, which is planned again beside it', () => {
    const front = slabFront(pour.region, first.direction)
    const comeM = front.comeFor(0.6 * pour.areaM2)
    const ended = done(markPoured(pourId, '2026-07-21T16:00Z', start, { ...whole, comeM })(site))
    expect(poured(ended)!.areaM2).toBeCloseTo(0.6 * pour.areaM2, 2)
    const { slabId, part } = site.accepted[0]!
    const rest = replanRest(ended, slabId, part, { budget: 50_000 })
    if (!rest.ok) throw new Error(rest.error[0]?.code)
    const again = done(acceptPours(ended, rest.value.offer))
    expect(poured(again)).toEqual(poured(ended))
    const after = derived(again).pours
    const openM2 = after.filter(({ id }) => id !== pourId).reduce((sum, { areaM2 }) => sum + areaM2, 0)
    const allM2 = plan.pours.reduce((sum, { areaM2 }) => sum + areaM2, 0)
    expect(openM2).toBeCloseTo(allM2 - 0.6 * pour.areaM2, 1)
  })
})

describe('what the logs teach', () => {
  /** The log that a crew with another mix would have written: every strip of every pour, from the plan with that mix. */
  const logFor = (lnTrue: readonly number[], noiseMs: () => number = () => 0): Site => {
    let logged = site
    plan.dayPlans.forEach((day, k) => {
      const truth = solveDay({ ...day.input, learned: { lnFactor: lnTrue[k]!, spreadLn: 0.05 }, tables: new Map() })
      if (!truth.ok) throw new Error('no day')
      const at = (min: number): number => day.input.startMs + min * minuteMs
      const begun = pourStart(site, day)!
      const minute = (ms: number, of: Tapped): Omit<LogTap, 'id'> => ({ ...of, atUtc: utcMinute(ms), source: 'tap' })
      const write = (own: Omit<LogTap, 'id'>) => {
        logged = done(logTap(day.pourId, own, begun)(logged))
      }
      day.plan.loads.forEach(load => {
        write(minute(load.batchMs, { what: 'batched', load: load.no }))
        write(minute(load.onSiteMs, { what: 'onSite', load: load.no }))
      })
      for (const time of truth.value.run.times) {
        const strip = day.input.strips[time.strip]!.id
        write(minute(at(truth.value.placed[time.strip]!.toMin + 5 * time.stops), { what: 'placed', strip }))
        write(minute(at(time.window.readyMin) + noiseMs(), { what: 'ready', strip }))
      }
      // The doses as the truth had them.
      logged = {
        ...logged,
        log: logged.log!.map(entry =>
          entry.pourId !== day.pourId || !entry.begun
            ? entry
            : {
                ...entry,
                begun: {
                  ...entry.begun,
                  strips: entry.begun.strips.map((strip, i) => ({
                    ...strip,
                    doseMin: [0, 30, 60][truth.value.run.times.find(time => time.strip === i)!.dose]!,
                  })),
                },
              },
        ),
      }
    })
    return logged
  }

  it('recovers ln te of the model’s own log within 2 %, through the taps of the screen', () => {
    for (const ln of [-0.15, 0, 0.12]) {
      const { calibration, pours } = learnedSet(logFor([ln, ln, ln]))
      expect(pours).toHaveLength(3)
      expect(Math.abs(calibration!.loggedLn - ln)).toBeLessThan(0.02)
    }
  })

  it('is used by the day plan of a later pour, with a narrower band, and not by its own', () => {
    const logged = logFor([-0.12, -0.12, -0.12])
    const again = derived(logged)
    const band = (of: PourDayPlan) => of.plan.strips[0]!.readyP90Ms - of.plan.strips[0]!.readyP10Ms
    expect(again.dayPlans[0]!.input.learned).toBeUndefined()
    const third = again.dayPlans.find(({ pourId: id }) => id === plan.dayPlans[2]!.pourId)
    expect(third!.input.learned!.lnFactor).toBeLessThan(-0.08)
    expect(printDayTable(again, third!, [])).toMatch(/learned from earlier pours: \d+ % sooner than first guessed/)
    expect(printDayTable(plan, first, [])).not.toContain('learned')
    expect(band(third!)).toBeLessThan(0.7 * band(plan.dayPlans[2]!))
    expect(third!.plan.strips[0]!.readyMs).toBeLessThan(plan.dayPlans[2]!.plan.strips[0]!.readyMs)
  })

  it('leaves a dropped pour out, and takes it back', () => {
    const logged = logFor([-0.2, 0, 0])
    const id = logged.log![0]!.id
    const without = learnedSet(chain(logged, setLearnedFrom(id, false)))
    expect(without.pours.map(({ leftOut }) => leftOut)).toEqual([true, false, false])
    expect(Math.abs(without.calibration!.lnFactor)).toBeLessThan(0.015)
    expect(chain(logged, setLearnedFrom(id, false), setLearnedFrom(id, true))).toEqual(logged)
    const none = logged.log!.reduce((of, entry) => chain(of, setLearnedFrom(entry.id, false)), logged)
    expect(learnedSet(none).calibration).toBeNull()
  })

  it('an observer 7 min off teaches the mean ready time to within 10 min', () => {
    const random = mulberry32(11)
    const errors: number[] = []
    for (let draw = 0; draw < 8; draw++) {
      const mix = 0.12 * normal(random)
      const { calibration } = learnedSet(logFor([mix, mix, mix], () => 7 * minuteMs * normal(random)))
      const strip = plan.dayPlans[0]!.plan.strips[0]!
      const ageMin = (strip.readyMs - plan.dayPlans[0]!.plan.loads[0]!.batchMs) / minuteMs
      errors.push(Math.abs(Math.exp(calibration!.lnFactor) - Math.exp(mix)) * ageMin)
    }
    expect(errors.reduce((sum, error) => sum + error, 0) / errors.length).toBeLessThanOrEqual(10)
  })
})
