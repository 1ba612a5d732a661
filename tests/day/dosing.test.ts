import { describe, expect, it } from 'vitest'
import { bestGrowth, cheapestDoses, largestSlack, runDoses, runInOrder } from '../../core/pours/day/dosing'
import { everyDosing, everyGrowth, randomProblem } from './randomProblem'

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
