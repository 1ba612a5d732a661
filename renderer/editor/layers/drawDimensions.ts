import type { CurveRing } from '../../../core/geometry/curve'
import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import { type ArcDimension, type LineDimension, outlineDimensions } from '../../../core/reports/dimensions'
import type { Measures } from '../../../core/units/measures'
import type { Pt } from '../../../shared/document/primitives'
import { toScreen } from '../camera/camera'
import { around, type LabelRoom } from './labelRoom'
import { type LetterStyle, letter, letterWidth } from './lettering'
import type { Pen } from './pen'

/** How far outside the slab the dimension line stands. */
const outPx = 30
const style: LetterStyle = { sizePx: 14, weight: 600 }

const known = new WeakMap<CurveRing, readonly (ArcDimension | LineDimension)[]>()

const dimensionsOf = (ring: CurveRing) => {
  const made = known.get(ring) ?? outlineDimensions(ring)
  known.set(ring, made)
  return made
}

/** Straight edges to the corner of the forms, arcs by radius; those too short to letter are left to the ledger. */
export function drawDimensions(pen: Pen, slabs: readonly ResolvedSlab[], print: Measures, room: LabelRoom): void {
  for (const slab of slabs) {
    for (const dimension of dimensionsOf(slab.outline)) {
      if (dimension.kind === 'line') drawLine(pen, dimension, print, room)
      else drawRadius(pen, dimension, print, room)
    }
  }
}

function drawLine(pen: Pen, { from, to, lengthM }: LineDimension, print: Measures, room: LabelRoom): void {
  const { ctx, inks, camera } = pen
  const [a, b] = [toScreen(camera, from), toScreen(camera, to)]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  const text = print.length(lengthM)
  const width = letterWidth(pen, text, style)
  if (length < width + 26) return
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
  // The concrete is on the left of travel; on the screen, y down, its outside is the way (−uy, ux) turned back.
  const [nx, ny] = [-uy, ux]
  const at = (t: number, out: number): Pt => [a[0] + ux * t + nx * out, a[1] + uy * t + ny * out]
  ctx.save()
  ctx.strokeStyle = inks['ink-2']
  ctx.fillStyle = inks['ink-2']
  ctx.lineWidth = 0.75 * inks.weight
  ctx.beginPath()
  for (const t of [0, length]) {
    ctx.moveTo(...at(t, 7))
    ctx.lineTo(...at(t, outPx + 5))
  }
  ctx.stroke()
  ctx.lineWidth = inks.weight
  ctx.beginPath()
  ctx.moveTo(...at(0, outPx))
  ctx.lineTo(...at(length, outPx))
  ctx.stroke()
  for (const t of [0, length]) {
    ctx.beginPath()
    ctx.arc(...at(t, outPx), 2.6 * inks.weight, 0, 2 * Math.PI)
    ctx.fill()
  }
  ctx.restore()
  const [p, q] = [at(0, outPx), at(length, outPx)]
  if (Math.min(Math.abs(ux), Math.abs(uy)) < 0.1)
    room.block(around([(p[0] + q[0]) / 2, (p[1] + q[1]) / 2], Math.abs(p[0] - q[0]) + 10, Math.abs(p[1] - q[1]) + 10))
  const upright = Math.abs(uy) > Math.abs(ux)
  room.block(around(at(length / 2, outPx), upright ? 24 : width + 10, upright ? width + 10 : 24))
  letter(pen, text, at(length / 2, outPx), { ...style, turnDeg: readingTurn(ux, uy), ground: inks.paper })
}

/** Read from below or from the right, counter-clockwise on the screen. */
function readingTurn(ux: number, uy: number): number {
  let deg = (-Math.atan2(uy, ux) * 180) / Math.PI
  if (deg > 90 + 1e-6) deg -= 180
  if (deg <= -90 + 1e-6) deg += 180
  return deg
}

function drawRadius(
  pen: Pen,
  { center, radiusM, middle, outward, wholeCircle }: ArcDimension,
  print: Measures,
  room: LabelRoom,
): void {
  const { ctx, inks, camera } = pen
  if (radiusM * camera.zoom < 22) return
  const rim = toScreen(camera, middle)
  const isOutside = (middle[0] - center[0]) * outward[0] + (middle[1] - center[1]) * outward[1] > 0
  const reach = Math.min(radiusM * camera.zoom, 70)
  const direction: Pt = isOutside ? [-outward[0], outward[1]] : [outward[0], -outward[1]]
  const foot: Pt = [rim[0] + direction[0] * reach, rim[1] + direction[1] * reach]
  ctx.save()
  ctx.strokeStyle = inks['ink-2']
  ctx.fillStyle = inks['ink-2']
  ctx.lineWidth = inks.weight
  ctx.beginPath()
  ctx.moveTo(...rim)
  ctx.lineTo(...foot)
  ctx.stroke()
  ctx.beginPath()
  ctx.arc(...foot, 2.6 * inks.weight, 0, 2 * Math.PI)
  ctx.fill()
  ctx.restore()
  const text = wholeCircle ? `${print.length(2 * radiusM)} across` : `R ${print.length(radiusM)}`
  const side = direction[0] >= 0 ? 1 : -1
  const width = letterWidth(pen, text, style)
  room.block(around([foot[0] + side * (14 + width / 2), foot[1]], width + 10, 24))
  letter(pen, text, [foot[0] + side * 14, foot[1]], {
    ...style,
    align: side > 0 ? 'left' : 'right',
    ground: inks.slab,
  })
}
