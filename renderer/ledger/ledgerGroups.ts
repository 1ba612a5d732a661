/** The figures as an estimator reads them: the whole site, slab by slab, pour by pour. */
import { isBidFigure } from '../../core/quantities/priceFigures'
import type { Site } from '../../shared/document/site'
import type { Quantity } from '../../shared/planJson'

export interface FigureGroup {
  readonly key: string
  readonly title: string
  readonly rows: readonly Quantity[]
}

const kinds: readonly { readonly title: string; readonly holds: (q: Quantity) => boolean }[] = [
  { title: 'Areas', holds: q => q.unit === 'm²' },
  {
    title: 'Joints',
    holds: q => q.unit === 'm' && /-(joint|header|isolation)-length$|-construction-joint-/.test(q.id),
  },
  { title: 'Lengths', holds: q => q.unit === 'm' },
  { title: 'Concrete and base', holds: q => q.unit === 'm³' || q.unit === 'kg' },
  { title: 'Other', holds: () => true },
]

/** Every figure in one group, each group in the order of the plan. */
export function ledgerGroups(
  site: Pick<Site, 'slabs'>,
  pours: readonly { readonly id: string; readonly number: string }[],
  quantities: readonly Quantity[],
): readonly FigureGroup[] {
  const ofSlabs = site.slabs.flatMap(slab => {
    const own = quantities.filter(q => q.slabId === slab.id && q.pourId === undefined)
    const taken = new Set<Quantity>()
    return kinds.map(({ title, holds }): FigureGroup => {
      const rows = own.filter(q => !taken.has(q) && holds(q))
      for (const q of rows) taken.add(q)
      return {
        key: `${slab.id} ${title}`,
        title: site.slabs.length > 1 ? `${slab.name}: ${title.toLowerCase()}` : title,
        rows,
      }
    })
  })
  return [
    {
      key: 'site',
      title: 'Whole site',
      rows: quantities.filter(q => q.slabId === undefined && q.pourId === undefined && !isBidFigure(q)),
    },
    { key: 'prices', title: 'Price list', rows: quantities.filter(isBidFigure) },
    ...ofSlabs,
    ...pours.map(pour => ({
      key: pour.id,
      title: `Pour ${pour.number}`,
      rows: quantities.filter(q => q.pourId === pour.id),
    })),
  ].filter(({ rows }) => rows.length > 0)
}
