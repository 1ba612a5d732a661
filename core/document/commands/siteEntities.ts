/** Everything on a site that can be chosen, with the list it stands in. */
import type { Caster } from '../../../shared/document/caster'
import type { Way } from '../../../shared/document/day'
import type { Path } from '../../../shared/document/path'
import type { JointWish } from '../../../shared/document/pours'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Furnishing, Note, TapeDimension } from '../../../shared/document/shown'
import type { MarkedPoint, Site } from '../../../shared/document/site'
import type { Band, Border, Inset, Obstacle, Opening, Slab, Steps } from '../../../shared/document/slab'
import { onceFrozen } from '../../../shared/onceFrozen'

interface Spot {
  id: Id
  at: Pt
}

/** `owner` is the slab it is drawn on. */
export type Entity =
  | { readonly kind: 'slab'; readonly row: Slab; readonly list: Slab[] }
  | { readonly kind: 'opening'; readonly row: Opening; readonly list: Opening[]; readonly owner: Slab }
  | { readonly kind: 'border'; readonly row: Border; readonly list: Border[]; readonly owner: Slab }
  | { readonly kind: 'band'; readonly row: Band; readonly list: Band[]; readonly owner: Slab }
  | { readonly kind: 'inset'; readonly row: Inset; readonly list: Inset[]; readonly owner: Slab }
  | { readonly kind: 'steps'; readonly row: Steps; readonly list: Steps[]; readonly owner: Slab }
  | { readonly kind: 'obstacle'; readonly row: Obstacle; readonly list: Obstacle[]; readonly owner: Slab }
  | { readonly kind: 'caster'; readonly row: Caster; readonly list: Caster[] }
  | { readonly kind: 'spot'; readonly row: Spot; readonly list: Spot[]; readonly spots: SpotList }
  | { readonly kind: 'noGo'; readonly row: Path; readonly list: Path[] }
  | { readonly kind: 'way'; readonly row: Way; readonly list: Way[] }
  | { readonly kind: 'point'; readonly row: MarkedPoint; readonly list: MarkedPoint[] }
  | { readonly kind: 'wish'; readonly row: JointWish; readonly list: JointWish[] }
  | { readonly kind: 'furnishing'; readonly row: Furnishing; readonly list: Furnishing[] }
  | { readonly kind: 'note'; readonly row: Note; readonly list: Note[] }
  | { readonly kind: 'tape'; readonly row: TapeDimension; readonly list: TapeDimension[] }

export type SpotList = 'truckSpots' | 'pumpSpots' | 'washouts'
export const spotLists = ['truckSpots', 'pumpSpots', 'washouts'] as const satisfies readonly SpotList[]

const onSlab = (slab: Slab, list: Slab[]): readonly Entity[] => [
  { kind: 'slab', row: slab, list },
  ...slab.openings.map((row): Entity => ({ kind: 'opening', row, list: slab.openings, owner: slab })),
  ...slab.borders.map((row): Entity => ({ kind: 'border', row, list: slab.borders, owner: slab })),
  ...slab.bands.map((row): Entity => ({ kind: 'band', row, list: slab.bands, owner: slab })),
  ...slab.insets.map((row): Entity => ({ kind: 'inset', row, list: slab.insets, owner: slab })),
  ...slab.steps.map((row): Entity => ({ kind: 'steps', row, list: slab.steps, owner: slab })),
  ...slab.obstacles.map((row): Entity => ({ kind: 'obstacle', row, list: slab.obstacles, owner: slab })),
]

const rowsOf = (list: readonly { id: Id }[] | undefined, kind: 'furnishing' | 'note' | 'tape'): readonly Entity[] =>
  (list ?? []).map(row => ({ kind, row, list }) as Entity)

const casterEntities = onceFrozen((list: Caster[]): readonly Entity[] =>
  list.map((row): Entity => ({ kind: 'caster', row, list })),
)

/** In document order: slabs before what is drawn on them. */
export const siteEntities = onceFrozen((site: Site): readonly Entity[] => {
  const { access } = site
  return [
    ...site.slabs.flatMap(slab => onSlab(slab, site.slabs)),
    ...casterEntities(site.casters),
    ...(access === undefined
      ? []
      : [
          ...spotLists.flatMap(spots =>
            access[spots].map((row): Entity => ({ kind: 'spot', row, list: access[spots], spots })),
          ),
          ...access.noGo.map((row): Entity => ({ kind: 'noGo', row, list: access.noGo })),
          ...access.ways.map((row): Entity => ({ kind: 'way', row, list: access.ways })),
        ]),
    ...site.points.map((row): Entity => ({ kind: 'point', row, list: site.points })),
    ...site.wishes.map((row): Entity => ({ kind: 'wish', row, list: site.wishes })),
    ...rowsOf(site.furnishings, 'furnishing'),
    ...rowsOf(site.notes, 'note'),
    ...rowsOf(site.tapes, 'tape'),
  ]
})

export const chosenEntities = (site: Site, ids: readonly Id[]): readonly Entity[] => {
  const chosen = new Set(ids)
  return siteEntities(site).filter(({ row }) => chosen.has(row.id))
}

/** Takes a row out of its list. */
export const removeRow = (list: { readonly id: Id }[], id: Id): void => {
  const at = list.findIndex(row => row.id === id)
  if (at >= 0) list.splice(at, 1)
}
