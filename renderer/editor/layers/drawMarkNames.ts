/** Names of the marks on a site: where trucks, pumps and washout stand, ways in and out, obstacles. */
import type { CurveRing } from '../../../core/geometry/curve'
import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import type { Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Obstacle } from '../../../shared/document/slab'
import { onceFrozen } from '../../../shared/onceFrozen'
import { obstacleKinds } from '../actions/actions'
import { toScreen } from '../camera/camera'
import { roomAt } from './drawPours'
import { around, type LabelRoom } from './labelRoom'
import { letter, letterWidth } from './lettering'
import type { Pen } from './pen'

interface MarkName {
  readonly at: Pt
  readonly name: string
  /** From the middle of the mark to the edge of what is drawn of it, pixels across and up. */
  readonly halfPx: Pt
  /** A name beside it would be struck out by the edge of the slab. */
  readonly isAtEdge?: boolean
}

const atEdgePx = 14

/** How far an obstacle stands from the outline. */
const edgeDistance = onceFrozen(
  ({ at }: Obstacle, of: CurveRing) => ({ of, m: roomAt({ outer: of, holes: [] }, at) }),
  (known, of) => known.of === of,
)

const accessNames = (access: NonNullable<Site['access']>, zoom: number): readonly MarkName[] => [
  ...access.truckSpots.map(({ at }, i): MarkName => ({ at, name: `Truck ${i + 1}`, halfPx: [12, 24] })),
  ...access.pumpSpots.map(({ at }, i): MarkName => ({ at, name: `Pump ${i + 1}`, halfPx: [12, 12] })),
  ...access.washouts.map(({ at }): MarkName => ({ at, name: 'Washout', halfPx: [16, 12] })),
  ...access.ways.map(
    ({ at, widthM, name }): MarkName => ({
      at,
      name: name ?? 'Way in',
      halfPx: [Math.max(8, (widthM * zoom) / 2), 6],
    }),
  ),
]

const style = { sizePx: 13, weight: 500 } as const

/** Each beside its mark, where there is room; a name without room is left to the outline. */
export function drawMarkNames(
  pen: Pen,
  { slabs: sources, access }: Site,
  slabs: readonly ResolvedSlab[],
  room: LabelRoom,
  withAccess: boolean,
): void {
  const marks: readonly MarkName[] = [
    ...(access && withAccess ? accessNames(access, pen.camera.zoom) : []),
    ...sources.flatMap(({ id, obstacles }) => {
      const outline = slabs.find(slab => slab.id === id)?.outline ?? []
      return obstacles.map((obstacle): MarkName => {
        const { at, kind, name } = obstacle
        const isAtEdge = edgeDistance(obstacle, outline).m * pen.camera.zoom < atEdgePx
        return { at, name: name ?? obstacleKinds[kind], halfPx: [6, 6], isAtEdge }
      })
    }),
  ]
  const placed = marks.map(mark => ({ ...mark, screen: toScreen(pen.camera, mark.at) }))
  for (const { screen, halfPx } of placed) room.block(around(screen, 2 * halfPx[0], 2 * halfPx[1]))
  for (const { name, screen, halfPx, isAtEdge } of placed) {
    const [x, y] = screen
    const width = letterWidth(pen, name, style) + 8
    const height = 16 * pen.inks.letterScale
    const [across, up] = [halfPx[0] + width / 2 + 2, halfPx[1] + height / 2 + 2]
    const spots: readonly Pt[] = [
      [x, y + up],
      [x, y - up],
      [x + across, y + up],
      [x - across, y + up],
      [x + across, y - up],
      [x - across, y - up],
      ...(isAtEdge ? [] : [[x + across, y] as const, [x - across, y] as const]),
    ]
    const spot = room.take(spots, width, height)
    if (spot) letter(pen, name, spot, { ...style, halo: pen.inks.paper })
  }
}
