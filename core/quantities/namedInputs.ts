import type { Inputs, Quantity } from './quantity'

/** Figures as inputs of a sum, each under a name of its own: two slabs may be called the same. */
export function namedInputs(
  rows: readonly (readonly [name: string, figure: Pick<Quantity, 'value' | 'unit'>])[],
): Inputs {
  const inputs: Record<string, readonly [number, string]> = {}
  for (const [name, { value, unit }] of rows) {
    let own = name
    for (let n = 2; own in inputs; n++) own = `${name} (${n})`
    inputs[own] = [value, unit]
  }
  return inputs
}
