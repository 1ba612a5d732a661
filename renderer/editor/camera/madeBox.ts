import { siteEntities } from '../../../core/document/commands/siteEntities'
import { type Box, edgeBounds, joinBounds, pointBounds } from '../../../core/geometry/bounds'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { LivePlan } from '../../store/livePlan'
import { entityGeometry } from '../layers/planGeometry'

/** What is chosen because it was made: it was not on the site before. Empty where nothing was. */
export function madeBox(live: LivePlan, before: Site, chosen: readonly Id[]): Box {
  const known = new Set(live.site === before ? chosen : siteEntities(before).map(({ row }) => row.id))
  return joinBounds(
    chosen
      .filter(id => !known.has(id))
      .flatMap(id => {
        const { edges, regions, points } = entityGeometry(live, {}, id)
        return [...edges, ...regions.flatMap(({ outer }) => outer)].map(edgeBounds).concat(pointBounds(points))
      }),
  )
}
