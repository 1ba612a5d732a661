import type { ResolvedSlab } from './resolvedSlab'

export const finishPartKinds = ['field', 'border', 'band', 'inset'] as const
export type FinishPartKind = (typeof finishPartKinds)[number]

export interface FinishPart {
  readonly kind: FinishPartKind
  /** The field has none. */
  readonly id?: string
  /** Its place among those of its kind, from 0. */
  readonly at: number
  readonly finishId: string
  /** What it claims: no square meter is claimed twice. */
  readonly areaM2: number
  /** Of borders and bands. */
  readonly widthM?: number
}

/** All that carries a finish on the slab, in the order it is listed: together the net area. */
export function finishParts({ finishId, fieldAreaM2, borders, bands, insets }: ResolvedSlab): readonly FinishPart[] {
  return [
    { kind: 'field', at: 0, finishId, areaM2: fieldAreaM2 },
    ...borders.map((own, at): FinishPart => ({ kind: 'border', at, ...claimOf(own) })),
    ...bands.map((own, at): FinishPart => ({ kind: 'band', at, ...claimOf(own) })),
    ...insets.map(({ id, finishId, areaM2 }, at): FinishPart => ({ kind: 'inset', at, id, finishId, areaM2 })),
  ]
}

const claimOf = ({
  id,
  finishId,
  areaM2,
  widthM,
}: ResolvedSlab['bands'][number] | ResolvedSlab['borders'][number]) => ({
  ...{ id, finishId, areaM2, widthM },
})
