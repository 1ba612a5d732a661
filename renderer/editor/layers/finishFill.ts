/** A finish on the canvas: its pattern to scale, or the plain tint when the joints would run together. */
import type { CurveRegion } from '../../../core/geometry/curve'
import { type PatternTile, patternTile, type Stone } from '../../../core/reports/pattern/finishPattern'
import { layOf, stonesOver } from '../../../core/reports/pattern/patternStones'
import { stoneTint, tint } from '../../../core/reports/pattern/tones'
import type { Finish } from '../../../shared/document/materials'
import { toPlan } from '../camera/camera'
import { type Pen, weight } from './pen'
import { regionsPath } from './ringPath'

const largestTilePx = 512
/** Joints nearer than this on the screen are noise. */
const leastJointPx = 1.6
/** From here on joints are drawn in full; the nearer they are, the paler. */
const fullJointPx = 6
/** Tones without a line between them may run together. */
const leastTonePx = 0.5
/** A stamped joint, about 3/8 in wide; common practice, no source. */
const jointWidthM = 0.0095
/** No joint takes more of a stone than this. */
const mostJointShare = 0.16

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
/** Stains are this much fainter than the tones of stones. */
const stainShare = 0.26

type Canvas = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D

function trace(ctx: Canvas, points: Stone['points']): void {
  ctx.beginPath()
  for (const [x, y] of points) ctx.lineTo(x, y)
  ctx.closePath()
}

/** Patches that only lighten or darken what lies under them. */
function drawTones(ctx: Canvas, patches: readonly Stone[], share: number): void {
  for (const { points, tone } of patches) {
    trace(ctx, points)
    const each = stoneTint(tone, share)
    ctx.fillStyle = each < 0 ? '#000' : '#fff'
    ctx.globalAlpha = Math.abs(each)
    ctx.fill()
  }
  ctx.globalAlpha = 1
}

interface Looked {
  readonly inks: FinishInks
  readonly pixelsPerMeter: number
}

/** Stones with joints around them, on a ground of their own color. `pixelsPerMeter` is the scale they are looked at in. */
function drawJointed(
  ctx: Canvas,
  stones: readonly Stone[],
  stains: readonly Stone[],
  { jointM }: PatternTile,
  { inks: { ground, joint, tone }, pixelsPerMeter }: Looked,
): void {
  const seen = Math.min(1, (jointM * pixelsPerMeter) / fullJointPx)
  ctx.globalAlpha = seen
  ctx.fillStyle = joint
  // Where corners are worn round the joint widens.
  for (const { points, face } of stones) {
    if (face === undefined) continue
    trace(ctx, points)
    ctx.fill()
  }
  ctx.globalAlpha = 1
  for (const { points, face, tone: own } of stones) {
    if (face === undefined && tone === 0) continue
    trace(ctx, face ?? points)
    ctx.fillStyle = tone === 0 ? ground : tint(ground, stoneTint(own, tone))
    ctx.fill()
  }
  if (tone > 0) drawTones(ctx, stains, tone * stainShare)
  ctx.globalAlpha = seen
  ctx.strokeStyle = joint
  ctx.lineWidth = Math.min(Math.max(1.1 / pixelsPerMeter, jointWidthM), jointM * mostJointShare)
  ctx.beginPath()
  for (const { points, face } of stones) {
    const outline = face ?? points
    ctx.moveTo(outline[0]![0], outline[0]![1])
    for (const [x, y] of outline) ctx.lineTo(x, y)
    ctx.closePath()
  }
  ctx.stroke()
  ctx.globalAlpha = 1
}

function drawTile(tile: PatternTile, pixelsPerMeter: number, inks: FinishInks): HTMLCanvasElement {
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(tile.widthM * pixelsPerMeter))
  canvas.height = Math.max(1, Math.round(tile.heightM * pixelsPerMeter))
  const ctx = canvas.getContext('2d')!
  ctx.fillStyle = inks.ground
  ctx.fillRect(0, 0, canvas.width, canvas.height)
  ctx.setTransform(canvas.width / tile.widthM, 0, 0, canvas.height / tile.heightM, 0, 0)
  if (tile.stains) drawJointed(ctx, tile.stones, tile.stains.stones, tile, { inks, pixelsPerMeter })
  else drawTones(ctx, tile.stones, softOf(inks))
  return canvas
}

const softOf = ({ tone }: FinishInks): number => Math.max(softTone, tone / 2)

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
  const inView = (each: PatternTile) => stonesOver(each, finish, { minX, minY, maxX, maxY })
  ctx.save()
  ctx.clip(path, 'evenodd')
  if (tile.stains) {
    const stains = inks.tone > 0 ? inView(tile.stains) : []
    drawJointed(ctx, inView(tile), stains, tile, { inks, pixelsPerMeter: camera.zoom })
  } else drawTones(ctx, inView(tile), softOf(inks))
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
  ctx.lineWidth = Math.max(weight(pen, 0.8), jointWidthM)
  for (const stone of stones) {
    trace(ctx, stone.points)
    ctx.fillStyle = tint(ground, stoneTint(stone.tone, tone))
    ctx.fill()
    ctx.stroke()
  }
  ctx.restore()
}
