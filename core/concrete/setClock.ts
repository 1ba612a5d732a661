/** When a place on the slab is ready to stamp and when it is too hard, with the spread, at the top and in the middle. */
import type { Mix } from '../../shared/document/day'
import type { Finding } from '../../shared/problem'
import { type SettingOverrides, settingValue } from '../../shared/settings'
import { ageRate } from './equivalentAge'
import { evaporationBand } from './evaporation'
import { rideMinutes, type SetLearned, type SetTargets, setTargets } from './setTargets'
import { openSky, type ShadeHistory, shadeOnSteps } from './shadeHistory'
import { runColumn } from './slabColumn'
import { runSlab, type SlabCourse, type SlabRun, whenAged } from './slabHeat'
import { slabModel } from './slabModel'
import type { SlabWeather } from './slabWeather'
import { mostOnSiteMin } from './tables/retarderDose'

export interface SetInput {
  readonly weather: SlabWeather
  /** Direct sun through the day; the open sky if left out. */
  readonly shade?: ShadeHistory
  /** Share of the sky's dome seen, 0…1; 1 if left out. */
  readonly skyView?: number
  readonly thicknessM: number
  readonly mix: Mix
  readonly placedMs: number
  /** When the load was batched; else the mix's ride before placing. */
  readonly batchedMs?: number
  /** Measured in the load; else the mix's, else the air plus the setting `placedOverAirK`. */
  readonly placedC?: number
  readonly doseMin: number
  readonly learned?: SetLearned
  readonly settings?: SettingOverrides
}

/** Instants in UTC ms; null when the known hours end before it happens. */
export interface SetTimes {
  readonly readyMs: number | null
  readonly readyP10Ms: number | null
  readonly readyP90Ms: number | null
  readonly tooHardMs: number | null
  readonly tooHardP10Ms: number | null
  readonly tooHardP90Ms: number | null
}

export interface SetPrediction extends SetTimes {
  /** The top sets or dries so far ahead of the middle that it looks ready early. */
  readonly crust: boolean
  readonly top: SetTimes
  readonly middle: SetTimes
  /** The slab as one body, from placing on, and the instants it belongs to. */
  readonly tempC: readonly number[]
  readonly atMs: readonly number[]
  readonly ageH: readonly number[]
  readonly mostEvaporationKgM2H: number
  readonly targets: SetTargets
  readonly findings: readonly Finding[]
}

/** Distance of the 10th and 90th percentile of a normal from its mean, in spreads. */
const tenthPercentile = 1.2815515655446004

/** Air of the hour in which the concrete goes down, °C. */
function airWhenPlaced(weather: SlabWeather, placedMs: number): number {
  const step = Math.floor((placedMs - weather.fromMs) / weather.stepMs)
  return weather.airC[Math.min(Math.max(step, 0), weather.steps - 1)]!
}

/**
 * A run of the heat balance for a place, and what the concrete's own temperature and the dose make of the needed ages.
 * The retarder's dose is minutes bought at the placed temperature: it moves the needed age, not the heat (own
 * assumption), and its end is sudden.
 */
export interface SetRun {
  readonly run: SlabRun
  readonly targets: SetTargets
  /** Hours of needed age that one minute of dose adds. */
  readonly ageHPerDoseMin: number
  readonly findings: readonly Finding[]
}

export function setRun(input: SetInput): SetRun {
  const { weather, mix, settings, placedMs } = input
  const targets = setTargets(mix, settings, input.learned)
  const model = slabModel(mix, input.thicknessM, settings)
  const findings: Finding[] = [...targets.findings]
  const measured = input.placedC ?? mix.placedTempC
  const airC = airWhenPlaced(weather, placedMs)
  const placedC = measured ?? airC + settingValue(settings, 'placedOverAirK')
  if (measured === undefined) findings.push({ code: 'placedTempMissing', severity: 'note', values: { placedC, airC } })
  if (!(placedC >= 0 && placedC <= 50))
    findings.push({ code: 'placedTempOutOfRange', severity: 'check', values: { placedC } })
  if (input.doseMin > mostOnSiteMin)
    findings.push({ code: 'doseOverHour', severity: 'check', values: { doseMin: input.doseMin } })
  const rate = ageRate(placedC, model.activationJMol)
  const rideH =
    input.batchedMs === undefined ? rideMinutes(mix, settings) / 60 : (placedMs - input.batchedMs) / 3_600_000
  const ageHPerDoseMin = rate / 60
  const mostAgeH = (targets.tooHardAgeH + input.doseMin * ageHPerDoseMin) * Math.exp(tenthPercentile * targets.spreadLn)
  return {
    run: {
      weather,
      model,
      shade: shadeOnSteps(input.shade ?? openSky, weather),
      skyView: input.skyView ?? 1,
      placedMs,
      placedC,
      placedAgeH: rideH * rate,
      untilAgeH: mostAgeH,
    },
    targets,
    ageHPerDoseMin,
    findings,
  }
}

/** Ready and too hard of a course with their p10 and p90: needed age times e^(∓1.28 spread). */
export function readSetTimes(course: SlabCourse, targets: SetTargets, doseAgeH: number): SetTimes {
  const early = Math.exp(-tenthPercentile * targets.spreadLn)
  const ready = targets.readyAgeH + doseAgeH
  const tooHard = targets.tooHardAgeH + doseAgeH
  const when = (ageH: number): number | null => whenAged(course, course.points, ageH)
  return {
    readyMs: when(ready),
    readyP10Ms: when(ready * early),
    readyP90Ms: when(ready / early),
    tooHardMs: when(tooHard),
    tooHardP10Ms: when(tooHard * early),
    tooHardP90Ms: when(tooHard / early),
  }
}

/** The one-body clock alone, for scans; the same times as `predictSet`. Throws nothing; see `SetTimes` for null. */
export function quickSet(input: SetInput): SetTimes {
  const { run, targets, ageHPerDoseMin } = setRun(input)
  return readSetTimes(runSlab(run), targets, input.doseMin * ageHPerDoseMin)
}

/** The same place under several doses of retarder, worked out in one run; one entry a dose, in the order given. */
export function quickSetByDose(input: Omit<SetInput, 'doseMin'>, dosesMin: readonly number[]): readonly SetTimes[] {
  const { run, targets, ageHPerDoseMin } = setRun({ ...input, doseMin: Math.max(0, ...dosesMin) })
  const course = runSlab(run)
  return dosesMin.map(doseMin => readSetTimes(course, targets, doseMin * ageHPerDoseMin))
}

/**
 * Ready and too hard for one place, from shade, weather, mix, placing and dose. The times are those of the slab as one
 * body; the two clocks of the layered column stand beside them. When the top is ready earlier than the middle by the
 * setting `crustPartMin`, or a surface without bleed water dries at the rate that asks for precautions, a `crustLikely`
 * check is returned. Where the hours end too soon the times are null with a
 * `setNotReached` check. An estimate: the finger test and the foreman decide.
 */
export function predictSet(input: SetInput): SetPrediction {
  const { run, targets, ageHPerDoseMin, findings: first } = setRun(input)
  const doseAgeH = input.doseMin * ageHPerDoseMin
  const course = runSlab(run)
  const times = readSetTimes(course, targets, doseAgeH)
  const column = runColumn(run)
  const top = readSetTimes(column.top, targets, doseAgeH)
  const middle = readSetTimes(column.middle, targets, doseAgeH)
  const findings = [...first]
  const partMin = top.readyMs === null || middle.readyMs === null ? 0 : (middle.readyMs - top.readyMs) / 60_000
  const driesOut =
    column.top.dryMs !== null &&
    evaporationBand(column.top.mostEvaporationKgM2H, input.settings) === 'precautions' &&
    (top.readyMs === null || column.top.dryMs < top.readyMs)
  const crust = driesOut || partMin >= settingValue(input.settings, 'crustPartMin')
  if (crust)
    findings.push({
      code: 'crustLikely',
      severity: 'check',
      values: { partMin: Math.round(partMin), dries: driesOut ? 1 : 0 },
    })
  if (times.tooHardMs === null)
    findings.push({
      code: 'setNotReached',
      severity: 'check',
      values: { endsUtc: new Date(course.atMs[course.points - 1]!).toISOString() },
    })
  return {
    ...times,
    crust,
    top,
    middle,
    tempC: Array.from(course.tempC),
    atMs: Array.from(course.atMs),
    ageH: Array.from(course.ageH),
    mostEvaporationKgM2H: Math.max(course.mostEvaporationKgM2H, column.top.mostEvaporationKgM2H),
    targets,
    findings,
  }
}
