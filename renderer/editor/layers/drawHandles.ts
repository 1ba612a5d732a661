import type { Pt } from '../../../shared/document/primitives'
import { toScreen } from '../camera/camera'
import type { ShapeHandle } from '../shapeHandle'
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

/** A ring to drag beside what it rounds or bends. */
export function drawRing(pen: Pen, { at, foot }: Pick<ShapeHandle, 'at' | 'foot'>): void {
  const { ctx, inks } = pen
  const [[x, y], [fx, fy]] = [toScreen(pen.camera, at), toScreen(pen.camera, foot)]
  const r = 7 * inks.weight
  const long = Math.hypot(x - fx, y - fy) || 1
  ctx.save()
  ctx.strokeStyle = inks.chalk
  ctx.fillStyle = inks.paper
  ctx.lineWidth = 1.4 * inks.weight
  ctx.setLineDash([2, 3])
  ctx.beginPath()
  ctx.moveTo(fx, fy)
  ctx.lineTo(x - ((x - fx) * r) / long, y - ((y - fy) * r) / long)
  ctx.stroke()
  ctx.setLineDash([])
  ctx.lineWidth = 2.4 * inks.weight
  ctx.beginPath()
  ctx.arc(x, y, r, 0, 2 * Math.PI)
  ctx.fill()
  ctx.stroke()
  ctx.restore()
}
