/** What the pours take of each material in packages, what of it is still to buy, and what it comes to. */
import type { Material, StockItem } from '../../shared/document/materials'
import type { Finding } from '../../shared/problem'
import { toCent } from '../units/currency'
import { bulkPrice, bulkTaken, isCountedBulk } from './bulkPrice'
import { currencySums } from './currencySums'
import { goesByArea, materialFigureId, retarderFigureId } from './materials'
import { namedInputs } from './namedInputs'
import { plainName } from './plainName'
import { type Inputs, type Quantity, quantity, sumFormula, sumInputs } from './quantity'

export interface MaterialTotalsOf {
  readonly materials: readonly Material[]
  readonly stock: readonly StockItem[]
  /** `isPoured`: what it took has left the stock. */
  readonly pours: readonly { readonly id: string; readonly number: string; readonly isPoured: boolean }[]
  /** Figures of all slabs and pours. */
  readonly figures: readonly Quantity[]
  /** The product that doses are counted in. */
  readonly retarderId?: string | undefined
}

const asEntered = 'rates, packages, stock and prices as entered for the site'

/** One figure of the packages of all pours, of those to buy, and of their price; the sum in each currency. */
export function materialTotals({ materials, stock, pours, figures, retarderId }: MaterialTotalsOf): Quantity[] {
  const byId = new Map(figures.map(figure => [figure.id, figure]))
  const packagesOf = (id: string, isWanted: (pour: MaterialTotalsOf['pours'][number]) => boolean): Inputs =>
    namedInputs(
      pours.filter(isWanted).flatMap(pour => {
        const own = byId.get(
          id === retarderId ? retarderFigureId(pour.id) : `${materialFigureId(pour.id, id)}-packages`,
        )
        return own && own.value > 0 ? [[`pour ${plainName(pour.number)}`, own] as const] : []
      }),
    )
  const costs: { readonly name: string; readonly cost: Quantity }[] = []
  const taken = bulkTaken(figures)
  const rows = materials.flatMap((material): Quantity[] => {
    const { id, name, packageSize, packagePrice } = material
    if (isCountedBulk(material, materials)) {
      const cost = bulkPrice(material, taken)
      if (cost) costs.push({ name, cost })
      return cost ? [cost] : []
    }
    if (!goesByArea(material) && id !== retarderId) return []
    const inputs = packagesOf(id, () => true)
    const packages = sumInputs(inputs)
    if (packages === 0) return []
    const total = quantity({
      ...{ id: `total-material-${id}`, label: `${name}, packages pour by pour`, value: packages, unit: 'packages' },
      ...{ formula: sumFormula(inputs), inputs },
    })
    const onHand = stock.find(({ materialId }) => materialId === id)?.onHand
    // A package that was opened is none.
    const whole = onHand === undefined ? undefined : Math.floor(onHand / packageSize + 1e-9)
    const ahead = sumInputs(packagesOf(id, ({ isPoured }) => !isPoured))
    const short =
      whole === undefined || ahead <= whole
        ? []
        : [
            quantity({
              ...{ id: `total-material-${id}-to-buy`, label: `${name}, packages to buy`, unit: 'packages' },
              ...{ value: ahead - whole, formula: 'for the pours ahead − on hand', source: asEntered },
              inputs: { 'for the pours ahead': [ahead, 'packages'], 'on hand': [whole, 'packages'] },
            }),
          ]
    if (packagePrice === undefined) return [total, ...short]
    const { amount, currency } = packagePrice
    const cost = quantity({
      ...{
        id: `total-material-${id}-price`,
        label: `${name}, price`,
        value: toCent(packages * amount),
        unit: currency,
      },
      ...{ formula: 'packages × price of one', source: asEntered },
      inputs: { packages: [packages, 'packages'], 'price of one': [amount, currency] },
    })
    costs.push({ name, cost })
    return [total, ...short, cost]
  })
  const sums = currencySums(costs, currency => ({
    id: `total-materials-${currency}`,
    label: 'Priced materials together',
  }))
  return [...rows, ...sums]
}

/** What is taken and has no price, once others have one: a sum without it reads as if it were whole. */
export function checkMaterialPrices(materials: readonly Material[], totals: readonly Quantity[]): Finding[] {
  if (!totals.some(({ id }) => id.startsWith('total-materials-'))) return []
  return materials.flatMap(({ id, name, packagePrice }): Finding[] =>
    packagePrice === undefined && totals.some(own => own.id === `total-material-${id}`)
      ? [{ code: 'materialUnpriced', severity: 'note', values: { name } }]
      : [],
  )
}
