import type { CurveRing } from '../../../core/geometry/curve'
import {
  type ArcDimension,
  type Dimension,
  type LineDimension,
  outlineDimensions,
} from '../../../core/reports/dimensions'
import type { Measures } from '../../../core/units/measures'
import type { Pt } from '../../../shared/document/primitives'
import { around, type LabelRoom } from './labelRoom'
import { type LetterStyle, letter, letterWidth } from './lettering'
import type { Pen } from './pen'
import {
  type DimensionedRing,
  outPx,
  type PlacedAlong,
  placeArc,
  placeLine,
  radiusLetters,
  surroundingsOf,
} from './placeDimension'

const style: LetterStyle = { sizePx: 14, weight: 600 }

const known = new WeakMap<CurveRing, readonly Dimension[]>()

/** Made once for each ring. */
export const dimensionsOf = (ring: CurveRing): readonly Dimension[] => {
  const made = known.get(ring) ?? outlineDimensions(ring)
  known.set(ring, made)
  return made
}

/** What stands on the plan at a circle, an arc or along an arc: the box that is typed over says the same. */
export const arcWords = (print: Measures, { radiusM, wholeCircle }: ArcDimension): string =>
  wholeCircle ? `${print.length(2 * radiusM)} across` : `R ${print.length(radiusM)}`
export const alongWords = (print: Measures, lengthM: number): string => `${print.length(lengthM)} along`

/** Straight edges to the corner of the forms, arcs by radius and length; those too short to letter are left to the
 * ledger. */
export function drawDimensions(
  pen: Pen,
  rings: readonly DimensionedRing[],
  flags: readonly Pt[],
  print: Measures,
  room: LabelRoom,
): void {
  for (const dimensioned of rings)
    for (const dimension of dimensionsOf(dimensioned.ring)) {
      if (dimension.kind === 'line') drawLine(pen, dimensioned, dimension, print, room)
      else drawArc(pen, dimension, flags, print, room)
    }
}

function drawLine(
  pen: Pen,
  dimensioned: DimensionedRing,
  dimension: LineDimension,
  print: Measures,
  room: LabelRoom,
): void {
  const { ctx, inks } = pen
  const text = print.length(dimension.lengthM)
  const width = letterWidth(pen, text, style)
  const {
    a,
    longPx,
    u: [ux, uy],
    n: [nx, ny],
    at: middle,
  } = placeLine(dimension, pen.camera, surroundingsOf(dimensioned, dimension, pen.camera, width))
  if (longPx < width + 26) return
  const at = (t: number, out: number): Pt => [a[0] + ux * t + nx * out, a[1] + uy * t + ny * out]
  ctx.save()
  startThin(pen)
  for (const t of [0, longPx]) {
    ctx.moveTo(...at(t, 7))
    ctx.lineTo(...at(t, outPx + 5))
  }
  ctx.stroke()
  ctx.lineWidth = inks.weight
  ctx.beginPath()
  ctx.moveTo(...at(0, outPx))
  ctx.lineTo(...at(longPx, outPx))
  ctx.stroke()
  for (const t of [0, longPx]) drawDot(pen, at(t, outPx))
  ctx.restore()
  // A slanted line is kept clear by a row of boxes: one about all of it would take half the plan.
  const [along, across] = [Math.abs(ux), Math.abs(uy)]
  const boxes = Math.min(along, across) < 0.1 ? 1 : Math.min(12, Math.ceil(longPx / 16))
  const [w, h] = [(longPx / boxes) * along + 10, (longPx / boxes) * across + 10]
  for (let i = 0; i < boxes; i++) room.block(around(at(((i + 0.5) * longPx) / boxes, outPx), w, h))
  const [long, high] = [width + 10, 24]
  room.block(around(middle, long * along + high * across, long * across + high * along))
  letter(pen, text, middle, { ...style, turnDeg: readingTurn(ux, uy), ground: inks.paper })
}

function startThin({ ctx, inks }: Pen): void {
  ctx.strokeStyle = inks['ink-2']
  ctx.fillStyle = inks['ink-2']
  ctx.lineWidth = 0.75 * inks.weight
  ctx.beginPath()
}

function drawDot({ ctx, inks }: Pen, at: Pt): void {
  ctx.beginPath()
  ctx.arc(...at, 2.6 * inks.weight, 0, 2 * Math.PI)
  ctx.fill()
}

/** Read from below or from the right, counter-clockwise on the screen. */
function readingTurn(ux: number, uy: number): number {
  let deg = (-Math.atan2(uy, ux) * 180) / Math.PI
  if (deg > 90 + 1e-6) deg -= 180
  if (deg <= -90 + 1e-6) deg += 180
  return deg
}

function drawArc(pen: Pen, dimension: ArcDimension, flags: readonly Pt[], print: Measures, room: LabelRoom): void {
  const placed = placeArc(dimension, pen.camera, flags)
  if (!placed) return
  const { ctx, inks } = pen
  const { rim, foot, inside, along } = placed
  ctx.save()
  startThin(pen)
  ctx.lineWidth = inks.weight
  ctx.moveTo(...rim)
  ctx.lineTo(...foot)
  ctx.stroke()
  drawDot(pen, foot)
  ctx.restore()
  if (along) drawAlong(pen, along, alongWords(print, dimension.lengthM), room)
  const text = arcWords(print, dimension)
  const width = letterWidth(pen, text, style)
  const letters = radiusLetters(placed, width)
  room.block(around(letters, width + 10, 24))
  letter(pen, text, letters, {
    ...style,
    ground: inside ? inks.slab : inks.paper,
  })
}

function drawAlong(
  pen: Pen,
  { center, radiusPx, start, sweep, out, at, u }: PlacedAlong,
  text: string,
  room: LabelRoom,
): void {
  const width = letterWidth(pen, text, style)
  if (Math.abs(sweep) * radiusPx < width + 26) return
  const { ctx, inks } = pen
  const on = (angle: number, px: number): Pt => [center[0] + px * Math.cos(angle), center[1] + px * Math.sin(angle)]
  const ends = [start, start + sweep]
  ctx.save()
  startThin(pen)
  // As the ends of a straight dimension: from 7 px off the edge to 5 px beyond the line.
  const [near, far] = [out * (7 - outPx), out * 5]
  for (const angle of ends) {
    ctx.moveTo(...on(angle, radiusPx + near))
    ctx.lineTo(...on(angle, radiusPx + far))
  }
  ctx.stroke()
  ctx.lineWidth = inks.weight
  ctx.beginPath()
  ctx.arc(...center, radiusPx, start, start + sweep, sweep < 0)
  ctx.stroke()
  for (const angle of ends) drawDot(pen, on(angle, radiusPx))
  ctx.restore()
  const upright = Math.abs(u[1]) > Math.abs(u[0])
  room.block(around(at, upright ? 24 : width + 10, upright ? width + 10 : 24))
  letter(pen, text, at, { ...style, turnDeg: readingTurn(...u), ground: inks.paper })
}
