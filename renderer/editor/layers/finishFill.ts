/** A finish as a canvas fill: its pattern to scale, or the plain tint when the joints would run together. */
import type { Finish } from '../../../shared/document/materials'
import { type PatternTile, patternTile } from './finishPattern'
import type { Pen } from './pen'

const largestTilePx = 512
/** Joints nearer than this on the screen are noise. */
const leastJointPx = 4

export interface FinishInks {
  readonly ground: string
  readonly joint: string
  /** How far stones differ in tone, 0 … 1. */
  readonly tone: number
}

const drawn = new Map<string, HTMLCanvasElement>()

/** Zooming by less than this keeps the tile: it is scaled. */
const zoomStep = Math.SQRT2

function drawTile(tile: PatternTile, pixelsPerMeter: number, inks: FinishInks): HTMLCanvasElement {
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(tile.widthM * pixelsPerMeter))
  canvas.height = Math.max(1, Math.round(tile.heightM * pixelsPerMeter))
  const ctx = canvas.getContext('2d')!
  ctx.fillStyle = inks.ground
  ctx.fillRect(0, 0, canvas.width, canvas.height)
  ctx.setTransform(canvas.width / tile.widthM, 0, 0, canvas.height / tile.heightM, 0, 0)
  for (const { points, tone } of tile.stones) {
    ctx.beginPath()
    for (const [x, y] of points) ctx.lineTo(x, y)
    ctx.closePath()
    if (inks.tone > 0) {
      ctx.fillStyle = tone < 0 ? '#000' : '#fff'
      ctx.globalAlpha = Math.abs(tone) * inks.tone
      ctx.fill()
      ctx.globalAlpha = 1
    }
    ctx.strokeStyle = inks.joint
    ctx.lineWidth = 1.2 / pixelsPerMeter
    ctx.stroke()
  }
  return canvas
}

/** To be used inside `inPlan`: the pattern lies still on the plan. */
export function finishFill(pen: Pen, finish: Finish | undefined, inks: FinishInks): string | CanvasPattern {
  const tile = finish && patternTile(finish.pattern)
  const { zoom } = pen.camera
  if (!tile || tile.jointM * zoom < leastJointPx) return inks.ground
  const ratio = window.devicePixelRatio || 1
  const wished = zoomStep ** Math.round(Math.log(zoom * ratio) / Math.log(zoomStep))
  const most = largestTilePx / Math.max(tile.widthM, tile.heightM)
  const pixelsPerMeter = Math.min(wished, most)
  const key = [finish.pattern, pixelsPerMeter.toFixed(2), inks.ground, inks.joint, inks.tone].join(' ')
  let canvas = drawn.get(key)
  if (!canvas) {
    if (drawn.size > 40) drawn.clear()
    canvas = drawTile(tile, pixelsPerMeter, inks)
    drawn.set(key, canvas)
  }
  const pattern = pen.ctx.createPattern(canvas, 'repeat')
  if (!pattern) return inks.ground
  pattern.setTransform(
    new DOMMatrix()
      .rotateSelf(finish.patternDeg ?? 0)
      .scaleSelf(tile.widthM / canvas.width, tile.heightM / canvas.height),
  )
  return pattern
}
