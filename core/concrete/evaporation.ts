/** How fast water leaves the fresh surface, and which band of care it calls for. */
import type { Finding } from '../../shared/problem'
import { type SettingOverrides, settingValue } from '../../shared/settings'

/** 1 lb/ft² in kg/m²: 0.45359237 / 0.09290304, both exact (NIST SP 811, 2008). */
export const kgM2PerLbFt2 = 0.45359237 / 0.09290304

/** 1 mph in m/s, exact (NIST SP 811, 2008). */
const metersPerSecondPerMph = 0.44704

/**
 * The true rate can differ from the estimate by this share either way. Source: K. C. Hover, After Two Hundred Years of
 * Estimating Evaporation, It Is Still a Mystery, ACI SP-338, 2020.
 */
export const evaporationUncertainty = 0.4

export interface EvaporationInput {
  readonly concreteC: number
  readonly airC: number
  /** Share, 0…1. */
  readonly humidity: number
  /** Average about 0.5 m (20 in) above the slab. */
  readonly windAtSlabMs: number
}

/** `precautions`: any mix; `lowBleed`: silica fume or latex; `veryLowBleed`: low water, much slag or ash. */
export type EvaporationBand = 'low' | 'veryLowBleed' | 'lowBleed' | 'precautions'

export interface Evaporation {
  readonly rateKgM2H: number
  readonly rateLbFt2H: number
  readonly leastKgM2H: number
  readonly mostKgM2H: number
  readonly band: EvaporationBand
  readonly findings: readonly Finding[]
}

const fahrenheit = (tempC: number): number => tempC * 1.8 + 32

/** x^2.5, 0 below 0 °F where the formula has no meaning and no concrete is placed. */
const power25 = (tempF: number): number => (tempF > 0 ? tempF * tempF * Math.sqrt(tempF) : 0)

/** The part of the formula that only the concrete decides, °F^2.5. */
export const concreteTerm = (concreteC: number): number => power25(fahrenheit(concreteC))

/** The part of the formula that only the air decides, °F^2.5. */
export const airTerm = (airC: number, humidity: number): number => humidity * power25(fahrenheit(airC))

/** kg/m²h for one unit of the difference of the two terms. */
export const windTerm = (windAtSlabMs: number): number =>
  (1 + (0.4 * windAtSlabMs) / metersPerSecondPerMph) * 1e-6 * kgM2PerLbFt2

/**
 * kg/m²h. Uno's form E = (Tc^2.5 − r·Ta^2.5)(1 + 0.4 V)·10⁻⁶ lb/ft²h (°F, mph): P. J. Uno, Plastic Shrinkage Cracking
 * and Evaporation Formulas, ACI Materials Journal 95-M34, 1998. Worked in this one form and converted: his rounded SI
 * form differs by about 4 %. Never below 0: warm moist air over cool concrete only leaves dew.
 */
export const evaporationRate = (input: EvaporationInput): number =>
  Math.max(0, (concreteTerm(input.concreteC) - airTerm(input.airC, input.humidity)) * windTerm(input.windAtSlabMs))

/** The span of the chart the formula was fitted to: 40–100 °F, 0–25 mph. Source: ACI 305R chart, from memory. */
const chart = { leastC: 40 / 9, mostC: 340 / 9, mostWindMs: 25 * metersPerSecondPerMph }

function outsideChart(input: EvaporationInput): Finding[] {
  const { concreteC, airC, humidity, windAtSlabMs } = input
  const outside = (tempC: number): boolean => tempC < chart.leastC - 1e-9 || tempC > chart.mostC + 1e-9
  const findings: Finding[] = []
  if (outside(concreteC) || outside(airC) || windAtSlabMs > chart.mostWindMs + 1e-9)
    findings.push({
      code: 'evaporationOutsideChart',
      severity: 'check',
      values: { concreteC, airC, windMs: windAtSlabMs },
    })
  if (humidity < 0 || humidity > 1)
    findings.push({ code: 'humidityOutOfRange', severity: 'stop', values: { percent: humidity * 100 } })
  return findings
}

export function evaporationBand(rateKgM2H: number, settings?: SettingOverrides): EvaporationBand {
  if (rateKgM2H >= settingValue(settings, 'evaporationPrecautionsKgM2H')) return 'precautions'
  if (rateKgM2H >= settingValue(settings, 'evaporationLowBleedKgM2H')) return 'lowBleed'
  if (rateKgM2H >= settingValue(settings, 'evaporationVeryLowBleedKgM2H')) return 'veryLowBleed'
  return 'low'
}

/**
 * The rate in both units with its ± 40 % and its band. Outside the chart the value stands with a `check`; a humidity
 * outside 0…1 is a `stop`: do not show the value.
 */
export function evaporation(input: EvaporationInput, settings?: SettingOverrides): Evaporation {
  const rateKgM2H = evaporationRate(input)
  return {
    rateKgM2H,
    rateLbFt2H: rateKgM2H / kgM2PerLbFt2,
    leastKgM2H: rateKgM2H * (1 - evaporationUncertainty),
    mostKgM2H: rateKgM2H * (1 + evaporationUncertainty),
    band: evaporationBand(rateKgM2H, settings),
    findings: outsideChart(input),
  }
}
