/** The pour with its strips, dose marks and the edge of the shade, for the day sheet. Letters of 14 pt. */
import type { Pt } from '../../../shared/document/primitives'
import { ringBounds } from '../../geometry/bounds'
import { intersectRegions } from '../../geometry/clip'
import { distanceToEdge, flatRegionContains } from '../../geometry/contains'
import type { CurveRegion, Region, Ring } from '../../geometry/curve'
import { flatArea } from '../../geometry/flatArea'
import { flattenRegion, flattenRing } from '../../geometry/flattenRing'
import type { Plan } from '../../plan/plan'
import { nameCorners } from '../../pours/day/doseMarks'
import type { PourDayPlan, StripShape } from '../../pours/day/pourDay'
import { drawHatch, type Hatch } from '../hatch'
import { hourLabel } from '../hourLabel'
import { type Candidate, type LabelBox, type LabelWish, placeLabels } from '../placeLabels'
import {
  closedPath,
  drawCircle,
  drawPath,
  drawRect,
  drawText,
  ink,
  moveLine,
  softInk,
  widthOf,
  type XY,
} from '../svgPen'

export interface MapBox {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

const letterPt = 14
/** By dose: none, light, dense; told in words as well. */
const hatchOf = (doseMin: number): Hatch | null =>
  doseMin === 0 ? null : { kind: 'lines', anglesDeg: [45], spacingPt: doseMin >= 60 ? 4 : 9, widthPt: 0.5 }

/** Paper position of a drawing point. The pour is scaled, not turned: up stays up as on the plan. */
function placeOnPaper(region: CurveRegion, box: MapBox): (p: Pt) => XY {
  const { minX, minY, maxX, maxY } = ringBounds(region.outer)
  const room = 26
  const scale = Math.min((box.width - 2 * room) / (maxX - minX), (box.height - 2 * room) / (maxY - minY))
  const left = box.x + (box.width - scale * (maxX - minX)) / 2
  const top = box.y + (box.height - scale * (maxY - minY)) / 2
  return ([x, y]) => [left + scale * (x - minX), top + scale * (maxY - y)]
}

interface Segment {
  readonly a: XY
  readonly b: XY
}

const segmentsOf = (rings: readonly Ring[]): Segment[] =>
  rings.flatMap(ring => ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length]! })))

const clearOf = (segments: readonly Segment[], p: XY): number =>
  segments.reduce(
    (least, { a, b }) => Math.min(least, distanceToEdge({ edgeId: '', from: a, to: b }, p)),
    Number.POSITIVE_INFINITY,
  )

interface Spot {
  readonly at: XY
  /** To the edge of its strip, pt. */
  readonly clearPt: number
  /** To the middle of its strip, pt. */
  readonly offPt: number
  /** Whether a line of this width below its letter stays inside the strip. */
  readonly hasRoomFor: (widePt: number) => boolean
}

const leastGridPt = 5
const mostSpots = 90
/** Chords for placing letters may be coarse: under an inch off. */
const chordM = 0.02
const badgeR = 12
const lineTall = 16

/** Places inside a strip on the paper, on a grid. */
function spotsOf(shape: StripShape, at: (p: Pt) => XY): Spot[] {
  return shape.regions.flatMap(curves => {
    const [ring, ...holes] = [curves.outer, ...curves.holes].map(own => flattenRing(own, chordM).map(at))
    const region: Region = { ring: ring!, holes }
    const segments = segmentsOf([ring!, ...holes])
    const xs = ring!.map(p => p[0])
    const ys = ring!.map(p => p[1])
    const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
    const gridPt = Math.max(leastGridPt, Math.sqrt(((x1 - x0) * (y1 - y0)) / mostSpots))
    const columns = Math.max(1, Math.floor((x1 - x0) / gridPt))
    const rows = Math.max(1, Math.floor((y1 - y0) / gridPt))
    const spots: Spot[] = []
    for (let row = 0; row < rows; row++)
      for (let column = 0; column < columns; column++) {
        const p: XY = [x0 + ((column + 0.5) * (x1 - x0)) / columns, y0 + ((row + 0.5) * (y1 - y0)) / rows]
        if (!flatRegionContains(region, p)) continue
        spots.push({
          ...{ at: p, clearPt: clearOf(segments, p) },
          offPt: Math.hypot(p[0] - (x0 + x1) / 2, p[1] - (y0 + y1) / 2),
          hasRoomFor: wide =>
            [-wide / 2, wide / 2].every(dx =>
              [badgeR, badgeR + lineTall].every(dy => flatRegionContains(region, [p[0] + dx, p[1] + dy])),
            ),
        })
      }
    return spots
  })
}

const shadeHours = [8, 10, 12, 14, 16]

interface ShadeEdge {
  readonly hour: string
  readonly rings: readonly Ring[]
}

/** Edges of the shade inside the pour at two-hour steps, on paper. */
function shadeEdges(plan: Plan, day: PourDayPlan, region: CurveRegion, at: (p: Pt) => XY): ShadeEdge[] {
  const slabId = plan.pours.find(({ id }) => id === day.pourId)?.slabId
  const flat = flattenRegion(region)
  return plan.shade.shadows
    .filter(shadow => shadow.slabId === slabId)
    .flatMap(shadow => {
      const { label, clockMin } = hourLabel(shadow.ms, plan.site.place.zone, plan.site.units)
      if (clockMin % 60 !== 0 || !shadeHours.includes(clockMin / 60)) return []
      const inside = intersectRegions(shadow.polygons, [flat])
      const share = flatArea(inside) / flatArea([flat])
      // A sliver in a corner, or of light, tells nobody anything.
      if (share < 0.03 || share > 0.97) return []
      return [{ hour: label, rings: inside.map(({ ring }) => ring.map(at)) }]
    })
}

type Mark =
  | { readonly kind: 'strip'; readonly id: string; readonly dose: string; readonly at: XY }
  | { readonly kind: 'corner'; readonly text: string; readonly at: XY }
  | { readonly kind: 'hour'; readonly text: string; readonly at: XY }

export interface DayMap {
  readonly svg: string
  readonly shade: boolean
  /** How doses are written on the strips: none is dosed, in full, or as a number alone. */
  readonly doses: 'none' | 'full' | 'number'
}

export function dayMap(plan: Plan, day: PourDayPlan, box: MapBox): DayMap {
  const pour = plan.pours.find(({ id }) => id === day.pourId)!
  const at = placeOnPaper(pour.region, box)
  const rings = (region: CurveRegion): XY[][] => [region.outer, ...region.holes].map(ring => flattenRing(ring).map(at))
  const outline = rings(pour.region)
  const edges = segmentsOf([pour.region.outer, ...pour.region.holes].map(ring => flattenRing(ring, chordM).map(at)))
  const doseOf = (id: string): number => day.plan.strips.find(strip => strip.id === id)?.doseMin ?? 0
  const shades = shadeEdges(plan, day, pour.region, at)
  const marks = day.doseMarks.flatMap(({ marks: own }) => own.map(mark => at(mark.at)))

  const spots = day.shapes.map(shape => spotsOf(shape, at))
  const widest = spots.map(own => own.reduce((most, { clearPt }) => Math.max(most, clearPt), 0))
  const isNarrow = widest.some(clearPt => clearPt < badgeR + 1)
  const fullWide = widthOf('30 min', letterPt) + 4
  const isDosed = day.shapes.some(({ id }) => doseOf(id) > 0)
  const isFull = day.shapes.every(
    ({ id }, i) => doseOf(id) === 0 || spots[i]!.some(spot => spot.clearPt >= badgeR && spot.hasRoomFor(fullWide)),
  )
  const middle: XY = [box.x + box.width / 2, box.y + box.height / 2]

  const stripWish = (shape: StripShape, i: number): LabelWish<Mark> => {
    const doseMin = doseOf(shape.id)
    const dose = doseMin === 0 ? '' : isFull ? `${doseMin} min` : String(doseMin)
    const wide = isNarrow ? 11 : 2 * badgeR
    const tall = isNarrow ? lineTall : 2 * badgeR
    return {
      candidates: spots[i]!.map(({ at: spot, clearPt, offPt, hasRoomFor }): Candidate<Mark> => {
        const boxes: LabelBox[] = [{ center: spot, width: wide, height: tall }]
        if (dose !== '')
          boxes.push({
            ...{ center: [spot[0], spot[1] + tall / 2 + lineTall / 2], height: lineTall },
            width: Math.max(wide, widthOf(dose, letterPt) + 2),
          })
        // In the middle of the strip, and of the pour, so that the letters of straight strips stand in a row.
        const [ux, uy] = day.direction
        const aside = Math.abs((spot[0] - middle[0]) * uy + (spot[1] - middle[1]) * ux)
        return {
          boxes,
          cost:
            6 * Math.max(0, Math.min(widest[i]!, badgeR + 6) - clearPt) +
            aside +
            0.2 * offPt +
            (dose !== '' && isFull && !hasRoomFor(fullWide) ? 60 : 0),
          place: { kind: 'strip', id: shape.id, dose, at: spot },
        }
      }),
    }
  }
  const cornerWishes = nameCorners(pour.region).map(({ name, at: corner }): LabelWish<Mark> => {
    const [x, y] = at(corner)
    const away = Math.atan2(y - middle[1], x - middle[0])
    return {
      candidates: Array.from({ length: 8 }, (_, turn): Candidate<Mark> => {
        const angle = away + (turn * Math.PI) / 4
        const spot: XY = [x + 14 * Math.cos(angle), y + 14 * Math.sin(angle)]
        return {
          boxes: [{ center: spot, width: 13, height: 15 }],
          cost: 4 * Math.min(turn, 8 - turn),
          place: { kind: 'corner', text: name, at: spot },
        }
      }),
    }
  })
  const hourWishes = shades.map(({ hour, rings: own }): LabelWish<Mark> => {
    const wide = widthOf(hour, letterPt) + 4
    return {
      dropAbove: 900,
      candidates: segmentsOf(own).flatMap(({ a, b }) => {
        const long = Math.hypot(b[0] - a[0], b[1] - a[1])
        const count = Math.min(12, Math.floor(long / 14))
        return Array.from({ length: count }, (_, k): Candidate<Mark> => {
          const t = (k + 0.5) / count
          const spot: XY = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
          return {
            boxes: [{ center: spot, width: wide, height: lineTall }],
            cost: 3 * Math.max(0, 24 - clearOf(edges, spot)),
            place: { kind: 'hour', text: hour, at: spot },
          }
        })
      }),
    }
  })
  const ends = day.shapes.flatMap(shape => shape.ends.map(({ from, to }) => ({ a: at(from), b: at(to) })))
  const placed = placeLabels([...day.shapes.map(stripWish), ...cornerWishes, ...hourWishes], {
    segments: [
      ...edges.map(edge => ({ ...edge, weight: 60 })),
      ...ends.map(end => ({ ...end, weight: 12 })),
      ...shades.flatMap(({ rings: own }) => segmentsOf(own).map(segment => ({ ...segment, weight: 8 }))),
    ],
    boxes: marks.map(center => ({ box: { center, width: 16, height: 16 }, weight: 500 })),
    bounds: { x0: box.x, y0: box.y, x1: box.x + box.width, y1: box.y + box.height },
  }).flatMap(mark => (mark === null ? [] : [mark]))

  const parts: string[] = []
  for (const shape of day.shapes) {
    const hatch = hatchOf(doseOf(shape.id))
    if (hatch) for (const region of shape.regions) parts.push(drawHatch(rings(region), hatch, softInk))
  }
  for (const { rings: own } of shades)
    for (const ring of own) parts.push(drawPath(closedPath(ring), { stroke: softInk, width: 0.8, dash: '5 3' }))
  for (const { a, b } of ends)
    parts.push(drawPath(moveLine(a, b), { stroke: ink, width: 1.2, dash: '1.5 3', cap: 'round' }))
  parts.push(drawPath(outline.map(closedPath).join(''), { stroke: ink, width: 2.2, evenOdd: true }))
  for (const [x, y] of marks)
    parts.push(
      drawPath(`M${x - 6} ${y - 6}L${x + 6} ${y + 6}M${x - 6} ${y + 6}L${x + 6} ${y - 6}`, { stroke: ink, width: 2.4 }),
    )
  const write = (text: string, [x, y]: XY, wide: number, face: 'plan' | 'planBold' | 'name'): string =>
    drawRect(x - wide / 2, y - lineTall / 2, wide, lineTall, { fill: '#fff' }) +
    drawText(text, x, y + 5, { sizePt: letterPt, face, anchor: 'middle' })
  for (const mark of placed) {
    const [x, y] = mark.at
    if (mark.kind === 'corner')
      parts.push(drawText(mark.text, x, y + 5, { sizePt: letterPt, face: 'planBold', anchor: 'middle' }))
    else if (mark.kind === 'hour') parts.push(write(mark.text, mark.at, widthOf(mark.text, letterPt) + 4, 'plan'))
    else {
      if (isNarrow) parts.push(write(mark.id, mark.at, widthOf(mark.id, letterPt, 'name') + 3, 'name'))
      else
        parts.push(
          drawCircle(mark.at, badgeR, { fill: '#fff', stroke: ink, width: 1.4 }),
          drawText(mark.id, x, y + 5, { sizePt: letterPt, face: 'name', anchor: 'middle' }),
        )
      if (mark.dose === '') continue
      const below = y + (isNarrow ? lineTall : badgeR + lineTall / 2 + 1)
      parts.push(write(mark.dose, [x, below], widthOf(mark.dose, letterPt) + 3, 'plan'))
    }
  }
  return { svg: parts.join(''), shade: shades.length > 0, doses: isDosed ? (isFull ? 'full' : 'number') : 'none' }
}
