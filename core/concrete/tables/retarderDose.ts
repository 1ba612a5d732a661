/** Retarder, for the order and the checklist: what labels and practice say. The label of the product in hand rules. */

/** 1 US fl oz = 29.5735295625 mL and 1 cwt = 100 lb, both exact. */
export const fluidOunceMl = 29.5735295625

interface DoseRow {
  readonly fromF: number
  readonly ozPerCwt: number
}

/** Dose by air temperature, fl oz for 100 lb of cement, as on one published label (trade page, retarder product data). */
const labelDoses: readonly DoseRow[] = [
  { fromF: 40, ozPerCwt: 2 },
  { fromF: 70, ozPerCwt: 3 },
  { fromF: 80, ozPerCwt: 4 },
  { fromF: 90, ozPerCwt: 5 },
]

/** fl oz/cwt for an air temperature; null under 40 °F, where the label gives none. */
export function labelDose(airC: number): number | null {
  const airF = airC * 1.8 + 32
  return labelDoses.findLast(row => airF >= row.fromF - 1e-9)?.ozPerCwt ?? null
}

/** 3 fl oz/cwt at 70 °F puts initial set off by 2 to 3 h (trade page, retarder product data). */
export const labelDelayH = { ozPerCwt: 3, atF: 70, leastH: 2, mostH: 3 } as const

/** On-site retarder buys up to an hour of stamping: common practice, no source. */
export const mostOnSiteMin = 60

/** Over 75 °F a third or half of the load is step-retarded (trade article, Stamping a Long Driveway). */
export const stepRetardFromC = 215 / 9

/** mL for a cubic meter from fl oz/cwt and cement in kg/m³. */
export const doseMlPerM3 = (ozPerCwt: number, cementKgM3: number): number =>
  (ozPerCwt * fluidOunceMl * cementKgM3) / (100 * 0.45359237)
