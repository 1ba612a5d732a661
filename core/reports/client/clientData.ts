/** What the client's drawing is made from: the slabs as they are drawn, before any pour is planned. */
import type { Site } from '../../../shared/document/site'
import type { ResolvedSlab } from '../../geometry/resolvedSlab'
import { casterShape, sheetSlab } from '../planSheetData'
import type { SheetData } from '../sheetData'

export function clientData(site: Site, slabs: readonly ResolvedSlab[], date: string): SheetData {
  const { place, units } = site
  const finishName = (id: string): string => site.finishes.find(f => f.id === id)?.name ?? ''
  return {
    siteName: site.name,
    siteId: site.id,
    date,
    zone: place.zone,
    units,
    place: {
      latDeg: place.latDeg,
      lonDeg: place.lonDeg,
      northDeg: place.northDeg,
      ...(place.name === undefined ? {} : { name: place.name }),
    },
    slabs: slabs
      .filter(({ outline }) => outline.length > 0)
      .map(slab =>
        sheetSlab(
          slab,
          site.slabs.find(({ id }) => id === slab.id),
          finishName,
        ),
      ),
    casters: site.casters.map(caster => ({
      id: caster.id,
      kind: caster.kind,
      name: caster.name,
      shape: casterShape(caster),
      topM: caster.kind === 'building' ? caster.eaveM : caster.topM,
      baseM: caster.kind === 'cover' ? caster.undersideM : caster.baseM,
    })),
    points: [],
    ...(site.furnishings ? { furnishings: site.furnishings } : {}),
    pours: [],
    joints: [],
    hours: [],
    shadows: [],
    slabShares: [],
    pourShares: [],
    quantities: [],
    names: new Map(),
    problems: [],
  }
}
