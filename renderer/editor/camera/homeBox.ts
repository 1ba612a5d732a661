import { type Box, edgeBounds, joinBounds, pointBounds } from '../../../core/geometry/bounds'
import type { LivePlan } from '../../store/livePlan'
import { outlineOf } from '../layers/drawCasters'

/** Half of what a truck spot or a washout takes on the plan, with its name. */
const spotM = 2

/** All that should be in view at first: slabs, and of what stands around them as much as does not make them small. */
export function homeBox(live: LivePlan): Box {
  const slabs = joinBounds(live.slabs.flatMap(slab => slab.outline.map(edgeBounds)))
  if (slabs.minX > slabs.maxX) {
    return joinBounds(
      live.site.casters.flatMap(caster => {
        if (caster.kind === 'building') return outlineOf(caster.footprint).map(edgeBounds)
        if (caster.kind === 'cover') return outlineOf(caster.outline).map(edgeBounds)
        return [pointBounds(caster.kind === 'tree' ? [caster.at] : caster.line)]
      }),
    )
  }
  const room = 0.28 * Math.max(slabs.maxX - slabs.minX, slabs.maxY - slabs.minY)
  const trees = live.site.casters.flatMap(caster =>
    caster.kind === 'tree'
      ? [
          {
            minX: Math.max(slabs.minX - room, caster.at[0] - caster.crownRadiusM),
            maxX: Math.min(slabs.maxX + room, caster.at[0] + caster.crownRadiusM),
            minY: slabs.minY,
            maxY: slabs.maxY,
          },
        ]
      : [],
  )
  const { access } = live.site
  const spots = access ? [...access.truckSpots, ...access.pumpSpots, ...access.washouts, ...access.ways] : []
  const far = 0.3 * Math.max(slabs.maxX - slabs.minX, slabs.maxY - slabs.minY)
  const near = spots
    .map(({ at }) => at)
    .filter(([x, y]) => x > slabs.minX - far && x < slabs.maxX + far && y > slabs.minY - far && y < slabs.maxY + far)
    .map(([x, y]) => ({ minX: x - spotM, maxX: x + spotM, minY: y - spotM, maxY: y + spotM }))
  return joinBounds([slabs, ...near, ...trees.filter(box => box.minX <= box.maxX)])
}
