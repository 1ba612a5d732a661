/** What a day of pouring stands on before the pour has strips: hands, finish, method, mix and weather. */
import type { Crew, Mix } from '../../../shared/document/day'
import type { Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Slab } from '../../../shared/document/slab'
import type { CurveRegion } from '../../geometry/curve'
import type { ResolvedSlab } from '../../geometry/resolvedSlab'
import type { DayConditions } from './dayConditions'
import type { DayInput } from './dayProblem'
import { type PlacingMethod, placingMethod } from './placingMethod'
import { siteRetarder } from './retarder'

export interface GroundOfDay {
  readonly site: Site
  readonly slab: ResolvedSlab
  readonly source: Slab
  readonly crew: Crew
  readonly mix: Mix
  readonly conditions: DayConditions
}

export interface DayBase {
  readonly base: Omit<DayInput, 'strips' | 'startMs'>
  readonly method: PlacingMethod
}

/** Color is thrown on unless the materials of the site put it in the mix. */
function hasHardener({ materials }: Site): boolean {
  const kinds = new Set((materials ?? []).map(material => material.kind))
  return kinds.has('hardener') || !kinds.has('integralColor')
}

export function dayBase({ site, slab, source, crew, mix, conditions }: GroundOfDay, region: CurveRegion): DayBase {
  const points: Pt[] = region.outer.map(edge => edge.from)
  const method = placingMethod(points, site.access)
  const finish = site.finishes.find(({ id }) => id === slab.finishId)
  const retarder = siteRetarder(site)
  return {
    method,
    base: {
      ...{ hands: crew.hands, experience: crew.experience, pattern: finish?.pattern ?? 'ashlar' },
      ...{ hardener: hasHardener(site), methodM3H: method.rateM3H, thicknessM: source.thicknessM, mix },
      weather: conditions.weather,
      ...(site.settings === undefined ? {} : { settings: site.settings }),
      ...(retarder === undefined ? {} : { retarder }),
    },
  }
}
