import { type Inputs, type Quantity, quantity, sumFormula, sumInputs } from './quantity'

export interface JointLength {
  readonly id: string
  readonly slabId: string
  readonly lengthM: number
}

/** Construction joints of a slab; each is formed by a header of the same length. */
export function jointLengths(slabId: string, joints: readonly JointLength[]): Quantity[] {
  const inputs: Inputs = Object.fromEntries(joints.map(j => [j.id, [j.lengthM, 'm'] as const]))
  const lengthM = sumInputs(inputs)
  return [
    quantity({
      id: `${slabId}-construction-joint-length`,
      label: 'Construction joint length',
      slabId,
      value: lengthM,
      unit: 'm',
      formula: sumFormula(inputs),
      inputs,
    }),
    quantity({
      id: `${slabId}-header-length`,
      label: 'Header length',
      slabId,
      value: lengthM,
      unit: 'm',
      formula: 'construction joint length',
      inputs: { 'construction joint length': [lengthM, 'm'] },
      source: 'a header stands at every construction joint: common practice, no source',
    }),
  ]
}
