/** Names of the marks on a site: where trucks, pumps and washout stand, ways in and out, obstacles. */
import type { Pt } from '../../../shared/document/primitives'
import type { MarkedPoint, Site } from '../../../shared/document/site'
import { obstacleKinds } from '../actions/actions'
import { toScreen } from '../camera/camera'
import { around, type LabelRoom } from './labelRoom'
import { letter, letterWidth } from './lettering'
import { markHalf } from './markSizes'
import type { Pen } from './pen'

interface MarkName {
  readonly at: Pt
  readonly name: string
  /** From the middle of the mark to the edge of what is drawn of it, pixels across and up. */
  readonly halfPx: Pt
}

const accessNames = (access: NonNullable<Site['access']>, zoom: number): readonly MarkName[] => [
  ...access.truckSpots.map(({ at }, i): MarkName => ({ at, name: `Truck ${i + 1}`, halfPx: markHalf('truck', zoom) })),
  ...access.pumpSpots.map(({ at }, i): MarkName => ({ at, name: `Pump ${i + 1}`, halfPx: markHalf('pump', zoom) })),
  ...access.washouts.map(({ at }): MarkName => ({ at, name: 'Washout', halfPx: markHalf('washout', zoom) })),
  ...access.ways.map(
    ({ at, widthM, name }): MarkName => ({
      at,
      name: name ?? 'Way in',
      halfPx: [Math.max(8, (widthM * zoom) / 2), 6],
    }),
  ),
]

const style = { sizePx: 13, weight: 500 } as const

/** A flag this near to a mark of the same name speaks for both. */
const sameNamePx = 110

/**
 * Each beside its mark, where it hides nothing; a name without room is left to the outline, and so is one that a marked
 * point beside it bears. `flags`: the points whose names stand on the plan.
 */
export function drawMarkNames(
  pen: Pen,
  { slabs: sources, access }: Site,
  flags: readonly MarkedPoint[],
  room: LabelRoom,
  withAccess: boolean,
): void {
  const marks: readonly MarkName[] = [
    ...(access && withAccess ? accessNames(access, pen.camera.zoom) : []),
    ...sources.flatMap(({ obstacles }) =>
      obstacles.map(({ at, kind, name }): MarkName => ({ at, name: name ?? obstacleKinds[kind], halfPx: [6, 6] })),
    ),
  ]
  const placed = marks.map(mark => ({ ...mark, screen: toScreen(pen.camera, mark.at) }))
  for (const { screen, halfPx } of placed) room.block(around(screen, 2 * halfPx[0], 2 * halfPx[1]))
  const shown = flags.map(flag => ({ name: flag.name, screen: toScreen(pen.camera, flag.at) }))
  for (const { name, screen, halfPx } of placed) {
    const [x, y] = screen
    if (shown.some(flag => flag.name === name && Math.hypot(flag.screen[0] - x, flag.screen[1] - y) < sameNamePx))
      continue
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
      [x + across, y],
      [x - across, y],
    ]
    const spot = room.take(spots, width, height, false)
    if (spot) letter(pen, name, spot, { ...style, halo: pen.inks.paper })
  }
}
