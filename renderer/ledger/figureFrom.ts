/** What a figure was measured on, in words: "outline of Patio". */
import { isPourTotal } from '../../core/quantities/pourTotals'
import { isBidFigure, priceOfFigure } from '../../core/quantities/priceFigures'
import { pricedByOf } from '../../core/quantities/priceParts'
import type { PricedBy } from '../../shared/document/materials'
import type { Site } from '../../shared/document/site'
import type { Quantity } from '../../shared/planJson'

const ends: readonly (readonly [end: RegExp, words: string])[] = [
  [/-opening-(area|perimeter)$/, 'openings'],
  [/-(gross-area|perimeter)$/, 'outline'],
  [/-field-area$/, 'field, less borders, bands and insets'],
  [/-steps-order$/, 'steps'],
  [/-form-length$/, 'edges that need a form'],
  [/-isolation-length$/, 'edges against existing work and openings'],
  [/-(construction-joint|header)-length$/, 'construction joints'],
  [/-contraction-joint-(length|spacing)$/, 'contraction joints'],
  [/-outer-length$/, 'outer edge'],
  [/-inner-length$/, 'inner edge'],
  [/-center-length$/, 'center line'],
]

const byWords: Readonly<Record<PricedBy, string>> = {
  slab: 'slabs',
  field: 'fields',
  border: 'borders',
  band: 'bands',
  inset: 'insets',
  steps: 'steps',
  opening: 'openings',
  form: 'edges that need a form',
  constructionJoint: 'construction joints',
  contractionJoint: 'contraction joints',
  pour: 'pours',
  own: 'whole site',
}

function priceWords(figureId: string, { prices, finishes }: Site): string {
  const price = priceOfFigure(figureId, prices)
  if (!price) return 'price list'
  const finish = finishes.find(({ id }) => id === price.finishId)?.name
  const words = byWords[pricedByOf(price)]
  return finish === undefined ? words : `${words} in ${finish}`
}

export function figureFrom(
  { id, slabId, pourId }: Pick<Quantity, 'id' | 'slabId' | 'pourId'>,
  site: Site,
  names: ReadonlyMap<string, string>,
  numberOf: (pourId: string) => string | undefined,
): string {
  if (pourId !== undefined) return `pour ${numberOf(pourId) ?? ''}`.trim()
  if (isBidFigure({ id })) return priceWords(id, site)
  if (id === 'total-steps') return 'all steps'
  if (slabId === undefined)
    return isPourTotal({ id }) ? 'all pours' : site.slabs.length === 1 ? site.slabs[0]!.name : 'all slabs'
  const slab = site.slabs.find(each => each.id === slabId)?.name ?? ''
  const words = ends.find(([end]) => end.test(id))?.[1]
  const entity = id.slice(0, id.indexOf('-'))
  const own = entity === slabId ? undefined : names.get(entity)
  if (own !== undefined) return words === undefined ? `${own}, ${slab}` : `${words} of ${own}, ${slab}`
  return words === undefined ? `${slab} less openings` : `${words}, ${slab}`
}
