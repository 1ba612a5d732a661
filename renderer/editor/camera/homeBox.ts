import { pictureSize } from '../../../core/document/pictureSize'
import { type Box, boxesMeet, edgeBounds, joinBounds, pointBounds } from '../../../core/geometry/bounds'
import type { Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { LivePlan } from '../../store/livePlan'
import { outlineOf } from '../layers/drawCasters'

/** Half of what a truck spot or a washout takes on the plan, with its name. */
const spotM = 2

/** The ground under the picture; empty without one. */
function pictureBox({ place: { picture }, assets }: Site): Box {
  const px = picture && assets?.[picture.assetId] && pictureSize(assets[picture.assetId]!.base64)
  if (!picture || !px) return pointBounds([])
  const angle = (picture.turnDeg * Math.PI) / 180
  const [x, y] = picture.originAt
  return pointBounds(
    [0, 1, 2, 3].map((corner): Pt => {
      const u = corner % 2 === 0 ? 0 : px.width * picture.metersPerPixel
      const v = corner < 2 ? 0 : -px.height * picture.metersPerPixel
      return [x + u * Math.cos(angle) - v * Math.sin(angle), y + u * Math.sin(angle) + v * Math.cos(angle)]
    }),
  )
}

/** All that should be in view at first: slabs, and of what stands around them as much as does not make them small. */
export function homeBox(live: LivePlan): Box {
  const slabs = joinBounds(live.slabs.flatMap(slab => slab.outline.map(edgeBounds)))
  if (slabs.minX > slabs.maxX) {
    if (live.site.casters.length === 0) return pictureBox(live.site)
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
  const isNear = (box: Box): boolean => boxesMeet(box, slabs, far)
  const near = spots
    .map(({ at }) => pointBounds([at]))
    .filter(isNear)
    .map(box => widened(box, spotM))
  // Whole, as long as it reaches no farther than twice that.
  const kept = widened(slabs, 2 * far)
  const noGo = (access?.noGo ?? [])
    .map(path => joinBounds(outlineOf(path).map(edgeBounds)))
    .filter(isNear)
    .map(box => ({
      minX: Math.max(box.minX, kept.minX),
      maxX: Math.min(box.maxX, kept.maxX),
      minY: Math.max(box.minY, kept.minY),
      maxY: Math.min(box.maxY, kept.maxY),
    }))
  return joinBounds([slabs, ...near, ...noGo, ...trees.filter(box => box.minX <= box.maxX)])
}

const widened = ({ minX, maxX, minY, maxY }: Box, m: number): Box => ({
  minX: minX - m,
  maxX: maxX + m,
  minY: minY - m,
  maxY: maxY + m,
})
