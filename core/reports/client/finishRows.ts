/** The finishes of a drawing, each once, with where it lies. */

import type { Finish } from '../../../shared/document/materials'
import type { Site } from '../../../shared/document/site'
import { finishParts } from '../../geometry/finishParts'
import type { ResolvedSlab } from '../../geometry/resolvedSlab'
import { capitalize } from '../../units/capitalize'
import type { Measures } from '../../units/measures'

export interface FinishRow {
  readonly finish: Finish
  /** "Field", "Border 12″, band". */
  readonly where: string
  readonly areaM2: number
}

export function finishRows(site: Site, slabs: readonly ResolvedSlab[], measures: Measures): readonly FinishRow[] {
  const found = new Map<string, { readonly where: Set<string>; areaM2: number }>()
  const add = (finishId: string, where: string, areaM2: number): void => {
    if (!(areaM2 > 0)) return
    const row = found.get(finishId) ?? { where: new Set<string>(), areaM2: 0 }
    row.where.add(where)
    row.areaM2 += areaM2
    found.set(finishId, row)
  }
  for (const slab of slabs) {
    for (const { kind, finishId, widthM, areaM2 } of finishParts(slab))
      add(finishId, widthM === undefined ? kind : `${kind} ${measures.size(widthM)}`, areaM2)
  }
  return site.finishes.flatMap(finish => {
    const row = found.get(finish.id)
    if (row === undefined) return []
    const where = [...row.where].join(', ')
    return [{ finish, where: capitalize(where), areaM2: row.areaM2 }]
  })
}
