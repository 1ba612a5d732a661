/** Contraction joints of a slab's pours, on the slab's own spacing. */
import { type ContractionLine, contractionLines } from '../joints/contractionLines'
import { contractionSpacing } from '../joints/contractionSpacing'
import type { PlannedPour } from './plan'

export interface SlabContraction {
  readonly slabId: string
  readonly spacingM: number
  readonly lines: readonly ContractionLine[]
}

/** Borders, bands and insets poured on their own are left out: their joints are where they end. */
export function planContraction(
  slab: { readonly id: string; readonly thicknessM: number },
  pours: readonly PlannedPour[],
): SlabContraction {
  const spacingM = contractionSpacing(slab.thicknessM)
  const own = pours.filter(({ slabId, part }) => slabId === slab.id && part !== 'border')
  return { slabId: slab.id, spacingM, lines: contractionLines(own, spacingM) }
}
