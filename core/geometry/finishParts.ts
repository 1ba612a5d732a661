import type { ResolvedSlab } from './resolvedSlab'

export const finishPartKinds = ['field', 'border', 'band', 'inset'] as const
export type FinishPartKind = (typeof finishPartKinds)[number]

export interface FinishPart {
  readonly kind: FinishPartKind
  /** The field has none. */
  readonly id?: string
  readonly finishId: string
  /** What it claims: no square meter is claimed twice. */
  readonly areaM2: number
  /** Of borders and bands. */
  readonly widthM?: number
}

/** All that carries a finish on the slab, in the order it is listed: together the net area. */
export function finishParts({ finishId, fieldAreaM2, borders, bands, insets }: ResolvedSlab): readonly FinishPart[] {
  return [
    { kind: 'field', finishId, areaM2: fieldAreaM2 },
    ...borders.map((own): FinishPart => ({ kind: 'border', ...claimOf(own) })),
    ...bands.map((own): FinishPart => ({ kind: 'band', ...claimOf(own) })),
    ...insets.map(({ id, finishId, areaM2 }): FinishPart => ({ kind: 'inset', id, finishId, areaM2 })),
  ]
}

const claimOf = ({
  id,
  finishId,
  areaM2,
  widthM,
}: ResolvedSlab['bands'][number] | ResolvedSlab['borders'][number]) => ({ id, finishId, areaM2, widthM })
