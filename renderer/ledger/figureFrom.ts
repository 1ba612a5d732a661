/** What a figure was measured on, in words: "outline of Patio". */
import type { Site } from '../../shared/document/site'
import type { Quantity } from '../../shared/planJson'

const ends: readonly (readonly [end: RegExp, words: string])[] = [
  [/-(gross-area|perimeter)$/, 'outline'],
  [/-opening-(area|perimeter)$/, 'openings'],
  [/-field-area$/, 'field, less borders, bands and insets'],
  [/-form-length$/, 'edges that need a form'],
  [/-isolation-length$/, 'edges against existing work and openings'],
  [/-(construction-joint|header)-length$/, 'construction joints'],
  [/-outer-length$/, 'bordered edges'],
  [/-inner-length$/, 'inner edge'],
  [/-center-length$/, 'center line'],
]

export function figureFrom(
  { id, slabId, pourId }: Pick<Quantity, 'id' | 'slabId' | 'pourId'>,
  site: Site,
  names: ReadonlyMap<string, string>,
  numberOf: (pourId: string) => string | undefined,
): string {
  if (pourId !== undefined) return `pour ${numberOf(pourId) ?? ''}`.trim()
  if (slabId === undefined)
    return /-ordered$|-loads$|^total-materials?-/.test(id)
      ? 'all pours'
      : site.slabs.length === 1
        ? site.slabs[0]!.name
        : 'all slabs'
  const slab = site.slabs.find(each => each.id === slabId)?.name ?? ''
  const words = ends.find(([end]) => end.test(id))?.[1]
  const entity = id.slice(0, id.indexOf('-'))
  const own = entity === slabId ? undefined : names.get(entity)
  if (own !== undefined) return words === undefined ? `${own}, ${slab}` : `${words} of ${own}, ${slab}`
  return words === undefined ? `${slab} less openings` : `${words}, ${slab}`
}
