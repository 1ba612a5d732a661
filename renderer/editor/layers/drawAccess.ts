/** Truck spots, ways, areas to keep off, and points the sun is asked about. */
import type { MarkedPoint, Site } from '../../../shared/document/site'
import { toScreen } from '../camera/camera'
import { outlineOf } from './drawCasters'
import { letter } from './lettering'
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
  const place = (at: readonly [number, number], name: string, draw: (x: number, y: number) => void) => {
    const [x, y] = toScreen(camera, at)
    ctx.strokeStyle = inks.truck
    ctx.fillStyle = inks.paper
    ctx.lineWidth = 1.4 * inks.weight
    draw(x, y)
    letter(pen, name, [x, y + 34], { sizePx: 13, weight: 500, ink: inks['ink-2'] })
  }
  access.truckSpots.forEach(({ at }, i) => {
    place(at, `Truck ${i + 1}`, (x, y) => {
      ctx.fillRect(x - 12, y - 24, 24, 48)
      ctx.strokeRect(x - 12, y - 24, 24, 48)
      ctx.strokeRect(x - 8, y - 20, 16, 26)
    })
  })
  access.pumpSpots.forEach(({ at }, i) => {
    place(at, `Pump ${i + 1}`, (x, y) => ctx.strokeRect(x - 12, y - 12, 24, 24))
  })
  access.washouts.forEach(({ at }) => {
    place(at, 'Washout', (x, y) => {
      ctx.setLineDash([4, 3])
      ctx.strokeRect(x - 16, y - 12, 32, 24)
      ctx.setLineDash([])
    })
  })
}

/** A paint-stick flag at each marked point. */
export function drawPoints(pen: Pen, points: readonly MarkedPoint[]): void {
  const { ctx, inks, camera } = pen
  for (const { at, name } of points) {
    const [x, y] = toScreen(camera, at)
    ctx.fillStyle = inks.paint
    ctx.beginPath()
    ctx.moveTo(x - 4, y - 14)
    ctx.lineTo(x + 4, y - 14)
    ctx.lineTo(x + 4, y - 5)
    ctx.lineTo(x, y)
    ctx.lineTo(x - 4, y - 5)
    ctx.fill()
    letter(pen, name, [x + 10, y - 8], { sizePx: 13, weight: 600, align: 'left', ground: inks.paper })
  }
}
