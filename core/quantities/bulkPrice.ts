/** What concrete and base cost: bought by volume or mass, not spread by the area. */
import type { Material } from '../../shared/document/materials'
import { cubicYardsToM3, poundsToKg } from '../units/convert'
import { type Quantity, quantity } from './quantity'
import { toTheCent } from './toTheCent'

/** SI in one of a unit as it is typed; a ton is short, 2,000 lb, a `t` is 1,000 kg. */
const volumes: Readonly<Record<string, number>> = {
  ...Object.fromEntries(['yd³', 'yd3', 'yd', 'cu yd', 'yard', 'yards'].map(unit => [unit, cubicYardsToM3(1)])),
  ...{ 'm³': 1, m3: 1 },
}
const masses: Readonly<Record<string, number>> = {
  ...{ kg: 1, t: 1000, tonne: 1000, tonnes: 1000 },
  ...{ ton: poundsToKg(2000), tons: poundsToKg(2000) },
}

/** Its inputs are in the unit it is bought by. */
export const isBulkFigure = ({ id }: Pick<Quantity, 'id'>): boolean => id.startsWith('total-bulk-')

export interface BulkTaken {
  /** Concrete to order, pour by pour, and for steps. */
  readonly orderedM3: number
  readonly baseM3: number
  readonly baseKg: number
}

/** The figures of slabs and pours added up. */
export function bulkTaken(figures: readonly Quantity[]): BulkTaken {
  const sum = (end: string, isOfPour: boolean): number =>
    figures.reduce(
      (total, { id, pourId, value }) =>
        id.endsWith(end) && (pourId !== undefined) === isOfPour ? total + value : total,
      0,
    )
  return {
    orderedM3: sum('-concrete-order', true) + sum('-steps-order', false),
    baseM3: sum('-base-volume', false),
    baseKg: sum('-base-mass', false),
  }
}

/** Whether its unit can be counted: a volume, for base also a mass. */
export const isBulk = ({ kind, unit }: Pick<Material, 'kind' | 'unit'>): boolean =>
  kind === 'concrete' ? unit in volumes : kind === 'base' && (unit in volumes || unit in masses)

/** All concrete is of one mix, all base of one stone: the first of each is counted. */
export const isCountedBulk = (material: Material, materials: readonly Material[]): boolean =>
  isBulk(material) && materials.find(own => own.kind === material.kind && isBulk(own))?.id === material.id

/**
 * Price of the concrete as ordered, or of the base in whole packages; undefined where it is bought by something else,
 * has no price or none is taken.
 */
export function bulkPrice(material: Material, { orderedM3, baseM3, baseKg }: BulkTaken): Quantity | undefined {
  const { id, kind, name, unit, packageSize, packagePrice } = material
  if (packagePrice === undefined || !isBulk(material)) return undefined
  const { amount, currency } = packagePrice
  const isConcrete = kind === 'concrete'
  const volume = volumes[unit]
  const taken = volume === undefined ? baseKg / masses[unit]! : (isConcrete ? orderedM3 : baseM3) / volume
  if (taken === 0) return undefined
  const what = isConcrete ? 'concrete to order' : 'base'
  // An order is a round number of steps, which conversion must not blur.
  const exact = Math.round(taken * 1e6) / 1e6
  const packages = isConcrete ? exact / packageSize : Math.ceil(exact / packageSize - 1e-9)
  const one = packageSize === 1 ? `one ${unit}` : 'one package'
  const share = packageSize === 1 ? what : `${what} ÷ package`
  const formula = `${isConcrete ? share : `roundUp(${share}, ${one})`} × price of one`
  return quantity({
    ...{ id: `total-bulk-${id}-price`, label: `${name}, price` },
    ...toTheCent(packages * amount, currency, formula, {
      [what]: [exact, unit],
      ...(packageSize === 1 ? {} : { package: [packageSize, unit] as const }),
      ...(isConcrete ? {} : { [one]: [1, unit] as const }),
      'price of one': [amount, currency],
    }),
    source: isConcrete
      ? 'concrete to order, pour by pour and for steps; package and price as entered for the site'
      : 'base of all slabs, bought whole; package and price as entered for the site',
  })
}
