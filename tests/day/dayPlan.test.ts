import { describe, expect, it } from 'vitest'
import { capacityMap, capacityOf } from '../../core/pours/day/capacityOf'
import { crewAdvice } from '../../core/pours/day/crewAdvice'
import { dayPlan } from '../../core/pours/day/dayPlan'
import { balanceLoad, planLoads } from '../../core/pours/day/loads'
import { replan } from '../../core/pours/day/replan'
import { scanStarts } from '../../core/pours/day/scanStarts'
import { solveDay } from '../../core/pours/day/solveDay'
import { sourceOfTask, taskTable } from '../../core/pours/day/taskTable'
import { whatIfCases } from '../../core/pours/day/whatIf'
import { clock, mulberry32, weatherOf } from '../concrete/dayFixture'
import { crewDay, dayOf, ft2M2, planInput, yd3M3 } from './crewDay'

const hotDay = dayOf(92, 70)
const hot = weatherOf(hotDay)

const planned = (input: Parameters<typeof planInput>[1], day = hotDay) => {
  const made = dayPlan(planInput(day, input))
  if (!made.ok) throw new Error(made.error[0]?.code)
  return made.value
}

const solved = (input: Parameters<typeof crewDay>[0], largest = true) => {
  const made = solveDay(crewDay(input), { withLargest: largest })
  if (!made.ok) throw new Error(made.error[0]?.code)
  return made.value
}

describe('the tasks of a day', () => {
  const plans = [
    planned({ areaFt2: 640, hands: 5, startH: 7, borderM: 25 }),
    planned({ areaFt2: 900, loads: 2, hands: 6, startH: 6, borderM: 0 }),
    planned({ areaFt2: 300, hands: 3, startH: 9, borderM: 12 }),
  ]
  const hands = [5, 6, 3]

  it('are all there for every strip', () => {
    for (const plan of plans)
      for (const strip of plan.strips) {
        const names = plan.tasks.filter(task => task.stripId === strip.id).map(task => task.name)
        for (const name of [
          'place',
          'strikeOff',
          'bullFloat',
          'edge',
          'hardenerFirst',
          'float',
          'hardenerSecond',
          'floatAgain',
          'release',
          'stamp',
          'touchUp',
        ])
          expect(names).toContain(name)
      }
  })

  it('never need more hands at one time than there are', () => {
    plans.forEach((plan, p) => {
      const starts = plan.tasks.map(task => task.fromMs)
      for (const at of starts) {
        const busy = plan.tasks.filter(task => task.fromMs <= at + 1 && task.toMs > at + 1)
        expect(busy.reduce((sum, task) => sum + task.hands, 0)).toBeLessThanOrEqual(hands[p]!)
      }
    })
  })

  it('nobody stamps while concrete is still placed', () => {
    for (const plan of plans) {
      const down = Math.max(
        ...plan.tasks.filter(task => task.name === 'place' || task.name === 'edge').map(task => task.toMs),
      )
      for (const task of plan.tasks.filter(own => own.name === 'stamp'))
        expect(task.fromMs).toBeGreaterThanOrEqual(down - 1)
    }
  })

  it('keep their order on a strip: placed, colored, ready, stamped', () => {
    for (const plan of plans)
      for (const strip of plan.strips) {
        const of = (name: string) => plan.tasks.find(task => task.stripId === strip.id && task.name === name)!
        expect(of('hardenerFirst').fromMs).toBeGreaterThanOrEqual(of('edge').toMs - 1)
        expect(of('release').fromMs).toBeGreaterThanOrEqual(of('floatAgain').toMs - 1)
        expect(of('release').fromMs).toBeGreaterThanOrEqual(strip.readyMs - 1)
        expect(of('touchUp').fromMs).toBeGreaterThanOrEqual(of('stamp').toMs - 1)
        expect(strip.readyP10Ms).toBeLessThan(strip.readyMs)
        expect(strip.readyP90Ms).toBeGreaterThan(strip.readyMs)
        expect(strip.tooHardMs).toBeGreaterThan(strip.readyMs)
      }
  })

  it('a border alone has a hand of its own or is stamped with the rest', () => {
    const [first] = plans
    expect(first!.tasks.filter(task => task.name === 'border')).toHaveLength(first!.strips.length)
  })

  it('every rate has a source', () => {
    for (const row of taskTable) expect(sourceOfTask(row).length).toBeGreaterThan(10)
  })
})

describe('slack', () => {
  it('is never less with more hands', () => {
    const random = mulberry32(5)
    for (let i = 0; i < 12; i++) {
      const areaFt2 = 200 + 700 * random()
      const startH = 6 + 7 * random()
      const borderM = random() < 0.5 ? 0 : 30 * random()
      const slacks = [3, 4, 5, 6, 7].map(
        hands => solved({ areaFt2, hands, weather: hot, startH, borderM, loads: 1 + (i % 2) }).largestSlackMin,
      )
      slacks.forEach((slack, h) => {
        if (h > 0) expect(slack).toBeGreaterThanOrEqual(slacks[h - 1]! - 1e-9)
      })
    }
  })

  it('of one strip is never less with more dose', () => {
    for (const startH of [6, 9, 12]) {
      const { problem } = solved({ areaFt2: 120, portionsALoad: 1, hands: 4, weather: hot, startH })
      const slacks = [0, 1, 2].map(dose => {
        const window = problem.windows[0]![dose]![dose === 0 ? 0 : 1]!
        return window.tooHardMin
      })
      expect(slacks).toEqual([...slacks].sort((a, b) => a - b))
    }
  })

  it('wanted is reached with no more retarder than needed', () => {
    const { run, largestSlackMin } = solved({ areaFt2: 640, hands: 5, weather: hot, startH: 7 })
    expect(run.slackMin).toBeGreaterThanOrEqual(10)
    expect(run.slackMin).toBeLessThanOrEqual(largestSlackMin + 1e-9)
  })
})

describe('what if', () => {
  const plan = planned({ areaFt2: 640, hands: 4, startH: 8 })

  it('answers every case with a start, a slack and what to do', () => {
    expect(plan.whatIf.map(row => row.case)).toEqual([...whatIfCases])
    for (const row of plan.whatIf) {
      expect(row.doNext.length).toBeGreaterThan(10)
      expect(row.slackMin < 0).toBe(row.firstLostStripId !== null)
    }
  })

  it('a later truck starts later', () => {
    const late = plan.whatIf.slice(0, 4).map(row => (row.startMs - plan.startMs) / 60_000)
    expect(late).toEqual([15, 30, 45, 60])
  })

  it('three hands less one do not pour', () => {
    const three = planned({ areaFt2: 300, hands: 3, startH: 8 }).whatIf.find(row => row.case === 'handShort')!
    expect(three).toMatchObject({ firstLostStripId: 'a', doNext: expect.stringContaining('do not pour today') })
  })

  it('rain at 14:00 names the strip that is still open', () => {
    const late = planned({ areaFt2: 640, hands: 5, startH: 12.5 }).whatIf.find(row => row.case === 'rain14')!
    expect(late.firstLostStripId).not.toBeNull()
    expect(late.doNext).toContain(`Strip ${late.firstLostStripId}`)
  })
})

describe('the chance of missing a strip', () => {
  it('is the same each time, small with slack and large without', () => {
    const easy = planned({ areaFt2: 350, hands: 6, startH: 7 }, dayOf(72, 58, 'mostly'))
    const hard = planned({ areaFt2: 900, hands: 4, startH: 11 })
    expect(easy.chanceOfMiss).toBeLessThan(0.05)
    expect(hard.chanceOfMiss).toBeGreaterThan(0.5)
    expect(planned({ areaFt2: 900, hands: 4, startH: 11 }).chanceOfMiss).toBe(hard.chanceOfMiss)
  })
})

describe('starts', () => {
  it('an earliest and a latest are among those that do', () => {
    const starts = Array.from({ length: 17 }, (_, i) => clock(6 + i / 2))
    const scan = scanStarts(crewDay({ areaFt2: 600, hands: 5, weather: hot, startH: 6 }), starts)
    expect(scan.rows).toHaveLength(17)
    expect(scan.earliestMs).toBe(clock(6))
    expect(scan.latestMs).toBeLessThan(clock(14))
    for (const row of scan.rows) if (row.slackMin >= 10) expect(row.startMs).toBeLessThanOrEqual(scan.latestMs!)
  })

  it('dark bounds the latest', () => {
    const mild = weatherOf(dayOf(70, 60, 'overcast'))
    const input = crewDay({ areaFt2: 300, hands: 5, weather: mild, startH: 6 })
    const starts = Array.from({ length: 9 }, (_, i) => clock(8 + i))
    const free = scanStarts(input, starts)
    const bound = scanStarts(input, starts, clock(15))
    expect(bound.latestMs).toBeLessThan(free.latestMs!)
  })
})

describe('planning again after a tap', () => {
  const day = crewDay({ areaFt2: 640, hands: 5, weather: hot, startH: 7 })
  const made = solveDay(day)
  if (!made.ok) throw new Error('no day')
  const first = made.value
  const at = (min: number) => day.startMs + min * 60_000

  it('without a tap is the plan', () => {
    const again = replan(day, first, [])
    expect(again.ok && again.value.solved.run.doses).toEqual(first.run.doses)
    expect(again.ok && again.value.setFactor).toBe(1)
  })

  it('a strip that took longer moves the rest', () => {
    const again = replan(day, first, [{ strip: 0, placedToMs: at(40) }])
    if (!again.ok) throw new Error('no plan')
    expect(again.value.solved.placed[0]!.toMin).toBeCloseTo(40, 9)
    expect(again.value.solved.placed[1]!.fromMin).toBeGreaterThanOrEqual(40)
    expect(again.value.solved.run.doses[0]).toBe(first.run.doses[0])
  })

  it('a strip ready early makes the rest early, less than in full', () => {
    const ready = first.run.times[0]!.window.readyMin
    const taps = [0, 1, 2, 3].map(strip => ({
      strip,
      placedToMs: at(first.placed[strip]!.toMin + 5 * first.run.times[strip]!.stops),
    }))
    const again = replan(day, first, [{ ...taps[0]!, readyMs: at(ready - 20) }, ...taps.slice(1)])
    if (!again.ok) throw new Error('no plan')
    expect(again.value.setFactor).toBeLessThan(1)
    expect(again.value.setFactor).toBeGreaterThan((ready + 30 - 20) / (ready + 30))
    expect(again.value.solved.run.times[3]!.window.readyMin).toBeLessThan(first.run.times[3]!.window.readyMin)
  })

  it('a strip ready where the weather hours end before the set says nothing of the mix, and loses no strip', () => {
    const { weather } = day
    const steps = Math.floor((day.startMs + 60 * 60_000 - weather.fromMs) / weather.stepMs)
    const cut = { ...day, weather: { ...weather, steps } }
    const planned = solveDay(cut)
    if (!planned.ok) throw new Error('no day')
    const placedToMs = at(planned.value.placed[0]!.toMin)
    const again = replan(cut, planned.value, [{ strip: 0, placedToMs, readyMs: placedToMs + 200 * 60_000 }])
    if (!again.ok) throw new Error('no plan')
    expect(again.value.setFactor).toBe(1)
    expect(again.value.solved.run.times.map(({ window }) => window)).toEqual(
      planned.value.run.times.map(({ window }) => window),
    )
  })

  it('a dose that went in stays in', () => {
    const again = replan(day, first, [{ strip: 0, placedToMs: at(15), doseMin: 30 }])
    expect(again.ok && again.value.solved.run.doses.every(dose => dose >= 1)).toBe(true)
  })
})

describe('loads', () => {
  it('9.2 yd³ come in one truck of 10, 11.7 yd³ in two equal ones', () => {
    const loads = (yards: number) => {
      const made = planLoads({ orderM3: yards * yd3M3 })
      return made.ok ? made.value.loadsM3.map(volume => volume / yd3M3) : []
    }
    expect(loads(9.2)).toEqual([expect.closeTo(9.2, 9)])
    expect(loads(11.7)).toEqual([expect.closeTo(5.85, 9), expect.closeTo(5.85, 9)])
  })

  it('the parts of a load make it up, four at most', () => {
    for (const yards of [0.5, 2, 5, 9, 27]) {
      const made = planLoads({ orderM3: yards * yd3M3 })
      if (!made.ok) throw new Error('no loads')
      made.value.loadsM3.forEach((volume, load) => {
        const own = made.value.portions.filter(portion => portion.load === load)
        expect(own.length).toBeLessThanOrEqual(4)
        expect(own.reduce((sum, portion) => sum + portion.volumeM3, 0)).toBeCloseTo(volume, 9)
      })
    }
  })

  it('a balance load brings the rest at the thickness really running', () => {
    // 200 ft² out of 600 with 2.6 yd³: 4.212 in.
    const balance = balanceLoad({
      placedM2: 200 * ft2M2,
      wholeM2: 600 * ft2M2,
      usedM3: 2.6 * yd3M3,
      paceM2H: 600 * ft2M2,
      nowMs: 0,
      noticeMin: 90,
      onSiteM3: 3 * yd3M3,
    })!
    expect(balance.thicknessM / 0.0254).toBeCloseTo((2.6 * 27 * 12) / 200, 9)
    expect(balance.neededM3 / yd3M3).toBeCloseTo(5.2 * 1.1 - 3, 9)
    // Three yards cover 230.8 ft², 23 min at 600 ft²/h; less 90 min of notice: it had to be called before.
    expect(balance.callByMs! / 60_000).toBeCloseTo((3 / 2.6) * 20 - 90, 6)
    expect(
      balanceLoad({ placedM2: 0, wholeM2: 1, usedM3: 0, paceM2H: 0, nowMs: 0, noticeMin: 90, onSiteM3: 0 }),
    ).toBeNull()
  })
})

describe('bad input', () => {
  it('a truck of 0 yd³', () =>
    expect(planLoads({ orderM3: 5, loadM3: 0 })).toEqual({
      ok: false,
      error: [{ code: 'truckEmpty', severity: 'stop', values: { loadM3: 0 } }],
    }))

  it.each([0, 1, 2])('a crew of %i', hands =>
    expect(solveDay(crewDay({ areaFt2: 300, hands, weather: hot, startH: 7 }))).toEqual({
      ok: false,
      error: [{ code: 'crewTooSmall', severity: 'stop', values: { hands, leastHands: 3 } }],
    }),
  )

  it('a pour whose weather ends before it is ready', () => {
    const plan = planned({ areaFt2: 400, hands: 5, startH: 23 })
    expect(plan.findings.map(finding => finding.code)).toContain('setUnknown')
  })
})

describe('capacity', () => {
  const { strips: _, ...rest } = crewDay({ areaFt2: 100, hands: 5, weather: hot, startH: 7 })

  it('says which rule holds', () => {
    expect(capacityOf({ ...rest, capM2: 300 * ft2M2 })).toMatchObject({ rule: 'userCap', capacityM2: 300 * ft2M2 })
    const noon = capacityOf({ ...rest, startMs: clock(13), capM2: 800 * ft2M2 })
    expect(noon.rule).toBe('crewAndWeather')
    expect(noon.capacityM2).toBeCloseTo(noon.crewM2, 9)
  })

  it('the map has every hour and crew', () => {
    const cells = capacityMap(rest, [clock(7), clock(13)], [4, 6])
    expect(cells).toHaveLength(4)
    expect(cells[0]!.answer.crewM2).toBeGreaterThan(cells[2]!.answer.crewM2)
    expect(cells[3]!.answer.crewM2).toBeGreaterThanOrEqual(cells[2]!.answer.crewM2 - 0.5)
  })
})

describe('people (common practice, no source)', () => {
  const of = (areaFt2: number, borderM: number, mostAirC: number) =>
    crewAdvice({
      split: { placers: 3, color: 1, border: 0 },
      hands: 5,
      areaM2: areaFt2 * ft2M2,
      borderM,
      hardener: true,
      mostAirC,
    }).wantedHands

  it('one more for hardener above 200 ft², one for a border alone, one above 90 °F', () => {
    expect([of(150, 0, 20), of(250, 0, 20), of(250, 10, 20), of(250, 10, 33)]).toEqual([3, 4, 5, 6])
  })

  it('each hand has a job and a reason', () => {
    const { crew } = crewAdvice({
      split: { placers: 3, color: 1, border: 0 },
      hands: 5,
      areaM2: 40,
      borderM: 0,
      hardener: true,
      mostAirC: 20,
    })
    expect(crew).toHaveLength(5)
    expect(crew.every(row => row.role !== '' && row.why !== '')).toBe(true)
  })
})
