/** One layer of the plan: what is drawn at once, and the labels that still seek a place. */
import { pointBounds } from '../geometry/bounds'
import type { LabelBox, LabelWish, Obstacles } from './placeLabels'
import { drawRect, drawText, type TextStyle, widthOf, type XY } from './svgPen'

export type DrawLabel = () => string

export interface Layer {
  readonly svg: string
  readonly wishes: readonly LabelWish<DrawLabel>[]
  readonly segments: Obstacles['segments']
}

export interface PageRect {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** Plan lettering: never under 14 pt on paper, it is read standing. */
export const planLetterPt = 14

export const ringSegments = (ring: readonly XY[], weight: number): { a: XY; b: XY; weight: number }[] =>
  ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length]!, weight }))

export const evenOddContains = (rings: readonly (readonly XY[])[], [x, y]: XY): boolean => {
  let inside = false
  for (const ring of rings) {
    let [px, py] = ring.at(-1) ?? [0, 0]
    for (const [qx, qy] of ring) {
      if (py > y !== qy > y && x < px + ((y - py) / (qy - py)) * (qx - px)) inside = !inside
      px = qx
      py = qy
    }
  }
  return inside
}

/** The part of a box's border (corners and middles) that lies inside the rings, 0 to 8. */
export function boxPointsInside(box: LabelBox, rings: readonly (readonly XY[])[]): number {
  const [cx, cy] = box.center
  const [w, h] = [box.width / 2, box.height / 2]
  let inside = 0
  for (const sx of [-1, 0, 1])
    for (const sy of [-1, 0, 1])
      if ((sx !== 0 || sy !== 0) && evenOddContains(rings, [cx + sx * w, cy + sy * h])) inside++
  return inside
}

/** Points of a grid over the part of a shape that lies in the window, with the distance from its middle. */
export function pointsInside(
  rings: readonly (readonly XY[])[],
  window: PageRect,
  across: number,
): { at: XY; fromMiddlePt: number }[] {
  const box = pointBounds(rings.flat())
  const [x0, y0] = [Math.max(box.minX, window.x), Math.max(box.minY, window.y)]
  const [x1, y1] = [Math.min(box.maxX, window.x + window.width), Math.min(box.maxY, window.y + window.height)]
  const points: XY[] = []
  if (x0 >= x1 || y0 >= y1) return []
  for (let i = 1; i < across; i++)
    for (let j = 1; j < across; j++) {
      const at: XY = [x0 + ((x1 - x0) * i) / across, y0 + ((y1 - y0) * j) / across]
      if (evenOddContains(rings, at)) points.push(at)
    }
  const mx = points.reduce((s, p) => s + p[0], 0) / points.length
  const my = points.reduce((s, p) => s + p[1], 0) / points.length
  return points.map(at => ({ at, fromMiddlePt: Math.hypot(at[0] - mx, at[1] - my) }))
}

/** Text centered in its box, on the ground color. `turnDeg` as in the box. */
export function drawTag(text: string, box: LabelBox, style: TextStyle): string {
  const turn = box.turnDeg ?? 0
  const a = (turn * Math.PI) / 180
  const drop = style.sizePt * 0.35
  const [x, y] = [box.center[0] + drop * Math.sin(a), box.center[1] + drop * Math.cos(a)]
  return drawText(text, x, y, { ...style, anchor: 'middle', turnDeg: turn })
}

/** A white ground under a label, so that lines behind it do not cross its letters. */
export function drawGround(box: LabelBox): string {
  const [cx, cy] = box.center
  const turn = box.turnDeg ?? 0
  const rect = drawRect(cx - box.width / 2, cy - box.height / 2, box.width, box.height, {
    fill: '#FFFFFF',
    fillOpacity: 0.88,
  })
  return Math.abs(turn) < 1e-9 ? rect : `<g transform="rotate(${-turn} ${cx.toFixed(3)} ${cy.toFixed(3)})">${rect}</g>`
}

export const tagBox = (text: string, center: XY, sizePt: number, face: 'plan' | 'planBold', turnDeg = 0): LabelBox => ({
  center,
  width: widthOf(text, sizePt, face) + 6,
  height: sizePt + 3,
  turnDeg,
})

/** The angle of a line's lettering: read from below or from the right. */
export function readingDeg(a: XY, b: XY): number {
  let deg = (Math.atan2(a[1] - b[1], b[0] - a[0]) * 180) / Math.PI
  if (deg > 90 + 1e-6) deg -= 180
  if (deg <= -90 + 1e-6) deg += 180
  return Math.abs(deg) < 1e-6 ? 0 : Number(deg.toFixed(3))
}
