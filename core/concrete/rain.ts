/** Rain over a pour: how long it lies open to it, how likely, how much, and whether to go. */
import type { WeatherHour } from '../../shared/document/day'
import type { Finding } from '../../shared/problem'
import { type SettingOverrides, settingValue } from '../../shared/settings'

export interface RainInput {
  readonly hours: readonly WeatherHour[]
  readonly firstConcreteMs: number
  /** The last strip is too hard: from then on rain no longer spoils the print. */
  readonly allHardMs: number
}

export interface RainOutlook {
  /** From first concrete until the color can be washed (setting `rainWashableH` after too hard). */
  readonly exposedHours: number
  readonly washableMs: number
  /** Chance of any rain while it sets: the hours' largest, and as if the hours were independent. */
  readonly settingChanceLeast: number
  readonly settingChanceMost: number
  readonly exposedChanceLeast: number
  readonly exposedChanceMost: number
  /** Expected in the hours given, mm. */
  readonly settingRainMm: number
  readonly exposedRainMm: number
  /** First hour with a chance worth watching; null if none. */
  readonly watchFromMs: number | null
  readonly answer: 'go' | 'watch' | 'noGo' | 'unknown'
  readonly findings: readonly Finding[]
}

const hourMs = 3_600_000

interface Span {
  readonly least: number
  readonly most: number
  readonly rainMm: number
  readonly known: number
  readonly hours: number
}

/**
 * Hourly chances belong to the same showers: together they are no less than the largest and no more than independent
 * hours would make, 1 − Π(1 − p). Part hours count by their share.
 */
function rainBetween(hours: readonly WeatherHour[], fromMs: number, toMs: number): Span {
  let least = 0
  let dry = 1
  let rainMm = 0
  let known = 0
  for (const row of hours) {
    const start = Date.parse(row.startUtc)
    const share = (Math.min(toMs, start + hourMs) - Math.max(fromMs, start)) / hourMs
    if (share <= 0) continue
    if (row.rainMm !== undefined) rainMm += row.rainMm * share
    if (row.rainChance === undefined) continue
    known += share
    least = Math.max(least, row.rainChance)
    dry *= (1 - row.rainChance) ** share
  }
  return { least, most: Math.max(least, 1 - dry), rainMm, known, hours: (toMs - fromMs) / hourMs }
}

/**
 * `noGo` when the chance while it sets reaches the setting `rainNoGoChance`, or the rain `rainNoGoMm`; `watch` when any
 * exposed hour reaches `rainWatchChance`; `unknown` when more than half the setting hours have no chance given. Decide
 * before the plant's cancellation limit; covers belong on the checklist either way.
 */
export function rainOutlook(input: RainInput, settings?: SettingOverrides): RainOutlook {
  const { hours, firstConcreteMs, allHardMs } = input
  const washableMs = allHardMs + settingValue(settings, 'rainWashableH') * hourMs
  const setting = rainBetween(hours, firstConcreteMs, allHardMs)
  const exposed = rainBetween(hours, firstConcreteMs, washableMs)
  const watchChance = settingValue(settings, 'rainWatchChance')
  const watch = hours.find(row => {
    const start = Date.parse(row.startUtc)
    return start + hourMs > firstConcreteMs && start < washableMs && (row.rainChance ?? 0) >= watchChance
  })
  const spoils =
    setting.least >= settingValue(settings, 'rainNoGoChance') || setting.rainMm >= settingValue(settings, 'rainNoGoMm')
  const unknown = setting.known < setting.hours / 2
  const findings: Finding[] = []
  if (spoils)
    findings.push({
      code: 'rainNoGo',
      severity: 'check',
      values: { percent: setting.least * 100, rainMm: setting.rainMm },
    })
  else if (watch !== undefined)
    findings.push({
      code: 'rainWatch',
      severity: 'check',
      values: { percent: exposed.least * 100, fromUtc: watch.startUtc },
    })
  const unknownHours = Math.round(exposed.hours - exposed.known)
  if (unknownHours > 0) findings.push({ code: 'rainUnknown', severity: 'note', values: { hours: unknownHours } })
  return {
    exposedHours: exposed.hours,
    washableMs,
    settingChanceLeast: setting.least,
    settingChanceMost: setting.most,
    exposedChanceLeast: exposed.least,
    exposedChanceMost: exposed.most,
    settingRainMm: setting.rainMm,
    exposedRainMm: exposed.rainMm,
    watchFromMs: watch === undefined ? null : Date.parse(watch.startUtc),
    answer: spoils ? 'noGo' : watch !== undefined ? 'watch' : unknown ? 'unknown' : 'go',
    findings,
  }
}
