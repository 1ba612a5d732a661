/** A figure with the working shown. */
import type { Quantity } from '../../shared/planJson'

export type { Quantity }

/**
 * Named inputs as [value, unit]; the formula uses exactly these names with + − × ÷, parentheses, `roundUp(x, step)`
 * and `round(x, step)`, half a step up.
 */
export type Inputs = Readonly<Record<string, readonly [value: number, unit: string]>>

export interface QuantityOf {
  readonly id: string
  readonly label: string
  readonly slabId?: string
  readonly pourId?: string
  readonly value: number
  readonly unit: string
  readonly formula: string
  readonly inputs: Inputs
  /** Where rates and rules come from; `geometry` where nothing is cited. */
  readonly source?: string
}

export const quantity = ({ inputs, source = 'geometry', ...rest }: QuantityOf): Quantity => ({
  ...rest,
  inputs: Object.fromEntries(Object.entries(inputs).map(([name, [value, unit]]) => [name, { value, unit }])),
  source,
})

/** `a + b + c` over named inputs; `0` when there are none. */
export const sumFormula = (inputs: Inputs): string => Object.keys(inputs).join(' + ') || '0'

export const sumInputs = (inputs: Inputs): number => Object.values(inputs).reduce((sum, [value]) => sum + value, 0)
