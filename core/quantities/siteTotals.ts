/** Sums over the whole site, from the figures of its slabs and pours. */
import { namedInputs } from './namedInputs'
import { plainName } from './plainName'
import { type Inputs, type Quantity, quantity, sumFormula, sumInputs } from './quantity'

interface Named {
  readonly id: string
  readonly name: string
}

export interface TotalsOf {
  readonly slabs: readonly Named[]
  readonly pours: readonly { readonly id: string; readonly number: string }[]
  /** Figures of all slabs and pours. */
  readonly figures: readonly Quantity[]
}

const inputsOf = (rows: readonly (readonly [name: string, figure: Quantity | undefined])[]): Inputs =>
  namedInputs(rows.flatMap(([name, figure]) => (figure && figure.value !== 0 ? [[name, figure] as const] : [])))

/** Area, borders, joints, base, concrete as ordered pour by pour, loads; nothing of what the site has none of. */
export function siteTotals({ slabs, pours, figures }: TotalsOf): Quantity[] {
  const find = (id: string) => figures.find(q => q.id === id)
  const bySlab = (end: string) =>
    inputsOf(slabs.map(({ id, name }) => [plainName(name), find(`${id}-${end}`)] as const))
  const byPour = (end: string) =>
    inputsOf(pours.map(({ id, number }) => [`pour ${plainName(number)}`, find(`${id}-${end}`)] as const))
  const borders = inputsOf(
    figures
      .filter(q => q.pourId === undefined && q.id.endsWith('-outer-length'))
      .map(q => {
        const slab = slabs.find(({ id }) => id === q.slabId)
        const name = q.label.replace(/ outer length$/, '').toLowerCase()
        return [slabs.length > 1 && slab ? `${plainName(slab.name)} ${name}` : name, q] as const
      }),
  )
  const total = (id: string, label: string, unit: string, inputs: Inputs): Quantity[] =>
    Object.keys(inputs).length === 0
      ? []
      : [quantity({ id: `total-${id}`, label, value: sumInputs(inputs), unit, formula: sumFormula(inputs), inputs })]
  return [
    ...total('net', 'Slabs', 'm²', bySlab('net-area')),
    ...total('border', 'Borders, outer edge', 'm', borders),
    ...total('form', 'Forms', 'm', bySlab('form-length')),
    ...total('construction', 'Construction joints', 'm', bySlab('construction-joint-length')),
    ...total('isolation', 'Isolation joints', 'm', bySlab('isolation-length')),
    ...total('base', 'Base', 'kg', bySlab('base-mass')),
    ...total('placed', 'Concrete in place', 'm³', bySlab('concrete-volume')),
    ...total('ordered', 'Concrete to order, pour by pour', 'm³', byPour('concrete-order')),
    ...total('steps', 'Concrete to order for steps, in no pour', 'm³', bySlab('steps-order')),
    ...total('loads', 'Loads, pour by pour', 'loads', byPour('loads')),
  ]
}
