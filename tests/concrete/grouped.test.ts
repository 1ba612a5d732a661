import { describe, expect, it } from 'vitest'
import { groupHistories, setTimesOfCells } from '../../core/concrete/groupedSetClock'
import { quickSet } from '../../core/concrete/setClock'
import { cellHistories } from './cellFixture'
import { clock, mildDay, weatherOf } from './dayFixture'

const weather = weatherOf(mildDay)
const common = { weather, thicknessM: 0.1016, mix: {}, placedMs: clock(7.75), doseMin: 30 }

describe('the clocks of all cells at once', () => {
  it('equal those of each cell alone, to the millisecond', () => {
    const histories = cellHistories({ cells: 600, groups: 40, seed: 11 })
    const times = setTimesOfCells(histories, common)
    for (let cell = 0; cell < histories.cells; cell += 7) {
      const share = Array.from(
        histories.classes.subarray(cell * histories.steps, (cell + 1) * histories.steps),
        index => histories.shareOfClass[index]!,
      )
      const alone = quickSet({ ...common, shade: { fromMs: histories.fromMs, stepMs: histories.stepMs, share } })
      const group = times.groupOf[cell]!
      expect(times.readyMs[group]).toBe(alone.readyMs)
      expect(times.tooHardMs[group]).toBe(alone.tooHardMs)
    }
  })

  it('put two cells together only when their histories agree over the span', () => {
    const histories = cellHistories({ cells: 6000, groups: 4000, seed: 5 })
    const { steps, classes } = histories
    const { groupOf, firstCell } = groupHistories(histories, 8, 60)
    const text = (cell: number): string => classes.subarray(cell * steps + 8, cell * steps + 60).join(',')
    const byText = new Map<string, number>()
    for (let cell = 0; cell < histories.cells; cell++) {
      const known = byText.get(text(cell)) ?? groupOf[cell]!
      byText.set(text(cell), known)
      expect(groupOf[cell]).toBe(known)
      expect(text(firstCell[groupOf[cell]!]!)).toBe(text(cell))
    }
    expect(byText.size).toBe(firstCell.length)
    expect(firstCell.length).toBeGreaterThan(512)
  })

  it('do not mind a day whose steps do not come in fours', () => {
    const whole = cellHistories({ cells: 50, groups: 9, seed: 3 })
    const steps = whole.steps - 3
    const classes = new Uint8Array(50 * steps)
    for (let cell = 0; cell < 50; cell++)
      classes.set(whole.classes.subarray(cell * whole.steps, cell * whole.steps + steps), cell * steps)
    const odd = setTimesOfCells({ ...whole, steps, classes }, common)
    const even = setTimesOfCells(whole, common)
    for (let cell = 0; cell < 50; cell++)
      expect(odd.tooHardMs[odd.groupOf[cell]!]).toBe(even.tooHardMs[even.groupOf[cell]!])
  })

  it('tell apart cells that differ only shortly before the slowest of them is too hard', () => {
    const shaded = new Uint8Array(168)
    const one = { ...cellHistories({ cells: 1, groups: 1, seed: 1 }), classes: shaded }
    const slow = setTimesOfCells(one, common).tooHardMs[0]!
    const lateStep = Math.floor((slow - one.fromMs) / one.stepMs)
    const classes = new Uint8Array(2 * 168)
    classes.fill(2, 168 + lateStep - 2, 168 + lateStep + 1)
    const { groupOf, tooHardMs } = setTimesOfCells({ ...one, cells: 2, classes }, common)
    expect(tooHardMs[groupOf[0]!]).toBe(slow)
    expect(tooHardMs[groupOf[1]!]!).toBeLessThan(slow)
  })

  it('are not numbers where the known hours end first', () => {
    const histories = cellHistories({ cells: 20, groups: 4, seed: 2 })
    const times = setTimesOfCells(histories, { ...common, placedMs: clock(22.5) })
    expect(Array.from(times.tooHardMs).every(Number.isNaN)).toBe(true)
    const outside = setTimesOfCells(histories, { ...common, placedMs: clock(40) })
    expect(Array.from(outside.readyMs).every(Number.isNaN)).toBe(true)
  })
})
