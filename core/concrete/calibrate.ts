/** What the crew's log teaches about its mix: one factor on the needed age, averaged against the first guess. */
import type { Finding } from '../../shared/problem'
import { type SettingOverrides, settingValue } from '../../shared/settings'
import { type SetInput, setRun } from './setClock'
import type { SetLearned } from './setTargets'
import { ageAt, runSlab } from './slabHeat'

/** A strip of a poured day, its instants known. */
export interface LoggedStrip {
  readonly pour: string
  readonly strip: string
  /** Placing, batching, weather, shade, mix, measured temperature and dose as they were. */
  readonly set: Omit<SetInput, 'learned'>
  readonly readyMs?: number
  readonly tooHardMs?: number
}

export interface Calibration extends SetLearned {
  /** Mean of ln(observed age / first guess) over pours, before it is held against the first guess. */
  readonly loggedLn: number
  readonly pours: number
  readonly sightings: number
  readonly findings: readonly Finding[]
}

/** A sighting more than this factor from the guess is taken for a slip of the pen. */
const farFactor = 2

interface Sighting {
  readonly pour: string
  readonly ln: number
  /** Spread of ln age that the observer's minutes make. */
  readonly observerLn: number
}

function sightingsOf(logged: LoggedStrip, observerMin: number): { sightings: Sighting[]; findings: Finding[] } {
  const { pour, strip, set, readyMs, tooHardMs } = logged
  const names = { pour, strip }
  const placedMs = set.placedMs
  const disordered =
    (readyMs !== undefined && readyMs <= placedMs) ||
    (tooHardMs !== undefined && tooHardMs <= Math.max(placedMs, readyMs ?? placedMs))
  if (disordered) return { sightings: [], findings: [{ code: 'logTimesOutOfOrder', severity: 'check', values: names }] }
  const { run, targets, ageHPerDoseMin } = setRun(set)
  const course = runSlab({ ...run, untilAgeH: Number.POSITIVE_INFINITY })
  const doseAgeH = set.doseMin * ageHPerDoseMin
  const sightings: Sighting[] = []
  const findings: Finding[] = []
  for (const [atMs, needed] of [
    [readyMs, targets.readyAgeH],
    [tooHardMs, targets.tooHardAgeH],
  ] as const) {
    if (atMs === undefined) continue
    const age = ageAt(course, atMs)
    if (age === null) {
      findings.push({
        code: 'setNotReached',
        severity: 'check',
        values: { endsUtc: new Date(course.atMs[course.points - 1]!).toISOString() },
      })
      continue
    }
    const factor = (age - doseAgeH) / needed
    if (!(factor > 1 / farFactor && factor < farFactor)) {
      findings.push({ code: 'logFarFromPlan', severity: 'check', values: { ...names, factor } })
      continue
    }
    const before = ageAt(course, atMs - 60_000) ?? age
    sightings.push({ pour, ln: Math.log(factor), observerLn: (observerMin * (age - before)) / (age - doseAgeH) })
  }
  return { sightings, findings }
}

/**
 * Average of ln te at the logged times. The sightings of one pour are averaged first, since they share its load and its
 * weather; then the pours, each with the spread of a pour (setting `pourSpreadLn`) and of the observer (setting
 * `observerMin`), against the first guess with the setting `setSpreadLn`: normal prior, normal likelihood, known
 * spreads (A. Gelman et al., Bayesian Data Analysis, 3rd ed., 2013, §2.5). Without a usable sighting the factor is 1
 * and the spread the first guess's.
 */
export function calibrateSet(log: readonly LoggedStrip[], settings?: SettingOverrides): Calibration {
  const priorLn = settingValue(settings, 'setSpreadLn')
  const pourLn = settingValue(settings, 'pourSpreadLn')
  const observerMin = settingValue(settings, 'observerMin')
  const parts = log.map(strip => sightingsOf(strip, observerMin))
  const findings = parts.flatMap(part => part.findings)
  const sightings = parts.flatMap(part => part.sightings)
  const byPour = new Map<string, Sighting[]>()
  for (const sighting of sightings) byPour.set(sighting.pour, [...(byPour.get(sighting.pour) ?? []), sighting])
  let weight = 0
  let sum = 0
  let plainSum = 0
  for (const seen of byPour.values()) {
    const count = seen.length
    const meanLn = seen.reduce((total, sighting) => total + sighting.ln, 0) / count
    const observerVariance = seen.reduce((total, sighting) => total + sighting.observerLn ** 2, 0) / count ** 2
    const precision = 1 / (pourLn ** 2 + observerVariance)
    weight += precision
    sum += precision * meanLn
    plainSum += meanLn
  }
  const posterior = 1 / (1 / priorLn ** 2 + weight)
  const pours = byPour.size
  return {
    lnFactor: posterior * sum,
    spreadLn: pours === 0 ? priorLn : Math.sqrt(posterior + pourLn ** 2),
    loggedLn: pours === 0 ? 0 : plainSum / pours,
    pours,
    sightings: sightings.length,
    findings,
  }
}
