import type { CurveRing } from '../geometry/curve'
import type { Measures } from '../units/measures'
import { type ArcDimension, arcWords, type LineDimension, outlineDimensions } from './dimensions'
import { type Frame, flatToPage, toPage } from './frame'
import {
  boxPointsInside,
  type DrawLabel,
  drawGround,
  drawTag,
  evenOddContains,
  type Layer,
  planLetterPt,
  readingDeg,
  tagBox,
} from './layer'
import type { Candidate, LabelBox, LabelWish } from './placeLabels'
import { drawCircle, drawPath, drawRect, moveLine, softInk, type XY } from './svgPen'

/** Distances of the dimension line from the edge, in points; the nearest free one is taken. */
const offsetsPt = [24, 44, 64]
/** Room that dimensions need around a drawing. */
export const dimensionMarginPt = 58
const shortestPt = 16
/** Extension lines begin so far off the edge, and end so far beyond the dimension line. */
const extensionFromPt = 5
const extensionPastPt = 6

const along = (a: XY, b: XY, t: number): XY => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]
/** What a place costs for each of the eight points of its letters that lie on a crown, or on steps. */
const letterOverPt = { crowns: 25, steps: 50, neighbors: 60 } as const
/** Half of a line over crowns, steps or another slab costs a little more than the other side of its edge. */
const lineOverMost = 460

/** What stands on the page where dimensions are rather not. */
export interface DimensionObstacles {
  readonly crowns: readonly XY[][]
  /** The corners of each flight of steps. */
  readonly steps: readonly XY[][]
}

type Ground = DimensionObstacles & {
  /** The other slabs. */
  readonly neighbors: readonly XY[][]
}

function overObstacles({ boxes }: Candidate<DrawLabel>, { crowns, steps, neighbors }: Ground): number {
  const letters = (rings: readonly XY[][], each: number): number =>
    rings.reduce((sum, ring) => sum + each * boxPointsInside(boxes[0]!, [ring]), 0)
  const line = boxes.find(box => box.line && !box.thin)
  const all = [...crowns, ...steps, ...neighbors]
  const covered = line ? alongBox(line).filter(at => all.some(ring => evenOddContains([ring], at))) : []
  const share = covered.length / lineSamples
  return (
    letters(crowns, letterOverPt.crowns) +
    letters(steps, letterOverPt.steps) +
    letters(neighbors, letterOverPt.neighbors) +
    lineOverMost * Math.min(1, 2 * share)
  )
}

const lineSamples = 24

/** Points along the middle of a turned box. */
function alongBox({ center, width, turnDeg = 0 }: LabelBox): readonly XY[] {
  const a = (-turnDeg * Math.PI) / 180
  return Array.from({ length: lineSamples }, (_, i): XY => {
    const t = width * ((i + 0.5) / lineSamples - 0.5)
    return [center[0] + t * Math.cos(a), center[1] + t * Math.sin(a)]
  })
}
const shift = (p: XY, n: XY, d: number): XY => [p[0] + n[0] * d, p[1] + n[1] * d]

/** Letters too wide for their line stand beside it, or in its line beyond one of its ends. */
const beyondEnds = (lettersPt: number, linePt: number): readonly number[] => {
  const beyond = (lettersPt / 2 + beyondGapPt) / linePt
  return [-beyond, 1 + beyond]
}
const beyondGapPt = 8
const beyondCost = 40

function lineWish(dimension: LineDimension, frame: Frame, measures: Measures): LabelWish<DrawLabel> | undefined {
  const [a, b] = [toPage(frame, dimension.from), toPage(frame, dimension.to)]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (length < shortestPt) return undefined
  const d: XY = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
  const out: XY = [-d[1], d[0]]
  const text = measures.length(dimension.lengthM)
  const turnDeg = readingDeg(a, b)
  const label = tagBox(text, a, planLetterPt, 'planBold', turnDeg)
  const inLine = label.width + 14 <= length
  const candidates: Candidate<DrawLabel>[] = []
  for (const side of [1, -1] as const)
    for (const [level, offset] of offsetsPt.entries())
      for (const t of inLine ? [0.5, 0.36, 0.64] : [0.5, ...beyondEnds(label.width, length)]) {
        const n: XY = [out[0] * side, out[1] * side]
        const [p, q] = [shift(a, n, offset), shift(b, n, offset)]
        const middle = along(p, q, t)
        const isBeyond = t < 0 || t > 1
        const center = inLine || isBeyond ? middle : shift(middle, n, label.height / 2 + 5)
        const box: LabelBox = { ...label, center }
        const line: LabelBox = { center: along(p, q, 0.5), width: length - 4, height: 7, turnDeg, line: true }
        const extensions = [a, b].map(
          (end): LabelBox => ({
            center: shift(end, n, (extensionFromPt + offset + extensionPastPt) / 2),
            width: 3,
            height: offset + extensionPastPt - extensionFromPt,
            turnDeg,
            line: true,
            thin: true,
          }),
        )
        candidates.push({
          boxes: [box, line, ...extensions],
          cost: (side === 1 ? 0 : 420) + level * 25 + (isBeyond ? beyondCost : Math.abs(t - 0.5) * 20),
          place: () => drawLineDimension(text, a, b, n, offset, box, inLine, side < 0),
        })
      }
  return { candidates, dropAbove: 900 }
}

function drawLineDimension(
  text: string,
  a: XY,
  b: XY,
  n: XY,
  offset: number,
  box: LabelBox,
  inLine: boolean,
  onSlab: boolean,
): string {
  const [p, q] = [shift(a, n, offset), shift(b, n, offset)]
  const length = Math.hypot(q[0] - p[0], q[1] - p[1])
  const d: XY = [(q[0] - p[0]) / length, (q[1] - p[1]) / length]
  const extension = [a, b]
    .map(end => moveLine(shift(end, n, extensionFromPt), shift(end, n, offset + extensionPastPt)))
    .join('')
  const half = box.width / 2 / length
  const t = ((box.center[0] - p[0]) * d[0] + (box.center[1] - p[1]) * d[1]) / length
  const line = inLine
    ? moveLine(p, along(p, q, t - half)) + moveLine(along(p, q, t + half), q)
    : // A line whose letters stand beyond an end runs on to them.
      moveLine(t < 0 ? along(p, q, t + half) : p, t > 1 ? along(p, q, t - half) : q)
  const ticks = [p, q].map(end => moveLine(shift(end, n, -6), shift(end, n, 6))).join('')
  return (
    // A pale rim, so that a pattern does not run into the line.
    (onSlab ? drawPath(line, { stroke: '#FFFFFF', width: 2.6 }) : '') +
    drawPath(extension, { stroke: softInk, width: 0.5 }) +
    drawPath(line, { stroke: softInk, width: 0.9 }) +
    drawPath(ticks, { stroke: softInk, width: 1.1 }) +
    [p, q].map(end => drawCircle(end, 2.2, { fill: softInk })).join('') +
    drawGround(box) +
    drawTag(text, box, { sizePt: planLetterPt, face: 'planBold' })
  )
}

function arcWish(dimension: ArcDimension, frame: Frame, measures: Measures): LabelWish<DrawLabel> | undefined {
  if (dimension.radiusM * frame.ptPerM < 12 || dimension.lengthM * frame.ptPerM < shortestPt) return undefined
  const text = arcWords(measures, dimension)
  const candidates: Candidate<DrawLabel>[] = []
  const base = Math.atan2(dimension.middle[1] - dimension.center[1], dimension.middle[0] - dimension.center[0])
  const reach = Math.min(dimension.lengthM / dimension.radiusM / 2, Math.PI) * 0.8
  for (const share of [0, 0.4, -0.4, 0.75, -0.75])
    for (const distance of [16, 30, 46]) {
      const angle = base + share * reach
      const out = dimension.outward[0] * Math.cos(base) + dimension.outward[1] * Math.sin(base) > 0 ? 1 : -1
      const rayX = Math.cos(angle)
      const rayY = Math.sin(angle)
      const foot = toPage(frame, [
        dimension.center[0] + dimension.radiusM * rayX,
        dimension.center[1] + dimension.radiusM * rayY,
      ])
      const box = tagBox(text, [0, 0], planLetterPt, 'planBold')
      const away = distance + Math.abs(rayX) * (box.width / 2 - 8)
      const center: XY = [foot[0] + out * rayX * away, foot[1] - out * rayY * away]
      const placed = { ...box, center }
      candidates.push({
        boxes: [placed],
        cost: distance * 0.6 + Math.abs(share) * 15,
        place: () => {
          const tip = foot
          const stop: XY = [foot[0] + out * rayX * (distance - 8), foot[1] - out * rayY * (distance - 8)]
          return (
            drawPath(moveLine(tip, stop), { stroke: softInk, width: 0.9 }) +
            drawCircle(tip, 2.2, { fill: softInk }) +
            drawRect(center[0] - placed.width / 2, center[1] - placed.height / 2, placed.width, placed.height, {
              fill: '#FFFFFF',
              fillOpacity: 0.85,
            }) +
            drawTag(text, placed, { sizePt: planLetterPt, face: 'planBold' })
          )
        },
      })
    }
  return { candidates, dropAbove: 400 }
}

/**
 * Dimensions of the outlines; arcs by radius; what is too short on paper is left out. A place costs the more, the more
 * of it lies on `obstacles` and on the other outlines.
 */
export function drawDimensions(
  outlines: readonly CurveRing[],
  frame: Frame,
  measures: Measures,
  obstacles: DimensionObstacles,
): Layer {
  const flat = outlines.map(outline => flatToPage(frame, outline))
  const wishes = outlines.flatMap((outline, own) => {
    const ground: Ground = { ...obstacles, neighbors: flat.filter((_, other) => other !== own) }
    return outlineDimensions(outline).flatMap(dimension => {
      const wish =
        dimension.kind === 'line' ? lineWish(dimension, frame, measures) : arcWish(dimension, frame, measures)
      if (wish === undefined) return []
      const candidates = wish.candidates.map(each => ({ ...each, cost: each.cost + overObstacles(each, ground) }))
      return [{ ...wish, candidates }]
    })
  })
  return { svg: '', wishes, segments: [] }
}
