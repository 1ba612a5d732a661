import { spacingSource } from '../joints/contractionSpacing'
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

export interface PourLines {
  readonly pourId: string
  readonly lengthM: number
}

/** Of the figures: contraction joint in one pour (m); null where it is not figured. */
export function contractionInPour(
  figures: readonly Quantity[],
  { slabId, number }: { readonly slabId: string; readonly number: string },
): number | null {
  const all = figures.find(({ id }) => id === `${slabId}-contraction-joint-length`)
  return all ? (all.inputs[`pour ${number}`]?.value ?? 0) : null
}

/** Contraction joints of a slab, sawn or tooled: the length of all lines, pour by pour. */
export function contractionLength(
  slabId: string,
  spacingM: number,
  lines: readonly PourLines[],
  numberOf: (pourId: string) => string,
): Quantity[] {
  const byPour = new Map<string, number>()
  for (const { pourId, lengthM } of lines) byPour.set(pourId, (byPour.get(pourId) ?? 0) + lengthM)
  const inputs: Inputs = Object.fromEntries(
    [...byPour].map(([pourId, lengthM]) => [`pour ${numberOf(pourId)}`, [lengthM, 'm'] as const]),
  )
  return [
    quantity({
      id: `${slabId}-contraction-joint-spacing`,
      label: 'Contraction joints at most apart',
      slabId,
      value: spacingM,
      unit: 'm',
      formula: 'by slab thickness',
      inputs: { 'by slab thickness': [spacingM, 'm'] },
      source: spacingSource,
    }),
    quantity({
      id: `${slabId}-contraction-joint-length`,
      label: 'Contraction joint length',
      slabId,
      value: sumInputs(inputs),
      unit: 'm',
      formula: sumFormula(inputs),
      inputs,
    }),
  ]
}
