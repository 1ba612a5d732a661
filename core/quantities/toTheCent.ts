import { toCent } from '../units/currency'
import type { Inputs, QuantityOf } from './quantity'

/** A sum of money to the cent; its formula tells of the rounding only where that changed it. */
export function toTheCent(
  amount: number,
  currency: string,
  formula: string,
  inputs: Inputs,
): Pick<QuantityOf, 'value' | 'unit' | 'formula' | 'inputs'> {
  const [value, unit] = [toCent(amount), currency]
  if (Math.abs(amount - value) < 1e-7) return { value, unit, formula, inputs }
  return {
    ...{ value, unit, formula: `round(${formula}, nearest cent)` },
    inputs: { ...inputs, 'nearest cent': [0.01, currency] },
  }
}
