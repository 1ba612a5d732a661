/** Cold weather: what ACI 306R asks before concrete goes down. */
import type { WeatherHour } from '../../shared/document/day'
import type { Finding } from '../../shared/problem'
import { leastPlacedC } from './tables/coldPlacing'

export interface ColdInput {
  /** From placing through the protection period, as far as known. */
  readonly hours: readonly WeatherHour[]
  readonly placedMs: number
  readonly placedC: number
  readonly thicknessM: number
}

/** 40 °F: cold weather exists when the air has fallen to, or is expected to fall below it (ACI 306R-16). */
const coldAirC = 40 / 9

/** Looked ahead for frost and cold: the protection of the first day and night. */
const protectionH = 24

function coldestHour(hours: readonly WeatherHour[], fromMs: number): WeatherHour | undefined {
  const ahead = hours.filter(row => {
    const at = Date.parse(row.startUtc)
    return at > fromMs - 3_600_000 && at < fromMs + protectionH * 3_600_000
  })
  return ahead.reduce<WeatherHour | undefined>(
    (coldest, row) => (coldest === undefined || row.airC < coldest.airC ? row : coldest),
    undefined,
  )
}

/**
 * Air under 40 °F in the 24 h from placing, frost in them, and concrete colder than the least for its thickness. Checks
 * only: the local code, the specification and the producer decide.
 */
export function coldChecks(input: ColdInput): readonly Finding[] {
  const findings: Finding[] = []
  const leastC = leastPlacedC(input.thicknessM)
  if (input.placedC < leastC - 1e-9)
    findings.push({ code: 'placedTooCold', severity: 'check', values: { placedC: input.placedC, leastC } })
  const coldest = coldestHour(input.hours, input.placedMs)
  if (coldest === undefined || coldest.airC >= coldAirC - 1e-9) return findings
  const at = { leastC: coldest.airC, atUtc: coldest.startUtc }
  findings.push({ code: 'coldWeather', severity: 'check', values: { ...at, limitC: coldAirC } })
  if (coldest.airC <= 0)
    findings.push({ code: 'freezeAhead', severity: 'check', values: { ...at, hours: protectionH } })
  return findings
}
