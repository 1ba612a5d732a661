import { describe, expect, it } from 'vitest'
import {
  bestGrowth,
  cheapestDoses,
  type DoseProblem,
  largestSlack,
  runDoses,
  runInOrder,
} from '../../core/pours/day/dosing'
import { mulberry32 } from '../concrete/dayFixture'

/** A seeded problem of a few strips: windows that grow with dose and stops, gangs that come late now and then. */
function randomProblem(seed: number): DoseProblem {
  const random = mulberry32(seed)
  const strips = 2 + Math.floor(random() * 4)
  const loads = 1 + Math.floor(random() * 2)
  const doses = 2 + Math.floor(random() * 2)
  const dosesMin = [0, 30, 60].slice(0, doses)
  const loadOf = Array.from({ length: strips }, (_, i) => Math.floor((i * loads) / strips))
  const mostStops = Math.min(6, loads * (doses - 1))
  const hasBorder = random() < 0.5
  const windows = loadOf.map((load, i) => {
    const ready = 90 + i * (4 + 8 * random()) + load * 25 + 20 * random()
    const open = 30 + 50 * random()
    return dosesMin.map(dose =>
      Array.from({ length: mostStops + 1 }, (_, stops) => ({
        colorFromMin: 30 + i * 10 + stops * 5 + dose * 0.3,
        readyMin: ready + dose * (0.8 + 0.3 * random()) + stops * 3,
        tooHardMin: ready + open + dose * (0.8 + 0.3 * random()) + stops * 3,
      })),
    )
  })
  const some = (least: number, most: number): number[] => loadOf.map(() => least + random() * (most - least))
  return {
    ...{ loadOf, dosesMin, windows, mostStops },
    volumeM3: some(0.5, 2),
    placedMin: Array.from({ length: mostStops + 1 }, (_, stops) => 60 + 40 * random() + stops * 5),
    colorMin: some(5, 25),
    stampMin: some(5, 30),
    borderMin: hasBorder ? some(5, 30) : loadOf.map(() => 0),
  }
}

function* everyDosing(strips: number, doses: number): Generator<number[]> {
  const count = doses ** strips
  for (let code = 0; code < count; code++) {
    let rest = code
    yield Array.from({ length: strips }, () => {
      const dose = rest % doses
      rest = Math.floor(rest / doses)
      return dose
    })
  }
}

/** Orders in which the stamped part grows at either end. */
function* everyGrowth(strips: number): Generator<number[]> {
  function* grow(order: number[], left: number, right: number): Generator<number[]> {
    if (order.length === strips) yield order
    if (left > 0) yield* grow([...order, left - 1], left - 1, right)
    if (right < strips - 1) yield* grow([...order, right + 1], left, right + 1)
  }
  for (let first = 0; first < strips; first++) yield* grow([first], first, first)
}

const seeds = Array.from({ length: 520 }, (_, i) => i + 1)

describe('the dosing', () => {
  it('equals brute force in slack and in cost, and stamping at either end does too, on 520 seeded cases', () => {
    let [equalSlack, equalCost, equalGrowth, withCost] = [0, 0, 0, 0]
    for (const seed of seeds) {
      const problem = randomProblem(seed)
      const strips = problem.loadOf.length
      let most = Number.NEGATIVE_INFINITY
      for (const doses of everyDosing(strips, problem.dosesMin.length)) {
        const run = runDoses(problem, doses)
        if (run) most = Math.max(most, run.slackMin)
      }
      const best = largestSlack(problem)!
      if (Math.abs(best.slackMin - most) < 1e-9) equalSlack++
      const wanted = most - 8
      let least = Number.POSITIVE_INFINITY
      for (const doses of everyDosing(strips, problem.dosesMin.length)) {
        const run = runDoses(problem, doses)
        if (run && run.slackMin >= wanted) least = Math.min(least, run.cost)
      }
      const cheap = cheapestDoses(problem, wanted)!
      if (Math.abs(cheap.cost - least) < 1e-9 && cheap.slackMin >= wanted) equalCost++
      if (least > 0) withCost++
      let grown = Number.NEGATIVE_INFINITY
      for (const order of everyGrowth(strips)) grown = Math.max(grown, runInOrder(problem, best.doses, order)!.slackMin)
      if (Math.abs(bestGrowth(problem, best.doses)!.slackMin - grown) < 1e-9) equalGrowth++
    }
    expect({ equalSlack, equalCost, equalGrowth }).toEqual({ equalSlack: 520, equalCost: 520, equalGrowth: 520 })
    // The cases are worth something: many need retarder.
    expect(withCost).toBeGreaterThan(200)
  })

  it('never lowers a dose within a load', () => {
    const problem = randomProblem(3)
    const down = problem.loadOf.map((_, i) => (i === 0 ? 1 : 0))
    expect(runDoses(problem, down)).toBeNull()
    for (const seed of seeds.slice(0, 100)) {
      const own = randomProblem(seed)
      const { doses } = largestSlack(own)!
      doses.forEach((dose, i) => {
        if (i > 0 && own.loadOf[i] === own.loadOf[i - 1]) expect(dose).toBeGreaterThanOrEqual(doses[i - 1]!)
      })
    }
  })

  it('keeps doses that are already in', () => {
    const problem = { ...randomProblem(8), fixedDoses: [1] }
    expect(largestSlack(problem)!.doses[0]).toBe(1)
  })

  it('stamping in placing order is one of the growth orders', () => {
    for (const seed of seeds.slice(0, 50)) {
      const problem = randomProblem(seed)
      const { doses, slackMin } = largestSlack(problem)!
      const same = runInOrder(
        problem,
        doses,
        doses.map((_, i) => i),
      )!
      expect(same.slackMin).toBeCloseTo(slackMin, 9)
    }
  })
})
