/** Temperature of the fresh mix from what goes into it, and the ice it takes to reach a wanted one. */
import { err, type Finding, ok, type Result } from '../../shared/problem'

export interface Part {
  readonly massKg: number
  readonly tempC: number
}

export interface BatchWeights {
  /** Dry aggregate. */
  readonly aggregate: Part
  readonly cement: Part
  /** Added water, without the ice. */
  readonly water: Part
  /** Water carried by the aggregate; it has the aggregate's temperature. */
  readonly aggregateWaterKg: number
  readonly iceKg: number
}

export interface FreshTemperature {
  readonly tempC: number
  /** What the ice takes off. */
  readonly coolingK: number
  readonly findings: readonly Finding[]
}

/** Specific heat of cement and aggregate over that of water: ACI 305R. */
const dryHeatShare = 0.22

/** Heat of fusion of ice over the specific heat of water: 143.5 Btu/lb (CRD-C 307-91) is 79.7 K. */
const iceMeltK = 143.5 / 1.8

/** Ice not over 75 % of the batch water, and about 20 °F at most: ACI 305R as quoted. */
const mostIceShare = 0.75
const mostCoolingK = 20 / 1.8

function missingParts(batch: BatchWeights): Finding[] {
  const parts: readonly (readonly [string, number])[] = [
    ['aggregate', batch.aggregate.massKg],
    ['cement', batch.cement.massKg],
    ['water', batch.water.massKg],
    ['aggregate moisture', batch.aggregateWaterKg],
    ['ice', batch.iceKg],
  ]
  return parts
    .filter(([part, massKg]) => !(massKg >= 0) || ((part === 'aggregate' || part === 'cement') && massKg === 0))
    .map(([part]) => ({ code: 'mixMassMissing', severity: 'stop', values: { part } }))
}

function mixedC(batch: BatchWeights): number {
  const { aggregate, cement, water, aggregateWaterKg, iceKg } = batch
  const dry = dryHeatShare * (aggregate.massKg + cement.massKg)
  const heat =
    dryHeatShare * (aggregate.massKg * aggregate.tempC + cement.massKg * cement.tempC) +
    water.massKg * water.tempC +
    aggregateWaterKg * aggregate.tempC -
    iceKg * iceMeltK
  return heat / (dry + water.massKg + aggregateWaterKg + iceKg)
}

/**
 * T = [S(TaWa + TcWc) + TwWw + TaWwa − 79.7 Wi] / [S(Wa + Wc) + Ww + Wwa + Wi], °C, S = 0.22; ice at 0 °C melts whole.
 * Source: ACI 305R. Over 75 % ice or 20 °F of cooling the value stands with a `check`: the form is doubted above 20–50 %
 * ice (Jabbar, Wasit Journal of Engineering Sciences, 2017).
 */
export function freshTemperature(batch: BatchWeights): Result<FreshTemperature, readonly Finding[]> {
  const missing = missingParts(batch)
  if (missing.length > 0) return err(missing)
  const tempC = mixedC(batch)
  const asWater = { ...batch, water: addWater(batch.water, batch.iceKg), iceKg: 0 }
  const coolingK = mixedC(asWater) - tempC
  const findings: Finding[] = []
  const iceShare = batch.iceKg / Math.max(batch.iceKg + batch.water.massKg, Number.MIN_VALUE)
  if (iceShare > mostIceShare + 1e-9)
    findings.push({
      code: 'iceOverLimit',
      severity: 'check',
      values: { percent: iceShare * 100, mostPercent: mostIceShare * 100 },
    })
  if (coolingK > mostCoolingK + 1e-9)
    findings.push({ code: 'coolingOverLimit', severity: 'check', values: { coolingK } })
  return ok({ tempC, coolingK, findings })
}

const addWater = (water: Part, kg: number): Part => ({ massKg: water.massKg + kg, tempC: water.tempC })

/**
 * Ice in kg, put in for as much of the batch water, that brings the mix to a wanted temperature; 0 if it is there
 * already. Solves the formula of `freshTemperature`; its limits on ice are checked by `freshTemperature`.
 */
export function iceForTemperature(batch: BatchWeights, wantedC: number): number {
  const allWater = { ...batch, water: addWater(batch.water, batch.iceKg), iceKg: 0 }
  const dry = dryHeatShare * (batch.aggregate.massKg + batch.cement.massKg)
  const total = dry + allWater.water.massKg + batch.aggregateWaterKg
  return Math.max(0, ((mixedC(allWater) - wantedC) * total) / (batch.water.tempC + iceMeltK))
}
