import { resolveSlab } from '../../core/geometry/resolveSlab'
import { printMeasures } from '../../core/units/printMeasures'
import type { Site } from '../../shared/document/site'

/** `1,588 ft², 2 slabs, ashlar`: the area poured, and the finish of the first slab. */
export function describeSite(site: Site): string {
  const areaM2 = site.slabs.reduce((sum, slab) => sum + resolveSlab(slab).netAreaM2, 0)
  const finish = site.finishes.find(each => each.id === site.slabs[0]?.finishId)
  const slabs = site.slabs.length > 1 ? `, ${site.slabs.length} slabs` : ''
  return `${printMeasures(site.units).area(areaM2)}${slabs}${finish ? `, ${finish.name.toLowerCase()}` : ''}`
}
