/** Hot weather: concrete over its limit, and a surface that dries too fast. */
import type { Finding } from '../../shared/problem'
import type { SettingOverrides } from '../../shared/settings'
import { evaporationBand, kgM2PerLbFt2 } from './evaporation'

/** 95 °F at discharge: ACI 301-20, ACI 305.1-14. Older text says 90 °F. */
export const mostPlacedC = 35

export interface HotInput {
  readonly placedC: number
  /** The most the air takes from a wet surface between placing and too hard. */
  readonly mostEvaporationKgM2H: number
}

export function hotChecks(input: HotInput, settings?: SettingOverrides): readonly Finding[] {
  const findings: Finding[] = []
  if (input.placedC > mostPlacedC + 1e-9)
    findings.push({ code: 'placedTooHot', severity: 'check', values: { placedC: input.placedC, mostC: mostPlacedC } })
  const rateKgM2H = input.mostEvaporationKgM2H
  if (evaporationBand(rateKgM2H, settings) === 'precautions')
    findings.push({
      code: 'evaporationHigh',
      severity: 'check',
      values: { rateKgM2H, rateLbFt2H: rateKgM2H / kgM2PerLbFt2 },
    })
  return findings
}
