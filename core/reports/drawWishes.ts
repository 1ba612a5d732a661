/** What was asked of the joints, on paper: told apart by shape alone, so that a copy in black and white still says it. */
import { type Frame, flatToPage, toPage } from './frame'
import { evenOddContains, type Layer, ringSegments } from './layer'
import type { SheetWish } from './sheetData'
import { closedPath, drawPath, ink, moveLine, openPath, type XY } from './svgPen'

/** Between two marks of a line, and two crosses of an area, pt. */
const markPt = 34
const crossPt = 16
const areaPt = 26

/** The line again in white and wider, so that a hatch or a board under it does not swallow it. */
const onWhite = (d: string, width: number, dash?: string): string =>
  drawPath(d, { stroke: '#FFFFFF', width: width + 2.4 }) +
  drawPath(d, { stroke: ink, width, ...(dash === undefined ? {} : { dash }) })

/** At even steps along a line, the first half a step from its start. */
function stepsAlong(line: readonly XY[], stepPt: number): XY[] {
  return line.slice(1).flatMap(([bx, by], i) => {
    const [ax, ay] = line[i]!
    const count = Math.max(1, Math.round(Math.hypot(bx - ax, by - ay) / stepPt))
    return Array.from({ length: count }, (_, k): XY => {
      const t = (k + 0.5) / count
      return [ax + (bx - ax) * t, ay + (by - ay) * t]
    })
  })
}

const cross = ([x, y]: XY, half: number): string =>
  moveLine([x - half, y - half], [x + half, y + half]) + moveLine([x - half, y + half], [x + half, y - half])

const diamond = ([x, y]: XY): string =>
  closedPath([
    [x - 5, y],
    [x, y - 5],
    [x + 5, y],
    [x, y + 5],
  ])

/** A joint asked for: a thin line with diamonds, readable on the form board it became. */
export const drawRequired = (line: readonly XY[]): string =>
  onWhite(openPath(line), 1) +
  drawPath(stepsAlong(line, markPt).map(diamond).join(''), { fill: ink, stroke: '#FFFFFF', width: 1 })

/** No joint across: a line with crosses. */
export const drawForbiddenLine = (line: readonly XY[]): string =>
  onWhite(openPath(line), 1) +
  onWhite(
    stepsAlong(line, crossPt)
      .map(at => cross(at, 4))
      .join(''),
    1.3,
  )

/** No joint inside: a dotted edge, crosses over the ground. */
export function drawForbiddenArea(ring: readonly XY[]): string {
  const xs = ring.map(([x]) => x)
  const ys = ring.map(([, y]) => y)
  const [x0, y0] = [Math.min(...xs), Math.min(...ys)]
  const [width, height] = [Math.max(...xs) - x0, Math.max(...ys) - y0]
  const [columns, rows] = [Math.max(1, Math.round(width / areaPt)), Math.max(1, Math.round(height / areaPt))]
  const crosses: string[] = []
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const at: XY = [x0 + ((column + 0.5) * width) / columns, y0 + ((row + 0.5) * height) / rows]
      if (evenOddContains([ring], at)) crosses.push(cross(at, 3))
    }
  return onWhite(closedPath(ring), 1.6, '2 3.5') + onWhite(crosses.join(''), 0.9)
}

/** Joints along: a line with a head at either end. */
export function drawDirection([a, b]: readonly [XY, XY]): string {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
  const head = ([x, y]: XY, way: 1 | -1): string =>
    closedPath([
      [x, y],
      [x - way * (12 * ux - 4.5 * uy), y - way * (12 * uy + 4.5 * ux)],
      [x - way * (12 * ux + 4.5 * uy), y - way * (12 * uy - 4.5 * ux)],
    ])
  return onWhite(moveLine(a, b), 1.8) + drawPath(head(b, 1) + head(a, -1), { fill: ink, stroke: '#FFFFFF', width: 0.8 })
}

/** All wishes of the plan. Labels keep off their lines. */
export function drawWishes(wishes: readonly SheetWish[], frame: Frame): Layer {
  const onPage = (line: readonly (readonly [number, number])[]): XY[] => line.map(at => toPage(frame, at))
  return {
    svg: wishes
      .map(wish => {
        if (wish.kind === 'forbiddenArea') return drawForbiddenArea(flatToPage(frame, wish.ring))
        const line = onPage(wish.line)
        if (wish.kind === 'direction') return drawDirection([line[0]!, line[1]!])
        return wish.kind === 'required' ? drawRequired(line) : drawForbiddenLine(line)
      })
      .join(''),
    wishes: [],
    segments: wishes.flatMap(wish => {
      if (wish.kind === 'forbiddenArea') return ringSegments(flatToPage(frame, wish.ring), 40)
      const line = onPage(wish.line)
      return line.slice(1).map((b, i) => ({ a: line[i]!, b, weight: wish.kind === 'direction' ? 160 : 70 }))
    }),
  }
}
