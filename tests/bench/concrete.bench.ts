/** Set clock of every cell of a slab: grouped by shade history against one run and one object a cell. */
import { setTimesOfCells } from '../../core/concrete/groupedSetClock'
import { predictSet, quickSet, quickSetByDose, readSetTimes, setRun } from '../../core/concrete/setClock'
import { runSlab } from '../../core/concrete/slabHeat'
import { cellHistories } from '../concrete/cellFixture'
import { clock, mildDay, weatherOf } from '../concrete/dayFixture'
import type { Bench } from './row'

const cells = 40_000
/** The slow way is timed on this many cells and scaled: it has no set-up to spread. */
const sampled = 1_000

const median = (values: readonly number[]): number =>
  [...values].sort((first, second) => first - second)[Math.floor(values.length / 2)]!

function timeMs(runs: number, work: () => unknown): number {
  work()
  work()
  return median(
    Array.from({ length: runs }, () => {
      const from = process.hrtime.bigint()
      work()
      return Number(process.hrtime.bigint() - from) / 1e6
    }),
  )
}

export const bench: Bench = async () => {
  const weather = weatherOf(mildDay)
  const common = { weather, thicknessM: 0.1016, mix: {}, placedMs: clock(8), doseMin: 0 }
  const histories = cellHistories({ cells, groups: 150, seed: 42 })
  const shares = Array.from({ length: sampled }, (_, cell) => {
    const from = cell * 40 * histories.steps
    return Array.from(histories.classes.subarray(from, from + histories.steps), kind => histories.shareOfClass[kind]!)
  })
  const shadeOf = (share: readonly number[]) => ({ fromMs: histories.fromMs, stepMs: histories.stepMs, share })
  const scaled = (work: (share: readonly number[]) => unknown): number =>
    (timeMs(5, () => shares.map(work)) * cells) / sampled
  const grouped = timeMs(15, () => setTimesOfCells(histories, common))
  const objects = scaled(share => {
    const { run, targets } = setRun({ ...common, shade: shadeOf(share) })
    const course = runSlab({ ...run, untilAgeH: Number.POSITIVE_INFINITY })
    return { course, ...readSetTimes(course, targets, 0) }
  })
  const stopped = scaled(share => quickSet({ ...common, shade: shadeOf(share) }))
  const ratio = objects / grouped
  const { doseMin: _none, ...undosed } = common
  const scan = timeMs(5, () => {
    for (let start = 0; start < 60; start++)
      for (let strip = 0; strip < 20; strip++)
        quickSetByDose({ ...undosed, placedMs: clock(6 + start / 10 + strip / 20) }, [0, 30, 60])
  })
  const one = timeMs(25, () => {
    predictSet(common)
  })
  return [
    {
      id: 'concrete.grouped',
      what: '40,000 cells × 168 steps: grouped by shade history, stopped at too hard',
      value: ratio,
      unit: '×',
      peer: 'one object with its whole day a cell',
      target: '≥ 200',
      ok: ratio >= 200,
    },
    {
      id: 'concrete.groupedStopped',
      what: 'the same',
      value: stopped / grouped,
      unit: '×',
      peer: 'one run a cell, also stopped',
      target: null,
      ok: null,
    },
    {
      id: 'concrete.groupedTime',
      what: 'ready and too hard of 40,000 cells',
      value: grouped,
      unit: 'ms',
      peer: null,
      target: '≤ 30',
      ok: null,
    },
    {
      id: 'concrete.scan',
      what: '60 starts × 20 histories × 3 doses',
      value: scan,
      unit: 'ms',
      peer: null,
      target: '≤ 250',
      ok: null,
    },
    {
      id: 'concrete.twoClocks',
      what: 'one place with its layered column',
      value: one,
      unit: 'ms',
      peer: null,
      target: '≤ 5',
      ok: null,
    },
  ]
}
