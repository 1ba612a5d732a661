import { type ArcDimension, arcWords } from '../../../core/reports/dimensions'
import type { Measures } from '../../../core/units/measures'
import type { Pt } from '../../../shared/document/primitives'
import type { DimensionGround } from './dimensionGround'
import { around, type LabelRoom } from './labelRoom'
import { type LetterStyle, letter, letterWidth } from './lettering'
import type { Pen } from './pen'
import { alongWords, type PlacedAlong } from './placeAlong'
import { type PlacedArc, radiusLetters } from './placeArc'
import { lettersBox, placeDimensions } from './placeDimensions'
import type { DimensionedRing, PlacedLine } from './placeLine'

const style: LetterStyle = { sizePx: 14, weight: 600 }

/** Straight edges to the corner of the forms, arcs by radius and length; those too short to letter are left to the
 * ledger. */
export function drawDimensions(
  pen: Pen,
  rings: readonly DimensionedRing[],
  ground: DimensionGround,
  print: Measures,
  room: LabelRoom,
): void {
  for (const placed of placeDimensions(rings, ground, pen.camera, print)) {
    if ('line' in placed) drawLine(pen, placed.line, print.length(placed.dimension.lengthM), room)
    else {
      if (placed.along) drawAlong(pen, placed.along, alongWords(print, placed.dimension.lengthM), room)
      drawArc(pen, placed.dimension, placed.arc, print, room)
    }
  }
}

function drawLine(pen: Pen, placed: PlacedLine, text: string, room: LabelRoom): void {
  const { ctx, inks } = pen
  const width = letterWidth(pen, text, style)
  const {
    a,
    longPx,
    u: [ux, uy],
    n: [nx, ny],
    outPx: stands,
    onSlab,
    at: middle,
  } = placed
  if (longPx < width + 26) return
  const at = (t: number, out: number): Pt => [a[0] + ux * t + nx * out, a[1] + uy * t + ny * out]
  const ends = [0, longPx]
  const line = () => {
    ctx.moveTo(...at(0, stands))
    ctx.lineTo(...at(longPx, stands))
  }
  ctx.save()
  startThin(pen)
  if (onSlab) drawRim(pen, line)
  for (const t of ends) {
    ctx.moveTo(...at(t, 7))
    ctx.lineTo(...at(t, stands + 5))
  }
  ctx.stroke()
  ctx.lineWidth = inks.weight
  ctx.beginPath()
  line()
  ctx.stroke()
  for (const t of ends) drawDot(pen, at(t, stands))
  ctx.restore()
  // A slanted line is kept clear by a row of boxes: one about all of it would take half the plan.
  const [along, across] = [Math.abs(ux), Math.abs(uy)]
  const boxes = Math.min(along, across) < 0.1 ? 1 : Math.min(12, Math.ceil(longPx / 16))
  const [w, h] = [(longPx / boxes) * along + 10, (longPx / boxes) * across + 10]
  for (let i = 0; i < boxes; i++) room.block(around(at(((i + 0.5) * longPx) / boxes, stands), w, h))
  room.block(lettersBox(placed, width))
  letter(pen, text, middle, { ...style, turnDeg: readingTurn(ux, uy), ground: onSlab ? inks.slab : inks.paper })
}

/** A pale rim along a line on the slab, so that the pattern does not run into it. */
function drawRim({ ctx, inks }: Pen, line: () => void): void {
  ctx.save()
  ctx.strokeStyle = inks.slab
  ctx.lineWidth = 4
  ctx.beginPath()
  line()
  ctx.stroke()
  ctx.restore()
  ctx.beginPath()
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

function drawArc(pen: Pen, dimension: ArcDimension, placed: PlacedArc, print: Measures, room: LabelRoom): void {
  const { ctx, inks } = pen
  const { rim, foot, inside } = placed
  ctx.save()
  startThin(pen)
  ctx.lineWidth = inks.weight
  ctx.moveTo(...rim)
  ctx.lineTo(...foot)
  ctx.stroke()
  drawDot(pen, foot)
  ctx.restore()
  const text = arcWords(print, dimension)
  const width = letterWidth(pen, text, style)
  const letters = radiusLetters(placed, width)
  room.block(around(letters, width + 10, 24))
  letter(pen, text, letters, {
    ...style,
    ground: inside ? inks.slab : inks.paper,
  })
}

/** The line along an arc is known to other letters by so many of its points. */
const alongPoints = 13

function drawAlong(
  pen: Pen,
  { center, radiusPx, start, sweep, outPx: stands, onSlab, at, u }: PlacedAlong,
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
  const out = Math.sign(stands)
  const [near, far] = [7 * out - stands, 5 * out]
  const line = () => ctx.arc(...center, radiusPx, start, start + sweep, sweep < 0)
  if (onSlab) drawRim(pen, line)
  for (const angle of ends) {
    ctx.moveTo(...on(angle, radiusPx + near))
    ctx.lineTo(...on(angle, radiusPx + far))
  }
  ctx.stroke()
  ctx.lineWidth = inks.weight
  ctx.beginPath()
  line()
  ctx.stroke()
  for (const angle of ends) drawDot(pen, on(angle, radiusPx))
  ctx.restore()
  room.spareLine(Array.from({ length: alongPoints }, (_, i) => on(start + (sweep * i) / (alongPoints - 1), radiusPx)))
  room.block(lettersBox({ at, u }, width))
  letter(pen, text, at, { ...style, turnDeg: readingTurn(...u), ground: onSlab ? inks.slab : inks.paper })
}
