/** Ready and too hard of one shade history for any placing instant, from a few runs of the heat balance. */

import { type SetInput, type SetRun, setRun } from '../../concrete/setClock'
import { rideMinutes } from '../../concrete/setTargets'
import { runSlab, type SlabCourse, whenAged } from '../../concrete/slabHeat'

const minuteMs = 60_000
/** Runs are this far apart; between two of them times are read on the straight line, off by seconds. */
const apartMs = 15 * minuteMs

export interface Needed {
  readonly of: 'ready' | 'tooHard'
  /** Minutes of delay bought at the placed temperature; ≥ 0. */
  readonly doseMin: number
  /** Batching to placing beyond the ride, minutes: the drum's wait counts as age. */
  readonly waitMin: number
  /** Factor on the needed age: 1, or e^(±spread). */
  readonly factor?: number
}

export interface SetTable {
  /** UTC ms; NaN when the known hours end before it happens. */
  readonly when: (placedMs: number, needed: Needed) => number
  /** Most evaporation a wet surface meets, kg/m²h. */
  readonly mostEvaporation: (placedMs: number) => number
  readonly spreadLn: number
  readonly run: (placedMs: number) => SetRun
}

interface Entry extends SetRun {
  readonly course: SlabCourse
}

/** Runs are made when first asked for and kept with the table. `mostDoseMin` bounds the doses that may be asked. */
export function setTable(input: Omit<SetInput, 'placedMs' | 'doseMin' | 'batchedMs'>, mostDoseMin: number): SetTable {
  const entries = new Map<number, Entry>()
  const rideMs = rideMinutes(input.mix, input.settings) * minuteMs
  const entryAt = (slot: number): Entry => {
    const known = entries.get(slot)
    if (known) return known
    const placedMs = slot * apartMs
    const made = setRun({ ...input, placedMs, batchedMs: placedMs - rideMs, doseMin: mostDoseMin })
    const entry = { ...made, course: runSlab(made.run) }
    entries.set(slot, entry)
    return entry
  }
  const afterPlacing = (slot: number, { of, doseMin, waitMin, factor }: Needed): number => {
    const { course, targets, ageHPerDoseMin } = entryAt(slot)
    const neededH = of === 'ready' ? targets.readyAgeH : targets.tooHardAgeH
    const ageH = (neededH + doseMin * ageHPerDoseMin) * (factor ?? 1) - waitMin * ageHPerDoseMin
    return (whenAged(course, course.points, ageH) ?? Number.NaN) - slot * apartMs
  }
  return {
    spreadLn: entryAt(Math.floor(input.weather.fromMs / apartMs)).targets.spreadLn,
    when: (placedMs, needed) => {
      const slot = Math.floor(placedMs / apartMs)
      const share = placedMs / apartMs - slot
      const first = afterPlacing(slot, needed)
      return placedMs + (share === 0 ? first : first + share * (afterPlacing(slot + 1, needed) - first))
    },
    mostEvaporation: placedMs => entryAt(Math.round(placedMs / apartMs)).course.mostEvaporationKgM2H,
    run: placedMs => entryAt(Math.round(placedMs / apartMs)),
  }
}
