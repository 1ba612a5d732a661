/** What a pour takes of each material that goes by the area, and its packages of retarder. */
import type { Material } from '../../shared/document/materials'
import { type Inputs, type Quantity, quantity, sumFormula, sumInputs } from './quantity'

interface Whose {
  readonly slabId: string
  readonly pourId: string
}

/** Figured by volumes and lengths of their own. */
const figuredElsewhere: ReadonlySet<Material['kind']> = new Set(['concrete', 'base', 'reinforcement', 'retarder'])

/** Whether it goes by the area of the pour. */
export const goesByArea = ({ kind }: Pick<Material, 'kind'>): boolean => !figuredElsewhere.has(kind)

/** Within this of whole packages is whole packages (of a package). */
const roundOff = 1e-9

export const materialFigureId = (pourId: string, ofMaterial: string): string => `${pourId}-material-${ofMaterial}`

export const retarderFigureId = (pourId: string): string => `${pourId}-retarder-packages`

/**
 * Amount and whole packages of each material with a rate: color hardener, release, and what else is spread by the area,
 * as curing compound or finishing aid entered so. `areaM2` = the pour with its borders. The label rules.
 */
export function materialFigures(whose: Whose, areaM2: number, materials: readonly Material[]): Quantity[] {
  return materials.flatMap(({ id, name, kind, unit, packageSize, ratePerM2 = 0, wasteShare = 0 }): Quantity[] => {
    if (!goesByArea({ kind }) || ratePerM2 === 0) return []
    const amount = areaM2 * ratePerM2 * (1 + wasteShare)
    const source = 'rate and package as entered for the site; the label rules'
    return [
      quantity({
        ...{ id: materialFigureId(whose.pourId, id), label: name, ...whose, value: amount, unit, source },
        formula: wasteShare > 0 ? 'pour area × rate × (1 + waste)' : 'pour area × rate',
        inputs: {
          'pour area': [areaM2, 'm²'],
          rate: [ratePerM2, `${unit}/m²`],
          ...(wasteShare > 0 ? { waste: [wasteShare, '1'] as const } : {}),
        },
      }),
      quantity({
        ...{ id: `${materialFigureId(whose.pourId, id)}-packages`, label: `${name}, packages`, ...whose, source },
        value: Math.ceil(amount / packageSize - roundOff),
        unit: 'packages',
        formula: 'roundUp(amount ÷ package, one package)',
        inputs: { amount: [amount, unit], package: [packageSize, unit], 'one package': [1, 'packages'] },
      }),
    ]
  })
}

/** Whole packages of retarder of a pour, dose by dose; null for a pour without. */
export function retarderFigure(
  whose: Whose,
  doses: readonly { readonly beforeStripId: string; readonly packages: number }[],
  source: string,
): Quantity | null {
  if (doses.length === 0) return null
  const inputs: Inputs = Object.fromEntries(
    doses.map(({ beforeStripId, packages }) => [`dose before ${beforeStripId}`, [packages, 'packages'] as const]),
  )
  return quantity({
    ...{ id: retarderFigureId(whose.pourId), label: 'Retarder, packages', ...whose },
    ...{ value: sumInputs(inputs), unit: 'packages', formula: sumFormula(inputs), inputs, source },
  })
}
