import type { Pt } from '../../../shared/document/primitives'
import { toScreen } from '../camera/camera'
import { inPlan, type Pen, px, weight } from './pen'
import type { PlanGeometry } from './planGeometry'
import { addEdges, regionsPath } from './ringPath'

/** The geometry a figure came from: chalk over ink. */
export function drawLit(pen: Pen, { edges, regions, points }: PlanGeometry): void {
  const { ctx, inks } = pen
  inPlan(pen, () => {
    if (regions.length > 0) {
      ctx.fillStyle = inks.chalk
      ctx.globalAlpha = 0.3
      ctx.fill(regionsPath(regions), 'evenodd')
      ctx.globalAlpha = 1
    }
    ctx.strokeStyle = inks.chalk
    ctx.lineWidth = weight(pen, 5)
    ctx.lineCap = 'butt'
    const path = new Path2D()
    addEdges(path, edges)
    ctx.stroke(path)
    ctx.lineWidth = weight(pen, 2)
    if (regions.length > 0) ctx.stroke(regionsPath(regions))
  })
  for (const point of points) drawStake(pen, point)
}

/** The selection: a chalk line and form stakes at its corners. */
export function drawSelection(pen: Pen, { edges, regions, points }: PlanGeometry): void {
  const { ctx, inks } = pen
  const rings = [edges, ...regions.flatMap(region => [region.outer, ...region.holes])]
  inPlan(pen, () => {
    ctx.strokeStyle = inks.chalk
    ctx.lineWidth = weight(pen, 2.5)
    ctx.setLineDash([px(pen, 13), px(pen, 2)])
    for (const ring of rings) {
      const path = new Path2D()
      addEdges(path, ring)
      ctx.stroke(path)
    }
    ctx.setLineDash([])
  })
  for (const ring of rings) for (const { from, to } of ring) for (const end of [from, to]) drawStake(pen, end)
  for (const point of points) drawStake(pen, point)
}

/** A stake driven at a corner: a short post with its point down. */
function drawStake(pen: Pen, at: Pt): void {
  const { ctx, inks } = pen
  const [x, y] = toScreen(pen.camera, at)
  const w = 3.5 * inks.weight
  ctx.beginPath()
  ctx.moveTo(x - w, y - 8)
  ctx.lineTo(x + w, y - 8)
  ctx.lineTo(x + w, y + 2)
  ctx.lineTo(x, y + 8)
  ctx.lineTo(x - w, y + 2)
  ctx.closePath()
  ctx.fillStyle = inks.chalk
  ctx.fill()
  ctx.strokeStyle = inks.paper
  ctx.lineWidth = 1
  ctx.stroke()
}
