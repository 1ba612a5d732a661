/** Concrete to order: slab, thickened edges and steps, over-run, pump, rounded up to the plant's step. */

import type { UnitSystem } from '../../shared/document/site'
import type { Slab } from '../../shared/document/slab'
import { type SettingOverrides, settingValue } from '../../shared/settings'
import type { Arc } from '../geometry/curve'
import { type Inputs, type Quantity, quantity, sumFormula, sumInputs } from './quantity'

/** International yard, exact: (0.9144 m)³. */
const cubicYardM3 = 0.9144 ** 3

export interface ThickenedVolume {
  readonly areaM2: number
  readonly depthM: number
}

export interface ConcreteOf {
  readonly idPrefix: string
  readonly slabId: string
  readonly pourId?: string
  readonly areaM2: number
  readonly thicknessM: number
  /** Plan area of each thickened edge inside the part, and its whole depth. */
  readonly thickened: readonly ThickenedVolume[]
  readonly stepsM3: number
  readonly pumped: boolean
  readonly units: UnitSystem
  readonly settings: SettingOverrides | undefined
}

/**
 * A solid flight of n risers stands on n − 1 treads: width × tread × riser × n(n − 1) ÷ 2. Around an arc of radius R the
 * width, measured along the edge, grows with each tread: tread k is a piece of a ring, width × tread × (R ± (k − ½) tread) ÷ R,
 * and n − k risers high; inside a hollow arc the treads end at its center.
 * Source: annulus sector, CRC Standard Mathematical Tables, "Plane figures".
 */
export function stepsVolume({ widthM, treadM, riserM, risers }: Slab['steps'][number], arc?: Arc): number {
  if (!arc) return (widthM * treadM * riserM * risers * (risers - 1)) / 2
  const side = Math.sign(arc.sweepRad)
  const radiusAt = (tread: number): number => Math.max(0, arc.radiusM + side * tread * treadM)
  let areasM2 = 0
  for (let k = 1; k < risers; k++)
    areasM2 += ((risers - k) * side * (radiusAt(k) ** 2 - radiusAt(k - 1) ** 2) * widthM) / (2 * arc.radiusM)
  return areasM2 * riserM
}

export const orderStepM3 = (units: UnitSystem, settings: SettingOverrides | undefined): number =>
  units === 'ftin' ? settingValue(settings, 'orderStepYd3') * cubicYardM3 : settingValue(settings, 'orderStepM3')

/** Up to the next step; a volume within a hair of a step is that step. */
export const roundUp = (value: number, step: number): number => Math.ceil(value / step - 1e-9) * step

export interface OrderOf {
  readonly pumped: boolean
  readonly units: UnitSystem
  readonly settings: SettingOverrides | undefined
}

/** What is added to a volume in place before it is ordered, and the step it is rounded up to. */
export interface OrderRules {
  readonly overRunSmall: number
  readonly overRunLarge: number
  /** Volume in place from which an order is large, m³. */
  readonly limitM3: number
  readonly pumpM3: number
  readonly stepM3: number
}

export const orderRules = ({ pumped, units, settings }: OrderOf): OrderRules => ({
  overRunSmall: settingValue(settings, 'overRunSmallShare'),
  overRunLarge: settingValue(settings, 'overRunLargeShare'),
  limitM3: settingValue(settings, 'overRunLimitM3'),
  pumpM3: pumped ? settingValue(settings, 'pumpExtraM3') : 0,
  stepM3: orderStepM3(units, settings),
})

export const overRunOf = (volumeM3: number, rules: OrderRules): number =>
  volumeM3 < rules.limitM3 ? rules.overRunSmall : rules.overRunLarge

/** Concrete to order for a volume in place, m³. */
export const orderVolume = (volumeM3: number, rules: OrderRules): number =>
  roundUp(volumeM3 * (1 + overRunOf(volumeM3, rules)) + rules.pumpM3, rules.stepM3)

export function concreteOrder(of: ConcreteOf): Quantity[] {
  const { idPrefix, slabId, pourId, areaM2, thicknessM } = of
  const extra = of.thickened.reduce((sum, t) => sum + t.areaM2 * Math.max(0, t.depthM - thicknessM), 0)
  const volume = areaM2 * thicknessM + extra + of.stepsM3
  const rules = orderRules(of)
  const { pumpM3, stepM3 } = rules
  const whose = { slabId, ...(pourId === undefined ? {} : { pourId }) }
  const extraInputs: Inputs = {
    ...(extra > 0 ? { 'thickened edges': [extra, 'm³'] } : {}),
    ...(of.stepsM3 > 0 ? { steps: [of.stepsM3, 'm³'] } : {}),
  }
  return [
    quantity({
      id: `${idPrefix}-concrete-volume`,
      label: 'Concrete in place',
      ...whose,
      value: volume,
      unit: 'm³',
      formula: ['area × thickness', ...Object.keys(extraInputs)].join(' + '),
      inputs: { area: [areaM2, 'm²'], thickness: [thicknessM, 'm'], ...extraInputs },
    }),
    quantity({
      id: `${idPrefix}-concrete-order`,
      label: 'Concrete to order',
      ...whose,
      value: orderVolume(volume, rules),
      unit: 'm³',
      formula: `roundUp(concrete in place × (1 + over-run)${pumpM3 > 0 ? ' + pump' : ''}, order step)`,
      inputs: {
        'concrete in place': [volume, 'm³'],
        'over-run': [overRunOf(volume, rules), '1'],
        ...(pumpM3 > 0 ? { pump: [pumpM3, 'm³'] as const } : {}),
        'order step': [stepM3, 'm³'],
      },
      source: 'over-run 10 % under 5 yd³, else 5 %, ½ yd³ more for a pump: common practice, no source',
    }),
  ]
}

/** Concrete for the steps of a slab, flight by flight: they belong to none of its pours, and are ordered beside them. */
export function stepsOrder(slabId: string, flightsM3: readonly number[], of: OrderOf): Quantity[] {
  const inputs: Inputs = Object.fromEntries(
    flightsM3.flatMap((volume, i) =>
      volume > 0 ? [[flightsM3.length > 1 ? `flight ${i + 1}` : 'steps', [volume, 'm³'] as const]] : [],
    ),
  )
  const volume = sumInputs(inputs)
  if (volume === 0) return []
  const rules = { ...orderRules(of), pumpM3: 0 }
  const overRun = overRunOf(volume, rules)
  const sum = sumFormula(inputs)
  const flights = Object.keys(inputs).length > 1 ? `(${sum})` : sum
  return [
    quantity({
      id: `${slabId}-steps-order`,
      label: 'Concrete to order for steps, in no pour',
      slabId,
      value: orderVolume(volume, rules),
      unit: 'm³',
      formula: `roundUp(${flights} × (1 + over-run), order step)`,
      inputs: { ...inputs, 'over-run': [overRun, '1'], 'order step': [rules.stepM3, 'm³'] },
      source: 'n risers stand on n − 1 treads, solid: geometry; over-run as for the slab: common practice, no source',
    }),
  ]
}
