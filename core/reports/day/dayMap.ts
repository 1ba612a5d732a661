/** The pour with its strips, dose marks and the edge of the shade, for the day sheet. Letters of 14 pt. */
import type { Pt } from '../../../shared/document/primitives'
import { ringBounds } from '../../geometry/bounds'
import { centroid } from '../../geometry/centroid'
import { intersectRegions } from '../../geometry/clip'
import { distanceToEdge } from '../../geometry/contains'
import type { CurveRegion, Ring } from '../../geometry/curve'
import { flatArea } from '../../geometry/flatArea'
import { flattenRegion, flattenRing } from '../../geometry/flattenRing'
import type { Plan } from '../../plan/plan'
import { nameCorners } from '../../pours/day/doseMarks'
import type { PourDayPlan } from '../../pours/day/pourDay'
import { drawHatch, type Hatch } from '../hatch'
import { hourLabel } from '../hourLabel'
import { closedPath, drawCircle, drawPath, drawText, ink, moveLine, num, softInk, widthOf, type XY } from '../svgPen'

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

/** Of a shade's outline, the point farthest from the pour's own: the edge that crosses the slab. */
function innerPoint(shade: Ring, pour: Ring): Pt {
  const clear = (p: Pt): number =>
    pour.reduce((least, from, i) => {
      const to = pour[(i + 1) % pour.length]!
      return Math.min(least, distanceToEdge({ edgeId: '', from, to }, p))
    }, Number.POSITIVE_INFINITY)
  const middles = shade.map((p, i): Pt => {
    const q = shade[(i + 1) % shade.length]!
    return [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]
  })
  return middles.reduce((best, p) => (clear(p) > clear(best) ? p : best))
}

const shadeHours = [8, 10, 12, 14, 16]

/** Edges of the shade inside the pour at two-hour steps, each with its hour in a small circle. */
function shadeEdges(plan: Plan, day: PourDayPlan, region: CurveRegion, at: (p: Pt) => XY): string {
  const slabId = plan.pours.find(({ id }) => id === day.pourId)?.slabId
  const flat = flattenRegion(region)
  return plan.shade.shadows
    .filter(shadow => shadow.slabId === slabId)
    .flatMap(shadow => {
      const { clockMin } = hourLabel(shadow.ms, plan.site.place.zone, plan.site.units)
      if (clockMin % 60 !== 0 || !shadeHours.includes(clockMin / 60)) return []
      const inside = intersectRegions(shadow.polygons, [flat])
      const biggest = inside.reduce<(typeof inside)[number] | null>(
        (most, own) => (most === null || own.ring.length > most.ring.length ? own : most),
        null,
      )
      // A sliver in a corner tells nobody anything.
      if (!biggest || flatArea(inside) < 0.03 * flatArea([flat])) return []
      const lines = inside.map(shape =>
        drawPath(closedPath(shape.ring.map(at)), { stroke: softInk, width: 0.8, dash: '5 3' }),
      )
      const mark = at(innerPoint(biggest.ring, flat.ring))
      const hour = String(((clockMin / 60 + 11) % 12) + 1)
      return [
        ...lines,
        drawCircle(mark, 10, { fill: '#fff', stroke: softInk, width: 0.8 }),
        drawText(hour, mark[0], mark[1] + 5, { sizePt: letterPt, anchor: 'middle' }),
      ]
    })
    .join('')
}

export function dayMap(
  plan: Plan,
  day: PourDayPlan,
  box: MapBox,
): { readonly svg: string; readonly shade: boolean; readonly crowded: boolean } {
  const pour = plan.pours.find(({ id }) => id === day.pourId)!
  const at = placeOnPaper(pour.region, box)
  const rings = (region: CurveRegion): XY[][] => [region.outer, ...region.holes].map(ring => flattenRing(ring).map(at))
  const outline = rings(pour.region)
  const parts: string[] = []
  for (const shape of day.shapes) {
    const doseMin = day.plan.strips.find(strip => strip.id === shape.id)?.doseMin ?? 0
    const hatch = hatchOf(doseMin)
    if (hatch) for (const region of shape.regions) parts.push(drawHatch(rings(region), hatch, softInk))
  }
  const shade = shadeEdges(plan, day, pour.region, at)
  parts.push(shade)
  for (const shape of day.shapes)
    for (const { from, to } of shape.ends)
      parts.push(drawPath(moveLine(at(from), at(to)), { stroke: ink, width: 1.2, dash: '1.5 3', cap: 'round' }))
  parts.push(drawPath(outline.map(closedPath).join(''), { stroke: ink, width: 2.2, evenOdd: true }))
  for (const { marks } of day.doseMarks)
    for (const mark of marks) {
      const [x, y] = at(mark.at)
      parts.push(
        drawPath(`M${x - 6} ${y - 6}L${x + 6} ${y + 6}M${x - 6} ${y + 6}L${x + 6} ${y - 6}`, {
          stroke: ink,
          width: 2.4,
        }),
      )
    }
  for (const { name, at: corner } of nameCorners(pour.region)) {
    const [x, y] = at(corner)
    const [cx, cy] = [box.x + box.width / 2, box.y + box.height / 2]
    const away = Math.hypot(x - cx, y - cy) || 1
    parts.push(
      drawText(name, x + ((x - cx) / away) * 14, y + ((y - cy) / away) * 14 + 5, {
        ...{ sizePt: letterPt, face: 'planBold', anchor: 'middle' },
      }),
    )
  }
  // Where neighbors' letters would touch they stand in three rows, and only a dose is written out.
  const marks = day.shapes.map(shape => centroid(shape.regions)).flatMap(center => (center ? [at(center)] : []))
  const crowded = marks.some(([x, y], i) => {
    const next = marks[i + 1]
    return next !== undefined && Math.abs(next[0] - x) < 44 && Math.abs(next[1] - y) < 40
  })
  for (const [index, shape] of day.shapes.entries()) {
    const center = centroid(shape.regions)
    if (!center) continue
    const [x, middle] = at(center)
    const y = crowded ? middle + ((index % 3) - 1) * 42 : middle
    const doseMin = day.plan.strips.find(strip => strip.id === shape.id)?.doseMin ?? 0
    const dose = doseMin === 0 ? 'plain' : `${doseMin} min`
    const wide = widthOf(dose, letterPt)
    parts.push(
      drawCircle([x, y - 12], 12, { fill: '#fff', stroke: ink, width: 1.4 }),
      drawText(shape.id, x, y - 7, { sizePt: letterPt, face: 'name', anchor: 'middle' }),
    )
    if (crowded && doseMin === 0) continue
    parts.push(
      drawPath(`M${num(x - wide / 2 - 2)} ${num(y + 2)}h${num(wide + 4)}v17h${num(-wide - 4)}Z`, { fill: '#fff' }),
      drawText(dose, x, y + 15, { sizePt: letterPt, anchor: 'middle' }),
    )
  }
  return { svg: parts.join(''), shade: shade !== '', crowded }
}
