/** From strips, hands, trucks and weather to the problem the dosing solves: when each strip is placed, ready, too hard. */
import type { Crew, Mix } from '../../../shared/document/day'
import type { Finish } from '../../../shared/document/materials'
import { type SettingOverrides, settingValue } from '../../../shared/settings'
import { rideMinutes, type SetLearned } from '../../concrete/setTargets'
import type { SlabWeather } from '../../concrete/slabWeather'
import { mostOnSiteMin } from '../../concrete/tables/retarderDose'
import type { CrewSplit } from './crewSplit'
import type { DoseProblem, StripWindow } from './dosing'
import type { Retarder } from './retarder'
import { type SetTable, setTable } from './setTable'
import type { SunQuantile } from './stripSun'
import { borderMin, colorTasks, placingTasks, type StripSize, stampingTasks, sumMin } from './stripWork'
import { type HandRates, handRates } from './taskTable'

const minuteMs = 60_000

/** 0, 30 and 60 minutes: on-site retarder buys up to an hour (common practice, no source). */
export const dosesMin: readonly number[] = [0, mostOnSiteMin / 2, mostOnSiteMin]

/** More stops than this are not planned: each costs the crew its pace. */
const mostStopsPlanned = 6

export interface DayStrip extends StripSize {
  readonly id: string
  /** Index into the loads. */
  readonly load: number
  readonly volumeM3: number
  readonly sun: readonly SunQuantile[]
}

export interface DayInput {
  /** In placing order. */
  readonly strips: readonly DayStrip[]
  /** First truck at the chute. */
  readonly startMs: number
  readonly hands: number
  readonly experience: Crew['experience']
  readonly pattern: Finish['pattern']
  /** Dry-shake color; false where the color is in the mix. */
  readonly hardener: boolean
  readonly methodM3H: number
  readonly thicknessM: number
  readonly mix: Mix
  readonly weather: SlabWeather
  readonly learned?: SetLearned
  readonly settings?: SettingOverrides
  /** The product in hand, where one is entered. */
  readonly retarder?: Retarder
  /** Shared by plans of one weather and mix; made if left out. */
  readonly tables?: SetTables
  /** Strips that are down, from the first on. */
  readonly known?: readonly KnownStrip[]
  /** The trucks as they came or are told to come, by load. */
  readonly trucks?: readonly TruckTimes[]
  /** The clock of the day under way: what is not told as done ends no sooner. */
  readonly nowMs?: number
  /** When strips were stamped, by strip. */
  readonly stampedMs?: readonly (number | undefined)[]
  /** Time that placing takes over what hands, method and screed tell, for strips that are not down; 1 if left out. */
  readonly placingFactor?: number
  /** Retarder that is in the drum as the next strip is placed, where that is known. */
  readonly drumDoseMin?: number
}

export interface TruckTimes {
  readonly batchedMs?: number
  /** At the chute; not before. */
  readonly onSiteMs?: number
}

export interface KnownStrip {
  readonly placedFromMs: number
  readonly placedToMs: number
  /** When its load was batched. */
  readonly batchedMs: number
  readonly doseMin: number
  /** Seen ready, by finger. */
  readonly readyMs?: number
}

/** Set tables by shade history. */
export type SetTables = Map<SunQuantile['history'], SetTable>

/** Placing of one strip without any mixing stop, minutes from the first truck. */
export interface PlacedStrip {
  readonly fromMin: number
  readonly toMin: number
  /** When its truck came. */
  readonly arrivedMin: number
}

export const ratesOf = (input: DayInput): HandRates =>
  handRates(input.experience, input.pattern, input.hardener, input.settings)

export const tableOf = (input: DayInput, tables: SetTables, { history }: SunQuantile): SetTable => {
  const known = tables.get(history)
  if (known) return known
  const { weather, thicknessM, mix, learned, settings } = input
  const made = setTable(
    {
      ...{ weather, thicknessM, mix, shade: history },
      ...(learned === undefined ? {} : { learned }),
      ...(settings === undefined ? {} : { settings }),
    },
    mostOnSiteMin,
  )
  tables.set(history, made)
  return made
}

/** Strip after strip at the pace of the placers; the next truck comes a gap after the last is empty. */
export function placeStrips(input: DayInput, placers: number): PlacedStrip[] {
  const rates = ratesOf(input)
  const gapMin = settingValue(input.settings, 'truckGapMin')
  let at = 0
  let arrivedMin = 0
  const rideMin = rideMinutes(input.mix, input.settings)
  const minOf = (ms: number): number => (ms - input.startMs) / minuteMs
  const nowMin = input.nowMs === undefined ? Number.NEGATIVE_INFINITY : minOf(input.nowMs)
  return input.strips.map((strip, i) => {
    const known = input.known?.[i]
    if (known) {
      at = minOf(known.placedToMs)
      arrivedMin = minOf(known.batchedMs) + rideMin
      return { fromMin: minOf(known.placedFromMs), toMin: at, arrivedMin }
    }
    const isNewLoad = i === 0 || strip.load !== input.strips[i - 1]!.load
    if (isNewLoad) {
      const { batchedMs, onSiteMs } = input.trucks?.[strip.load] ?? {}
      if (onSiteMs !== undefined) at = Math.max(at, minOf(onSiteMs))
      else if (i > 0) at += gapMin
      arrivedMin = batchedMs === undefined ? at : minOf(batchedMs) + rideMin
      at = Math.max(at, arrivedMin)
    }
    const methodM2H = strip.volumeM3 > 0 ? (input.methodM3H * strip.areaM2) / strip.volumeM3 : Number.POSITIVE_INFINITY
    const fromMin = at
    at = Math.max(at + (input.placingFactor ?? 1) * sumMin(placingTasks(strip, placers, rates, methodM2H)), nowMin)
    return { fromMin, toMin: at, arrivedMin }
  })
}

interface Span {
  readonly share: number
  readonly fromMs: number
  readonly toMs: number
}

/** The instant by which this share of an area is reached, each part of it evenly over its span; NaN where one is unknown. */
export function whenShare(spans: readonly Span[], share: number): number {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const { fromMs, toMs } of spans) {
    if (Number.isNaN(fromMs) || Number.isNaN(toMs)) return Number.NaN
    low = Math.min(low, fromMs, toMs)
    high = Math.max(high, fromMs, toMs)
  }
  if (spans.length === 1) return low + share * (high - low)
  const reached = (at: number): number =>
    spans.reduce((sum, { share: own, fromMs, toMs }) => {
      const [from, to] = fromMs <= toMs ? [fromMs, toMs] : [toMs, fromMs]
      return sum + own * (to > from ? Math.min(1, Math.max(0, (at - from) / (to - from))) : at >= from ? 1 : 0)
    }, 0)
  for (let turn = 0; turn < 40 && high - low > 500; turn++) {
    const middle = (low + high) / 2
    if (reached(middle) < share) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** A strip is ready when 90 % of it is, and too hard when the first 5 % is. */
const readyShareOfStrip = 0.9
const tooHardShareOfStrip = 0.05

/** Ready and too hard of a strip, UTC ms, for one dose and delay of placing. NaN where the weather ends before. */
export function stripTimesMs(
  input: DayInput,
  tables: SetTables,
  strip: DayStrip,
  placed: PlacedStrip,
  doseMin: number,
  stopsMin: number,
  factor = 1,
): { readonly readyMs: number; readonly tooHardMs: number } {
  const at = (min: number): number => input.startMs + (min + stopsMin) * minuteMs
  const spans = (of: 'ready' | 'tooHard'): Span[] =>
    strip.sun.map(quantile => {
      const table = tableOf(input, tables, quantile)
      const when = (min: number): number =>
        table.when(at(min), { of, doseMin, waitMin: min - placed.arrivedMin, factor })
      return { share: quantile.share, fromMs: when(placed.fromMin), toMs: when(placed.toMin) }
    })
  return {
    readyMs: whenShare(spans('ready'), readyShareOfStrip),
    tooHardMs: whenShare(spans('tooHard'), tooHardShareOfStrip),
  }
}

/** What cannot be told from the known hours: never ready, long too hard. */
export const unknownWindow: StripWindow = { colorFromMin: 0, readyMin: 1e6, tooHardMin: 0 }

/** False where the weather hours end before what has this slack sets. */
export const isSetKnown = ({ slackMin }: { readonly slackMin: number }): boolean => slackMin > -1e5

function windowOf(
  input: DayInput,
  tables: SetTables,
  strip: DayStrip,
  placed: PlacedStrip,
  doseMin: number,
  stopsMin: number,
): StripWindow {
  const { readyMs, tooHardMs } = stripTimesMs(input, tables, strip, placed, doseMin, stopsMin)
  if (Number.isNaN(readyMs)) return unknownWindow
  const endMs = input.weather.fromMs + input.weather.steps * input.weather.stepMs
  const readyMin = (readyMs - input.startMs) / minuteMs
  const toMin = placed.toMin + stopsMin
  return {
    colorFromMin: toMin + Math.max(0, settingValue(input.settings, 'colorFromShare') * (readyMin - toMin)),
    readyMin,
    tooHardMin: ((Number.isNaN(tooHardMs) ? endMs : tooHardMs) - input.startMs) / minuteMs,
  }
}

const between = (a: StripWindow, b: StripWindow, share: number): StripWindow => ({
  colorFromMin: a.colorFromMin + share * (b.colorFromMin - a.colorFromMin),
  readyMin: a.readyMin + share * (b.readyMin - a.readyMin),
  tooHardMin: a.tooHardMin + share * (b.tooHardMin - a.tooHardMin),
})

const nearestDose = (doseMin: number): number =>
  dosesMin.reduce((best, dose, i) => (Math.abs(dose - doseMin) < Math.abs(dosesMin[best]! - doseMin) ? i : best), 0)

/** Of the strips that are down, and of the next where the drum is known. What is in a drum stays in it. */
function fixedDosesOf(input: DayInput): number[] {
  const told = [
    ...(input.known ?? []).map(({ doseMin }) => doseMin),
    ...(input.drumDoseMin === undefined ? [] : [input.drumDoseMin]),
  ].slice(0, input.strips.length)
  const doses: number[] = []
  told.forEach((doseMin, i) => {
    const isSameLoad = i > 0 && input.strips[i]!.load === input.strips[i - 1]!.load
    doses.push(Math.max(nearestDose(doseMin), isSameLoad ? doses[i - 1]! : 0))
  })
  return doses
}

const knownDoses = (input: DayInput): number[] => fixedDosesOf(input).slice(0, input.known?.length ?? 0)

/** Mixing stops that are over. */
const stopsKnown = (input: DayInput): number => stopsOf(input, knownDoses(input))

function stopsOf(input: DayInput, doses: readonly number[]): number {
  return doses.filter((dose, i) => {
    const sameLoad = i > 0 && input.strips[i]!.load === input.strips[i - 1]!.load
    return dose > (sameLoad ? doses[i - 1]! : 0)
  }).length
}

/** What was seen of a strip stands over what was expected; one that is stamped can no longer be lost. */
function seenWindow(input: DayInput, strip: number, known: KnownStrip, expected: StripWindow): Partial<StripWindow> {
  const minOf = (ms: number): number => (ms - input.startMs) / minuteMs
  const stampedMs = input.stampedMs?.[strip]
  if (stampedMs !== undefined) return { colorFromMin: 0, readyMin: minOf(stampedMs), tooHardMin: doneMin }
  // Without weather hours up to its set, its end is as unknown as before.
  if (known.readyMs === undefined || expected === unknownWindow) return {}
  const readyMin = minOf(known.readyMs)
  return { readyMin, colorFromMin: Math.min(expected.colorFromMin, readyMin) }
}

/** Too hard of a strip that is stamped: later than anything. */
export const doneMin = 1e6

export interface PlacedWindows {
  readonly placed: readonly PlacedStrip[]
  readonly windows: DoseProblem['windows']
  readonly mostStops: number
}

/** Windows for no stop and for the most, those between on the straight line: a few minutes of placing, off by seconds. */
export function windowsFor(input: DayInput, placers: number, tables: SetTables): PlacedWindows {
  const placed = placeStrips(input, placers)
  const stopMin = settingValue(input.settings, 'mixingStopMin')
  const portions = new Map<number, number>()
  for (const { load } of input.strips) portions.set(load, (portions.get(load) ?? 0) + 1)
  const mostStops = Math.max(
    // More than planned may have been made.
    stopsOf(input, fixedDosesOf(input)),
    Math.min(
      mostStopsPlanned,
      [...portions.values()].reduce((sum, count) => sum + Math.min(count, dosesMin.length - 1), 0),
    ),
  )
  const knownStops = stopsKnown(input)
  const windows = input.strips.map((strip, i) =>
    dosesMin.map(doseMin => {
      const none = windowOf(input, tables, strip, placed[i]!, doseMin, 0)
      const known = input.known?.[i]
      if (known !== undefined) {
        const own = { ...none, ...seenWindow(input, i, known, none) }
        return Array.from({ length: mostStops + 1 }, () => own)
      }
      const open = Math.max(1, mostStops - knownStops)
      const most = windowOf(input, tables, strip, placed[i]!, doseMin, open * stopMin)
      const unknown = none === unknownWindow || most === unknownWindow
      return Array.from({ length: mostStops + 1 }, (_, stops) =>
        unknown ? unknownWindow : between(none, most, Math.max(0, stops - knownStops) / open),
      )
    }),
  )
  return { placed, windows, mostStops }
}

export function dayProblem(input: DayInput, split: CrewSplit, made: PlacedWindows): DoseProblem {
  const { strips } = input
  const rates = ratesOf(input)
  const stopMin = settingValue(input.settings, 'mixingStopMin')
  const knownStops = stopsKnown(input)
  const isDone = (strip: number): boolean => input.stampedMs?.[strip] !== undefined
  const stampMin = strips.map((strip, i) =>
    isDone(i) ? 0 : sumMin(stampingTasks(strip, split.placers, rates, split.border === 0)),
  )
  const leastOpenMin = stampMin.reduce(
    (least, min, i) => (isDone(i) ? least : Math.min(least, min)),
    Number.POSITIVE_INFINITY,
  )
  const placedMin = Math.max(
    made.placed.at(-1)?.toMin ?? 0,
    // The strip under the mats is not done before now.
    input.nowMs === undefined ? 0 : (input.nowMs - input.startMs) / minuteMs - leastOpenMin,
  )
  const fixedDoses = fixedDosesOf(input)
  return {
    ...(fixedDoses.length === 0 ? {} : { fixedDoses }),
    loadOf: strips.map(strip => strip.load),
    volumeM3: strips.map(strip => strip.volumeM3),
    dosesMin,
    windows: made.windows,
    mostStops: made.mostStops,
    placedMin: Array.from(
      { length: made.mostStops + 1 },
      (_, stops) => placedMin + Math.max(0, stops - knownStops) * stopMin,
    ),
    colorMin: strips.map((strip, i) => (isDone(i) ? 0 : sumMin(colorTasks(strip, split.color, rates)))),
    stampMin,
    borderMin: strips.map((strip, i) => (split.border > 0 && !isDone(i) ? borderMin(strip, split.border, rates) : 0)),
  }
}

/** When the load of a strip was batched, minutes from the first truck. */
export const batchedMin = (input: DayInput, placed: PlacedStrip): number =>
  placed.arrivedMin - rideMinutes(input.mix, input.settings)
