import polylabel from 'polylabel'
import { ringBounds } from '../../../core/geometry/bounds'
import { centroid } from '../../../core/geometry/centroid'
import { distanceToEdge, regionContains } from '../../../core/geometry/contains'
import type { CurveRegion } from '../../../core/geometry/curve'
import { flattenRing } from '../../../core/geometry/flattenRing'
import type { PlannedJoint, PlannedPour } from '../../../core/plan/plan'
import type { Pt } from '../../../shared/document/primitives'
import { toScreen } from '../camera/camera'
import { around, type LabelRoom } from './labelRoom'
import { letter, letterWidth } from './lettering'
import { inPlan, type Pen, px, weight } from './pen'
import type { Tint } from './pourTints'
import { ringPath } from './ringPath'

export interface PourPlate {
  readonly pour: Pick<PlannedPour, 'id' | 'number' | 'region'>
  readonly tint: Tint
  /** Under the number: area, concrete, day. */
  readonly lines: readonly string[]
  /** Locked ones have a second line inside their edge, poured ones no hatch: done. */
  readonly state: 'locked' | 'poured' | null
}

export type DrawnJoint = Pick<PlannedJoint, 'kind' | 'from' | 'to' | 'locked'>

export interface PoursScene {
  readonly plates: readonly PourPlate[]
  readonly joints: readonly DrawnJoint[]
  readonly selection: readonly string[]
}

const tilePx = 14
const hatches = new Map<string, HTMLCanvasElement>()

/** A hatch of its own per tint, so that a pour is known without its color: lines, dots, lines the other way, level lines. */
function hatchTile(tint: Tint, ink: string, width: number, ratio: number): HTMLCanvasElement {
  const key = `${tint} ${ink} ${width} ${ratio}`
  const made = hatches.get(key)
  if (made) return made
  const canvas = document.createElement('canvas')
  canvas.width = tilePx * ratio
  canvas.height = tilePx * ratio
  const ctx = canvas.getContext('2d')!
  ctx.scale(ratio, ratio)
  ctx.strokeStyle = ink
  ctx.fillStyle = ink
  ctx.lineWidth = width
  ctx.beginPath()
  if (tint === 2) {
    for (const [x, y] of [
      [3.5, 3.5],
      [10.5, 10.5],
    ] as const) {
      ctx.moveTo(x + width, y)
      ctx.arc(x, y, width, 0, 2 * Math.PI)
    }
    ctx.fill()
  } else {
    for (const shift of [-tilePx, 0, tilePx]) {
      const [x0, x1] = tint === 1 ? [shift - 1, shift + tilePx + 1] : [shift + tilePx + 1, shift - 1]
      if (tint === 4) {
        ctx.moveTo(0, tilePx / 2)
        ctx.lineTo(tilePx, tilePx / 2)
      } else {
        ctx.moveTo(x0, -1)
        ctx.lineTo(x1, tilePx + 1)
      }
    }
    ctx.stroke()
  }
  hatches.set(key, canvas)
  return canvas
}

export interface LabelSpot {
  readonly at: Pt
  /** Distance from there to the nearest edge. */
  readonly roomM: number
}

const labelSpots = new WeakMap<CurveRegion, LabelSpot>()

/** How much nearer than the farthest point a name may stand, as a share of the region's shorter side. */
const labelShare = 0.003

/** The point of a region farthest from its edges, as near as a reader could tell: where its name or plate stands. */
export function labelSpot(region: CurveRegion): LabelSpot {
  const known = labelSpots.get(region)
  if (known) return known
  const rings = [region.outer, ...region.holes].map(ring => flattenRing(ring, 0.02).map(([x, y]) => [x, y]))
  const { minX, minY, maxX, maxY } = ringBounds(region.outer)
  const best = polylabel(rings, Math.max(0.05, labelShare * Math.min(maxX - minX, maxY - minY)))
  const spot: LabelSpot = { at: [best[0] ?? 0, best[1] ?? 0], roomM: best.distance }
  labelSpots.set(region, spot)
  return spot
}

/** The middle of the area, where there is as much room as a share of the most there is. */
function middleSpot(region: CurveRegion, leastShare: number): LabelSpot {
  const roomiest = labelSpot(region)
  const middle = centroid([region])
  if (!middle || !regionContains(region, middle)) return roomiest
  const roomM = roomAt(region, middle)
  return roomM >= leastShare * roomiest.roomM ? { at: middle, roomM } : roomiest
}

/** As `labelSpot`, but in the middle of the area where there is about as much room: a long name has its room sideways. */
export const nameSpot = (region: CurveRegion): LabelSpot => middleSpot(region, 0.85)

const plateSpots = new WeakMap<CurveRegion, LabelSpot>()

/** As `labelSpot`, but in the middle of the area where that has no less room to speak of: lanes have theirs in a row. */
export function plateSpot(region: CurveRegion): LabelSpot {
  const known = plateSpots.get(region) ?? middleSpot(region, 0.98)
  plateSpots.set(region, known)
  return known
}

/** Distance from a point to the nearest edge of a region, exact on arcs. */
export const roomAt = (region: CurveRegion, at: Pt): number =>
  [region.outer, ...region.holes].reduce(
    (least, ring) => ring.reduce((near, edge) => Math.min(near, distanceToEdge(edge, at)), least),
    Infinity,
  )

export function drawPours(pen: Pen, { plates, selection }: Pick<PoursScene, 'plates' | 'selection'>): void {
  const { ctx, inks } = pen
  const ratio = window.devicePixelRatio || 1
  plates.forEach(({ pour, tint, state }) => {
    const isSelected = selection.includes(pour.id)
    inPlan(pen, () => {
      const path = new Path2D()
      for (const ring of [pour.region.outer, ...pour.region.holes]) path.addPath(ringPath(ring))
      ctx.globalAlpha = 0.82
      ctx.fillStyle = inks[`p${tint}`]
      ctx.fill(path, 'evenodd')
      ctx.globalAlpha = 0.62
      const hatch = ctx.createPattern(hatchTile(tint, inks[`p${tint}-ink`], 1.1 * inks.weight, ratio), 'repeat')
      if (hatch && state !== 'poured') {
        hatch.setTransform(new DOMMatrix().scaleSelf(px(pen, 1 / ratio), -px(pen, 1 / ratio)))
        ctx.fillStyle = hatch
        ctx.fill(path, 'evenodd')
      }
      ctx.globalAlpha = 1
      if (state !== null) {
        ctx.save()
        ctx.clip(path, 'evenodd')
        ctx.strokeStyle = inks[`p${tint}-ink`]
        ctx.setLineDash(state === 'locked' ? [weight(pen, 9), weight(pen, 5)] : [])
        ctx.lineWidth = weight(pen, 9)
        ctx.stroke(path)
        ctx.restore()
      }
      if (isSelected) {
        ctx.strokeStyle = inks[`p${tint}-ink`]
        ctx.lineWidth = weight(pen, 3)
        ctx.stroke(path)
      }
    })
  })
}

/** Over the edges of the slab: form boards, and a plate on every pour. */
export function drawPlates(pen: Pen, { plates, joints, selection }: PoursScene, room: LabelRoom): void {
  for (const joint of joints) if (joint.kind === 'construction') drawHeader(pen, joint)
  for (const plate of plates) drawPlate(pen, plate, selection.includes(plate.pour.id), room)
}

/** A construction joint as the form board that makes it, stakes along it. */
function drawHeader(pen: Pen, { from, to, locked }: DrawnJoint): void {
  const { ctx, inks, camera } = pen
  const [a, b] = [toScreen(camera, from), toScreen(camera, to)]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (length < 1) return
  ctx.save()
  ctx.translate(a[0], a[1])
  ctx.rotate(Math.atan2(b[1] - a[1], b[0] - a[0]))
  // A locked joint is a board painted all over.
  ctx.fillStyle = locked ? inks.header : inks['header-fill']
  ctx.strokeStyle = inks.header
  ctx.lineWidth = 1.2 * inks.weight
  ctx.fillRect(0, -2.5, length, 5)
  ctx.strokeRect(0, -2.5, length, 5)
  ctx.fillStyle = inks.header
  const stakes = Math.max(1, Math.round(length / 34))
  for (let i = 0; i < stakes; i++) {
    const x = ((i + 0.5) * length) / stakes
    ctx.beginPath()
    ctx.moveTo(x - 3, 2.5)
    ctx.lineTo(x + 3, 2.5)
    ctx.lineTo(x, 9)
    ctx.fill()
  }
  ctx.restore()
}

/** The number of a pour beside its lines. */
const largePx = 36

/** All lines where the pour has room for them, else the area, else the number alone, as small as it must be. */
function drawPlate(
  pen: Pen,
  { pour, tint, lines: usual, state }: PourPlate,
  isSelected: boolean,
  room: LabelRoom,
): void {
  const { ctx, inks, camera } = pen
  const { at, roomM } = plateSpot(pour.region)
  const [x, y] = toScreen(camera, at)
  const across = 2 * roomM * camera.zoom
  const ink = inks[`p${tint}-ink`]
  const scale = inks.letterScale
  const lines = state === null ? usual : [usual[0] ?? '', state, ...usual.slice(1)]
  const lead = { sizePx: 16, weight: 700, align: 'left' } as const
  const rest = { sizePx: 13, weight: 500, align: 'left', ink: inks['ink-2'] } as const
  const widest = (texts: readonly string[]): number =>
    texts.reduce((most, text, i) => Math.max(most, letterWidth(pen, text, i === 0 ? lead : rest)), 0)
  const large = letterWidth(pen, pour.number, { sizePx: largePx, weight: 700, face: 'slab', ink })
  // A plate wider than the room around its middle would touch the outline, or cover the next pour's.
  const fits = (texts: readonly string[]): boolean => widest(texts) + large + largePx <= 1.05 * across
  const area = lines.slice(0, 1)
  const shown = across > 110 && fits(lines) ? lines : across > 84 && fits(area) ? area : []
  const numberPx = shown.length > 0 ? largePx : Math.max(13, Math.min(24, across * 0.5))
  const numberStyle = { sizePx: numberPx, weight: 700, face: 'slab', ink } as const
  const numberWidth = letterWidth(pen, pour.number, numberStyle)
  const textWidth = widest(shown)
  const lineHeight = 16 * scale
  const inset = numberPx / 3
  const height = Math.max(numberPx * 1.22 * scale, shown.length * lineHeight + 14)
  const width = numberWidth + (shown.length > 0 ? textWidth + inset : 0) + 2 * inset
  room.block(around([x, y], width, height))
  ctx.fillStyle = inks.raised
  ctx.strokeStyle = ink
  ctx.lineWidth = (isSelected ? 3 : 1.5) * inks.weight
  ctx.fillRect(x - width / 2, y - height / 2, width, height)
  ctx.strokeRect(x - width / 2, y - height / 2, width, height)
  letter(pen, pour.number, [x - width / 2 + inset + numberWidth / 2, y + 1], numberStyle)
  shown.forEach((text, i) => {
    letter(
      pen,
      text,
      [x - width / 2 + 2 * inset + numberWidth, y + (i - (shown.length - 1) / 2) * lineHeight],
      i === 0 ? lead : rest,
    )
  })
}
