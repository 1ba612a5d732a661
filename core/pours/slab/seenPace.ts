/** How fast the crew places today, from the taps, for planning what is still to be placed. */
import { settingValue } from '../../../shared/settings'
import { type DayInput, ratesOf } from '../day/dayProblem'
import type { SolvedDay } from '../day/solveDay'
import { placingTasks, sumMin } from '../day/stripWork'
import { placedCount, type SlabState } from './slabState'

export interface SeenPace {
  /** Time that placing takes over what was planned: the rest is planned with it. 1 without a sighting. */
  readonly factor: number
  /** Strips it was seen on. */
  readonly strips: number
  /** True where more was seen than is believed: `factor` is then the most, or the least, that is. */
  readonly isLimited: boolean
}

/** Twice as slow or as fast is believed at most (own choice): beyond it a tap was late or forgotten. */
const mostFactor = 2
/** What was planned weighs as much as one strip seen (own choice). */
const plannedWeight = 1
/** Nobody places with fewer. */
const leastPlacers = 2

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = sorted.length / 2
  return sorted.length % 2 === 1 ? sorted[Math.floor(middle)]! : (sorted[middle - 1]! + sorted[middle]!) / 2
}

/** Of a strip, under which a mark of the concrete's front says little of the pace (own choice). */
const leastShare = 0.25

/**
 * A strip counts where its beginning was tapped too: as the strip before it in the load was down, or as its truck came,
 * the later of the two; a mixing stop and hands that were missing then are allowed for. A strip under way counts with
 * the share that lies behind the mark of the front, `frontM2` = area of the pour behind it. The median of the logarithms
 * stands against one tap gone wrong; few strips move it little.
 */
export function seenPace(
  day: DayInput,
  { split }: Pick<SolvedDay, 'split'>,
  state: SlabState,
  frontM2?: number,
): SeenPace {
  const rates = ratesOf(day)
  const stopMin = settingValue(day.settings, 'mixingStopMin')
  /** `share` of the strip was down at `atMs`. */
  const ratioOf = (i: number, atMs: number, share: number, doseMin: number, handsMissing: number): number[] => {
    const strip = day.strips[i]
    if (!strip) return []
    const before = state.strips[i - 1]
    const isFirst = i === 0 || day.strips[i - 1]!.load !== strip.load
    const cameMs = isFirst ? state.loads[strip.load]?.onSiteMs : before?.placedMs
    if (cameMs === undefined || (i > 0 && before?.placedMs === undefined)) return []
    const fromMs = Math.max(cameMs, before?.placedMs ?? Number.NEGATIVE_INFINITY)
    const wasMin = isFirst ? 0 : (before?.doseMin ?? 0)
    const seenMin = (atMs - fromMs) / 60_000 - (doseMin > wasMin ? stopMin : 0)
    const methodM2H = strip.volumeM3 > 0 ? (day.methodM3H * strip.areaM2) / strip.volumeM3 : Number.POSITIVE_INFINITY
    const placers = Math.max(leastPlacers, split.placers - handsMissing)
    const plannedMin = share * sumMin(placingTasks(strip, placers, rates, methodM2H))
    return seenMin > 0 && plannedMin > 0 ? [Math.log(seenMin / plannedMin)] : []
  }
  const whole = state.strips.flatMap(({ placedMs, doseMin = 0, handsMissing = 0 }, i) =>
    placedMs === undefined ? [] : ratioOf(i, placedMs, 1, doseMin, handsMissing),
  )
  const ratios = [...whole, ...underWay()]
  if (ratios.length === 0) return { factor: 1, strips: 0, isLimited: false }
  const seen = (median(ratios) * ratios.length) / (ratios.length + plannedWeight)
  const most = Math.log(mostFactor)
  const isLimited = Math.abs(seen) > most
  return { factor: Math.exp(isLimited ? Math.sign(seen) * most : seen), strips: ratios.length, isLimited }

  function underWay(): number[] {
    const next = placedCount(state)
    const strip = day.strips[next]
    if (frontM2 === undefined || !state.front || !strip) return []
    const downM2 = day.strips.slice(0, next).reduce((sum, { areaM2 }) => sum + areaM2, 0)
    const share = (frontM2 - downM2) / strip.areaM2
    if (share < leastShare || share > 1) return []
    return ratioOf(next, state.front.atMs, share, state.loads[strip.load]?.doseMin ?? 0, state.handsMissing)
  }
}
