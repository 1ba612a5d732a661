/** Truck spots, ways, areas to keep off, and points the sun is asked about. */
import type { Pt } from '../../../shared/document/primitives'
import type { MarkedPoint, Site } from '../../../shared/document/site'
import { toScreen } from '../camera/camera'
import { outlineOf } from './drawCasters'
import { around, type LabelRoom } from './labelRoom'
import { letter, letterWidth } from './lettering'
import { type MarkKind, markHalf } from './markSizes'
import { inPlan, type Pen, px, weight } from './pen'
import { ringPath } from './ringPath'

export function drawAccess(pen: Pen, access: NonNullable<Site['access']>): void {
  const { ctx, inks, camera } = pen
  inPlan(pen, () => {
    ctx.strokeStyle = inks.nogo
    ctx.lineWidth = weight(pen, 1.6)
    ctx.setLineDash([px(pen, 3), px(pen, 3)])
    for (const path of access.noGo) ctx.stroke(ringPath(outlineOf(path)))
    ctx.setLineDash([])
  })
  ctx.strokeStyle = inks.truck
  ctx.fillStyle = inks.paper
  ctx.lineWidth = 1.4 * inks.weight
  for (const { at } of access.truckSpots) {
    const [x, y] = toScreen(camera, at)
    const [w, h] = markHalf('truck', camera.zoom)
    ctx.fillRect(x - w, y - h, 2 * w, 2 * h)
    ctx.strokeRect(x - w, y - h, 2 * w, 2 * h)
    ctx.strokeRect(x - (2 / 3) * w, y - (5 / 6) * h, (4 / 3) * w, (13 / 12) * h)
  }
  const box = (kind: MarkKind, at: Pt): void => {
    const [x, y] = toScreen(camera, at)
    const [w, h] = markHalf(kind, camera.zoom)
    ctx.strokeRect(x - w, y - h, 2 * w, 2 * h)
  }
  for (const { at } of access.pumpSpots) box('pump', at)
  ctx.setLineDash([4, 3])
  for (const { at } of access.washouts) box('washout', at)
  ctx.setLineDash([])
}

const pointStyle = { sizePx: 13, weight: 600 } as const

export interface PlacedPoint {
  readonly point: MarkedPoint
  /** The middle of its name. */
  readonly nameAt: Pt
}

/** The name of each marked point on the right of its flag, or where there is room. */
export function placePoints(pen: Pen, points: readonly MarkedPoint[], room: LabelRoom): readonly PlacedPoint[] {
  return points.map(point => {
    const [x, y] = toScreen(pen.camera, point.at)
    const half = letterWidth(pen, point.name, pointStyle) / 2
    const right: Pt = [x + 10 + half, y - 8]
    const spots: readonly Pt[] = [right, [x - 10 - half, y - 8], [x, y - 28], [x, y + 14]]
    room.block(around([x, y - 7], 10, 16))
    return { point, nameAt: room.take(spots, 2 * half + 10, 20) ?? right }
  })
}

/** A paint-stick flag at each, and its name. */
export function drawPoints(pen: Pen, placed: readonly PlacedPoint[]): void {
  const { ctx, inks, camera } = pen
  for (const { point, nameAt } of placed) {
    const [x, y] = toScreen(camera, point.at)
    ctx.fillStyle = inks.paint
    ctx.beginPath()
    ctx.moveTo(x - 4, y - 14)
    ctx.lineTo(x + 4, y - 14)
    ctx.lineTo(x + 4, y - 5)
    ctx.lineTo(x, y)
    ctx.lineTo(x - 4, y - 5)
    ctx.fill()
    letter(pen, point.name, nameAt, { ...pointStyle, ground: inks.paper })
  }
}
