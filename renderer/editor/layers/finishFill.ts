/** A finish on the canvas: its pattern to scale, or the plain tint when the joints would run together. */
import type { CurveRegion } from '../../../core/geometry/curve'
import { type PatternTile, patternTile, type Stone } from '../../../core/reports/pattern/finishPattern'
import { layOf, stonesOver } from '../../../core/reports/pattern/patternStones'
import { stoneTint, tint } from '../../../core/reports/pattern/tones'
import type { Finish } from '../../../shared/document/materials'
import { toPlan } from '../camera/camera'
import { type Pen, px, weight } from './pen'
import { regionsPath } from './ringPath'

const largestTilePx = 512
/** Joints nearer than this on the screen are noise. */
const leastJointPx = 4
/** Tones without a line between them may run together. */
const leastTonePx = 0.5

export interface FinishInks {
  readonly ground: string
  readonly joint: string
  /** How far stones differ in tone, 0 … 1. */
  readonly tone: number
}

const drawn = new Map<string, HTMLCanvasElement>()

/** Zooming by less than this keeps the tile: it is scaled. */
const zoomStep = Math.SQRT2

/** How far tones may go where no joint parts them. */
const softTone = 0.05

function drawStones(
  ctx: CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D,
  stones: readonly Stone[],
  { joint, tone }: FinishInks,
  { jointed, line }: { readonly jointed: boolean; readonly line: number },
): void {
  const share = jointed ? tone : Math.max(softTone, tone / 2)
  for (const stone of stones) {
    ctx.beginPath()
    for (const [x, y] of stone.points) ctx.lineTo(x, y)
    ctx.closePath()
    if (share > 0) {
      const each = stoneTint(stone.tone, share)
      ctx.fillStyle = each < 0 ? '#000' : '#fff'
      ctx.globalAlpha = Math.abs(each)
      ctx.fill()
      ctx.globalAlpha = 1
    }
    if (!jointed) continue
    ctx.strokeStyle = joint
    ctx.lineWidth = line
    ctx.stroke()
  }
}

function drawTile(tile: PatternTile, pixelsPerMeter: number, inks: FinishInks): HTMLCanvasElement {
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(tile.widthM * pixelsPerMeter))
  canvas.height = Math.max(1, Math.round(tile.heightM * pixelsPerMeter))
  const ctx = canvas.getContext('2d')!
  ctx.fillStyle = inks.ground
  ctx.fillRect(0, 0, canvas.width, canvas.height)
  ctx.setTransform(canvas.width / tile.widthM, 0, 0, canvas.height / tile.heightM, 0, 0)
  drawStones(ctx, tile.stones, inks, { jointed: tile.jointed, line: 1.2 / pixelsPerMeter })
  return canvas
}

/** To be used inside `inPlan`: the pattern lies still on the plan. */
function tileFill(pen: Pen, finish: Finish, tile: PatternTile, pixelsPerMeter: number, inks: FinishInks) {
  const key = [finish.pattern, pixelsPerMeter.toFixed(2), inks.ground, inks.joint, inks.tone].join(' ')
  let canvas = drawn.get(key)
  if (!canvas) {
    if (drawn.size > 40) drawn.clear()
    canvas = drawTile(tile, pixelsPerMeter, inks)
    drawn.set(key, canvas)
  }
  const pattern = pen.ctx.createPattern(canvas, 'repeat')
  if (!pattern) return inks.ground
  const { at, deg } = layOf(finish)
  pattern.setTransform(
    new DOMMatrix()
      .translateSelf(at[0], at[1])
      .rotateSelf(deg)
      .scaleSelf(tile.widthM / canvas.width, tile.heightM / canvas.height),
  )
  return pattern
}

/** Fills what a finish covers, inside `inPlan`. Nearer than a tile holds, the stones in view are drawn themselves. */
export function fillFinish(
  pen: Pen,
  shape: readonly CurveRegion[],
  finish: Finish | undefined,
  inks: FinishInks,
): void {
  const { ctx, camera, size } = pen
  const path = regionsPath(shape)
  const tile = finish && patternTile(finish.pattern)
  ctx.fillStyle = inks.ground
  if (!finish || !tile || tile.jointM * camera.zoom < (tile.jointed ? leastJointPx : leastTonePx)) {
    ctx.fill(path, 'evenodd')
    return
  }
  const ratio = window.devicePixelRatio || 1
  const wished = zoomStep ** Math.round(Math.log(camera.zoom * ratio) / Math.log(zoomStep))
  if (wished <= largestTilePx / Math.max(tile.widthM, tile.heightM)) {
    ctx.fillStyle = tileFill(pen, finish, tile, wished, inks)
    ctx.fill(path, 'evenodd')
    return
  }
  ctx.fill(path, 'evenodd')
  const [minX, maxY] = toPlan(camera, [0, 0])
  const [maxX, minY] = toPlan(camera, [size.width, size.height])
  ctx.save()
  ctx.clip(path, 'evenodd')
  drawStones(ctx, stonesOver(tile, finish, { minX, minY, maxX, maxY }), inks, {
    jointed: tile.jointed,
    line: px(pen, 1.2),
  })
  ctx.restore()
}

/** Courses of a border inside `inPlan`, each with its tone; a later one lies over an earlier one. */
export function fillCourses(
  pen: Pen,
  shape: readonly CurveRegion[],
  stones: readonly Stone[],
  { ground, joint, tone }: FinishInks,
): void {
  const { ctx } = pen
  ctx.fillStyle = ground
  ctx.fill(regionsPath(shape), 'evenodd')
  ctx.save()
  ctx.clip(regionsPath(shape), 'evenodd')
  ctx.strokeStyle = joint
  ctx.lineWidth = weight(pen, 0.8)
  for (const stone of stones) {
    ctx.beginPath()
    for (const [x, y] of stone.points) ctx.lineTo(x, y)
    ctx.closePath()
    ctx.fillStyle = tint(ground, stoneTint(stone.tone, tone))
    ctx.fill()
    ctx.stroke()
  }
  ctx.restore()
}
