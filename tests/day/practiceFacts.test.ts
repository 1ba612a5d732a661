/** Facts of the trade that the day plan has to reproduce. All of them: common practice, no source. */
import { describe, expect, it } from 'vitest'
import { capacityOf } from '../../core/pours/day/capacityOf'
import { solveDay } from '../../core/pours/day/solveDay'
import { openStrip } from '../../core/pours/day/stripSun'
import { clock, dayStartMs, weatherOf } from '../concrete/dayFixture'
import { crewDay, dayOf, ft2M2 } from './crewDay'

const solvedOf = (input: Parameters<typeof crewDay>[0]) => {
  const solved = solveDay(crewDay(input), { withLargest: true })
  if (!solved.ok) throw new Error(solved.error[0]?.code)
  return solved.value
}

const capacityFt2 = (hands: number, weather: ReturnType<typeof weatherOf>, startH: number): number => {
  const { strips: _, ...rest } = crewDay({ areaFt2: 100, hands, weather, startH })
  return capacityOf({ ...rest, sun: openStrip }).crewM2 / ft2M2
}

const mild = weatherOf(dayOf(70, 70, 'overcast'))
const warm = weatherOf(dayOf(82, 82))
const hot = weatherOf(dayOf(95, 75))

describe('common practice, no source', () => {
  it.each([4, 5, 6])('at 70 °F a crew of %i stamps 640 ft² from one truck without retarder', hands => {
    expect(solvedOf({ areaFt2: 640, hands, weather: mild, startH: 7 }).plainSlackMin).toBeGreaterThan(0)
  })

  it('and a crew of five fairly easily', () => {
    expect(solvedOf({ areaFt2: 640, hands: 5, weather: mild, startH: 7 }).plainSlackMin).toBeGreaterThan(10)
  })

  it('at 82 °F in the sun the same load without retarder is lost with four hands', () => {
    expect(solvedOf({ areaFt2: 640, hands: 4, weather: warm, startH: 9 }).plainSlackMin).toBeLessThan(0)
  })

  it.each([4, 5, 6])('on a 95 °F day a crew of %i takes 300 to 650 ft² with retarder before noon', hands => {
    const ft2 = capacityFt2(hands, hot, 10)
    expect(ft2).toBeGreaterThanOrEqual(300)
    expect(ft2).toBeLessThanOrEqual(650)
  })

  it.each([4, 5, 6])('a crew of %i does about half as much or less when it starts at 13:00', hands => {
    const [morning, noon] = [capacityFt2(hands, hot, 7), capacityFt2(hands, hot, 13)]
    expect(noon).toBeLessThanOrEqual(0.55 * morning)
    expect(noon).toBeGreaterThan(0.2 * morning)
  })

  it('on hot days an earlier start is better', () => {
    const slacks = [7, 9, 11, 13].map(
      startH => solvedOf({ areaFt2: 500, hands: 5, weather: hot, startH }).largestSlackMin,
    )
    expect(slacks).toEqual([...slacks].sort((a, b) => b - a))
  })

  it('never more than the common-practice cap is offered', () => {
    const { strips: _, ...rest } = crewDay({ areaFt2: 100, hands: 12, weather: mild, startH: 7 })
    const answer = capacityOf({ ...rest, capM2: 5000 * ft2M2 })
    expect(answer.capacityM2 / ft2M2).toBeCloseTo(1000, 6)
    expect(answer.rule).toBe('commonPractice')
  })

  it('sunny half first gains on a half-shaded patio', () => {
    // Shade until noon on one half, sun on it afterwards not at all: its own half sets later.
    const half = (share: number) => [{ share: 1, history: { fromMs: dayStartMs, stepMs: 3_600_000, share: [share] } }]
    const [sunny, shady] = [half(1), half(0)]
    const slack = (sunnyFirst: boolean) =>
      solvedOf({
        areaFt2: 640,
        hands: 5,
        weather: warm,
        startH: 8,
        sunOf: strip => (strip < 2 === sunnyFirst ? sunny : shady),
      }).plainSlackMin
    expect(slack(true) - slack(false)).toBeGreaterThan(3)
  })

  it('placing an hour later moves too hard by about half an hour on a warming morning', () => {
    const at = (startH: number) => {
      const { run } = solvedOf({ areaFt2: 160, portionsALoad: 1, hands: 4, weather: hot, startH })
      return clock(startH) + run.times[0]!.window.tooHardMin * 60_000
    }
    const movedMin = (at(8) - at(7)) / 60_000
    expect(movedMin).toBeGreaterThan(20)
    expect(movedMin).toBeLessThan(50)
  })
})
