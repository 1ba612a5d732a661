/** What a material begins with until its label is at hand. */
import { poundsToKg, squareFeetToM2 } from '../../../core/units/convert'
import type { Material } from '../../../shared/document/materials'
import type { UnitSystem } from '../../../shared/document/site'

type Start = Omit<Material, 'id' | 'name' | 'kind'>

export interface MaterialStart {
  readonly kind: Material['kind']
  readonly name: string
  readonly source: string
  readonly by: Readonly<Record<UnitSystem, Start>>
}

export const materialStarts: readonly MaterialStart[] = [
  {
    kind: 'hardener',
    name: 'Color hardener',
    source: '60 lb for 100 ft² (3 kg/m²): common practice, no source',
    by: {
      ftin: { unit: 'kg', packageSize: poundsToKg(60), ratePerM2: poundsToKg(60) / squareFeetToM2(100) },
      metric: { unit: 'kg', packageSize: 25, ratePerM2: 3 },
    },
  },
  {
    kind: 'release',
    name: 'Release powder',
    source: '3½ lb for 100 ft² (0.17 kg/m²): from memory',
    by: {
      ftin: { unit: 'kg', packageSize: poundsToKg(35), ratePerM2: poundsToKg(3.5) / squareFeetToM2(100) },
      metric: { unit: 'kg', packageSize: 15, ratePerM2: 0.17 },
    },
  },
  {
    kind: 'sealer',
    name: 'Sealer',
    source: '200 ft² a gallon and coat (0.2 L/m²): common practice, no source',
    by: {
      ftin: { unit: 'gal', packageSize: 5, ratePerM2: 1 / squareFeetToM2(200) },
      metric: { unit: 'L', packageSize: 20, ratePerM2: 0.2 },
    },
  },
  {
    kind: 'concrete',
    name: 'Concrete',
    source: 'by the yd³ (m³), as it is ordered',
    by: { ftin: { unit: 'yd³', packageSize: 1 }, metric: { unit: 'm³', packageSize: 1 } },
  },
  {
    kind: 'base',
    name: 'Base stone',
    source: 'by the ton of 2,000 lb (1,000 kg)',
    by: { ftin: { unit: 'ton', packageSize: 1 }, metric: { unit: 't', packageSize: 1 } },
  },
  {
    kind: 'retarder',
    name: 'On-site retarder',
    source: 'counted dose by dose',
    by: { ftin: { unit: 'package', packageSize: 1 }, metric: { unit: 'package', packageSize: 1 } },
  },
]
