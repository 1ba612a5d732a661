/** The rest of the day after a tap: batched, placed, ready. */
import type { Finding } from '../../../shared/problem'
import { ok, type Result } from '../../../shared/problem'
import { settingValue } from '../../../shared/settings'
import { rideMinutes } from '../../concrete/setTargets'
import { type DayInput, dosesMin, type KnownStrip, type SetTables, unknownWindow } from './dayProblem'
import { type SolvedDay, solveDay } from './solveDay'

export interface Observation {
  /** Index in placing order. */
  readonly strip: number
  readonly batchedMs?: number
  readonly placedFromMs?: number
  readonly placedToMs?: number
  readonly doseMin?: number
  readonly readyMs?: number
}

export interface Replanned {
  readonly day: DayInput
  readonly solved: SolvedDay
  /** Set of today's mix over what was planned: under 1 sets sooner. */
  readonly setFactor: number
}

/** Set tables of a mix whose ln of set has moved by this much, known with this weight. */
export type TablesFor = (movedLn: number, weight: number) => SetTables

const minuteMs = 60_000

/** Strips that are down, from the first on; what was not tapped is as planned. */
function knownStrips(day: DayInput, solved: SolvedDay, seen: readonly Observation[]): KnownStrip[] {
  const placed = seen.filter(tap => tap.placedToMs !== undefined || tap.readyMs !== undefined)
  const down = placed.reduce((most, tap) => Math.max(most, tap.strip + 1), 0)
  const stopMin = settingValue(day.settings, 'mixingStopMin')
  const rideMs = rideMinutes(day.mix, day.settings) * minuteMs
  const known: KnownStrip[] = []
  for (let strip = 0; strip < Math.min(down, day.strips.length); strip++) {
    const tap = seen.find(own => own.strip === strip)
    const time = solved.run.times.find(own => own.strip === strip)!
    const plan = solved.placed[strip]!
    const movedMin = day.known?.[strip] === undefined ? time.stops * stopMin : 0
    const at = (min: number): number => day.startMs + (min + movedMin) * minuteMs
    const sameLoad = strip > 0 && day.strips[strip]!.load === day.strips[strip - 1]!.load
    const previous = known[strip - 1]
    const placedToMs = tap?.placedToMs ?? Math.max(at(plan.toMin), previous?.placedToMs ?? 0)
    known.push({
      placedToMs,
      placedFromMs:
        tap?.placedFromMs ??
        Math.min(placedToMs, previous?.placedToMs ?? placedToMs - (plan.toMin - plan.fromMin) * minuteMs),
      batchedMs: tap?.batchedMs ?? (sameLoad && previous ? previous.batchedMs : at(plan.arrivedMin) - rideMs),
      doseMin: tap?.doseMin ?? dosesMin[time.dose]!,
      ...(tap?.readyMs === undefined ? {} : { readyMs: tap.readyMs }),
    })
  }
  return known
}

/**
 * Placed strips keep their times and doses; the sightings of ready move the set of today's mix against what was known of
 * it (normal prior, normal likelihood, the spreads of the settings); the rest is solved again. No work is done twice for
 * a shade history already run unless the mix's set has moved; `tablesFor` keeps the runs of a moved set.
 */
export function replan(
  day: DayInput,
  solved: SolvedDay,
  seen: readonly Observation[],
  tablesFor: TablesFor = () => new Map(),
): Result<Replanned, readonly Finding[]> {
  const known = knownStrips(day, solved, seen)
  const priorLn = solved.tables.values().next().value?.spreadLn ?? settingValue(day.settings, 'setSpreadLn')
  const observerMin = settingValue(day.settings, 'observerMin')
  const asPlaced: DayInput = { ...day, known, tables: solved.tables }
  // Ready as it would come with the placing times as they were and the mix as planned, whatever was seen since.
  const { stampedMs: _, ...unstamped } = asPlaced
  const unseen = known.map(({ readyMs: __, ...strip }) => strip)
  const hasSeen = known.some(({ readyMs }) => readyMs !== undefined)
  const expected = solveDay(hasSeen ? { ...unstamped, known: unseen } : asPlaced)
  if (!expected.ok) return expected
  let weight = 1 / priorLn ** 2
  let sum = 0
  for (const { strip, readyMs } of seen) {
    if (readyMs === undefined) continue
    const time = expected.value.run.times.find(own => own.strip === strip)
    const from = known[strip]?.batchedMs
    if (!time || from === undefined) continue
    // What the known hours do not tell is compared with nothing.
    if (time.window.readyMin >= unknownWindow.readyMin) continue
    const planned = day.startMs + time.window.readyMin * minuteMs - from
    const seenFor = readyMs - from
    if (!(planned > 0 && seenFor > 0)) continue
    const precision = 1 / ((observerMin * minuteMs) / planned) ** 2
    weight += precision
    sum += precision * Math.log(seenFor / planned)
  }
  if (!hasSeen) return ok({ day: asPlaced, solved: expected.value, setFactor: 1 })
  const movedLn = sum / weight
  const today: DayInput = {
    ...asPlaced,
    learned: { lnFactor: (day.learned?.lnFactor ?? 0) + movedLn, spreadLn: Math.sqrt(1 / weight) },
    tables: tablesFor(movedLn, weight),
  }
  const again = solveDay(today)
  if (!again.ok) return again
  return ok({ day: today, solved: again.value, setFactor: Math.exp(movedLn) })
}
