/** The largest area to stamp at one time: what the user allows, what is common practice, what this crew can do. */
import type { Site } from '../../../shared/document/site'
import { settingValue } from '../../../shared/settings'
import type { DayInput, DayStrip, SetTables } from './dayProblem'
import { planLoads } from './loads'
import { solveDay } from './solveDay'
import { openStrip, type SunQuantile } from './stripSun'

export type CapacityRule = 'userCap' | 'commonPractice' | 'crewAndWeather'

export interface CapacityInput extends Omit<DayInput, 'strips'> {
  /** The user's cap; no cap of its own where left out. */
  readonly capM2?: number
  /** The common-practice cap; the setting `practiceCapM2`, the most of it, where left out. */
  readonly practiceM2?: number
  /** Border per area of a pour, m/m². */
  readonly borderMPerM2?: number
  /** The worst tenth of the region's sun; the open sky if left out. */
  readonly sun?: readonly SunQuantile[]
}

/**
 * The caps of a site: the user's where one is typed, held against the most of common practice; else the lower of common
 * practice rules.
 */
export const capOf = ({
  capacity,
  settings,
}: Pick<Site, 'capacity' | 'settings'>): Pick<CapacityInput, 'capM2' | 'practiceM2'> =>
  capacity === undefined ? { practiceM2: settingValue(settings, 'capM2') } : { capM2: capacity.capM2 }

export interface CapacityAnswer {
  readonly capacityM2: number
  readonly rule: CapacityRule
  readonly userM2: number | null
  readonly practiceM2: number
  readonly crewM2: number
}

/** A pour twice as long as wide, in the strips its loads make. */
export function stripsOfArea(areaM2: number, input: CapacityInput): readonly DayStrip[] {
  const { thicknessM, settings } = input
  const orderM3 = areaM2 * thicknessM * (1 + settingValue(settings, 'overRunLargeShare'))
  const loads = planLoads({ orderM3, ...(settings === undefined ? {} : { settings }) })
  if (!loads.ok) return []
  const widthM = Math.sqrt(areaM2 / 2)
  return loads.value.portions.map(({ load, volumeM3 }, i) => {
    const own = (areaM2 * volumeM3) / orderM3
    return {
      ...{ id: `${i}`, load, volumeM3, areaM2: own, sun: input.sun ?? openStrip },
      edgeM: (2 * own) / widthM,
      borderM: own * (input.borderMPerM2 ?? 0),
      frontM: widthM,
    }
  })
}

/** Best slack of a pour of this area, any dosing; −∞ where the crew cannot do it at all. */
export function slackOfArea(areaM2: number, input: CapacityInput, tables: SetTables): number {
  const strips = stripsOfArea(areaM2, input)
  const solved = solveDay({ ...input, strips, tables })
  return solved.ok ? solved.value.run.slackMin : Number.NEGATIVE_INFINITY
}

/** Looked for to within this share of the largest area asked about. */
const turns = 9

/**
 * min(user's cap, common-practice cap, the most this crew finishes with the slack wanted at this hour in this weather),
 * and which of them rules. The crew's own answer is searched up to the common-practice cap only: more is never offered.
 */
export function capacityOf(input: CapacityInput): CapacityAnswer {
  const tables: SetTables = input.tables ?? new Map()
  const practiceM2 = input.practiceM2 ?? settingValue(input.settings, 'practiceCapM2')
  const wantedMin = settingValue(input.settings, 'wantedSlackMin')
  const fits = (areaM2: number): boolean => slackOfArea(areaM2, input, tables) >= wantedMin
  let [low, high] = [0, practiceM2]
  if (fits(practiceM2)) low = practiceM2
  else
    for (let turn = 0; turn < turns; turn++) {
      const middle = (low + high) / 2
      if (fits(middle)) low = middle
      else high = middle
    }
  const userM2 = input.capM2 ?? null
  const capacityM2 = Math.min(low, practiceM2, userM2 ?? Number.POSITIVE_INFINITY)
  const rule: CapacityRule =
    userM2 !== null && userM2 <= low ? 'userCap' : low < practiceM2 ? 'crewAndWeather' : 'commonPractice'
  return { capacityM2, rule, userM2, practiceM2, crewM2: low }
}

export interface CapacityCell {
  readonly startMs: number
  readonly hands: number
  readonly answer: CapacityAnswer
}

/** Capacity over start hours and crew sizes, hour by hour, hands within. One set of runs serves the whole map. */
export function capacityMap(
  input: Omit<CapacityInput, 'startMs' | 'hands'>,
  startsMs: readonly number[],
  hands: readonly number[],
): readonly CapacityCell[] {
  const tables: SetTables = input.tables ?? new Map()
  return startsMs.flatMap(startMs =>
    hands.map(count => ({
      startMs,
      hands: count,
      answer: capacityOf({ ...input, startMs, hands: count, tables }),
    })),
  )
}
