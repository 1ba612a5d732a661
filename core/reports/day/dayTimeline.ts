/** Placing, window and stamping of each strip against the clock; hatched, outlined and solid, so that gray paper will do. */
import { DateTime } from 'luxon'
import type { UnitSystem } from '../../../shared/document/site'
import type { PourDayPlan } from '../../pours/day/pourDay'
import { drawHatch } from '../hatch'
import { hourLabel } from '../hourLabel'
import { sheetClock, toFiveMinutes } from '../sheetClock'
import { drawCircle, drawPath, drawRect, drawText, ink, moveLine, num, softInk, widthOf } from '../svgPen'
import type { MapBox } from './dayMap'

const letterPt = 14
const hourMs = 3_600_000
const headTall = 26

/** One line of 14 pt letters a strip, up to half as much again where there is room. */
const leastRowPt = 17.5
const mostRowPt = 26

/** Height that the hours and this many strips take at least, and as far as there is room. */
export const timelineTall = (strips: number, room: number): number =>
  headTall + strips * Math.min(mostRowPt, Math.max(leastRowPt, (room - headTall) / strips))

/**
 * The times of a strip stand in columns to the right, ready and too hard. The bracket under a window runs from the 10th to the 90th
 * percentile of ready.
 */
export function dayTimeline(day: PourDayPlan, zone: string, units: UnitSystem, box: MapBox): string {
  const { strips } = day.plan
  const isDosed = strips.some(({ doseMin }) => doseMin > 0)
  const columns = [
    {
      ...{ head: 'too hard', wide: 62 },
      of: (i: number) => sheetClock(toFiveMinutes(strips[i]!.tooHardMs, 'atLatest'), zone, units),
    },
    { head: 'ready', wide: 62, of: (i: number) => sheetClock(toFiveMinutes(strips[i]!.readyMs), zone, units) },
    ...(isDosed ? [{ head: 'dose', wide: 40, of: (i: number) => String(strips[i]!.doseMin || '') }] : []),
  ]
  const tableWide = columns.reduce((sum, { wide }) => sum + wide, 0)
  // Hours of the clock: a zone may stand half an hour beside those of UTC.
  const fromMs = DateTime.fromMillis(day.plan.startMs - 20 * 60_000, { zone })
    .startOf('hour')
    .toMillis()
  const endMs = Math.max(
    ...strips.flatMap(({ tooHardMs, stampToMs, readyP90Ms }) => [tooHardMs, stampToMs, readyP90Ms]),
  )
  const toMs = fromMs + Math.ceil((endMs - fromMs) / hourMs) * hourMs
  const left = box.x + 36
  const right = box.x + box.width - tableWide - 8
  const at = (ms: number): number => left + ((ms - fromMs) / (toMs - fromMs)) * (right - left)
  const top = box.y + headTall - 4
  const rowPt = (box.height - headTall) / strips.length
  const foot = top + rowPt * strips.length
  const parts: string[] = [drawPath(moveLine([box.x, top], [box.x + box.width, top]), { stroke: ink, width: 1.2 })]
  const hours = Math.round((toMs - fromMs) / hourMs)
  const every = Math.max(1, Math.ceil((hours * 42) / (right - left)))
  for (let hour = 0; hour <= hours; hour++) {
    const x = at(fromMs + hour * hourMs)
    parts.push(drawPath(moveLine([x, top], [x, foot]), { stroke: softInk, width: 0.35 }))
    // The last hour would run into the columns' heads.
    const { label } = hourLabel(fromMs + hour * hourMs, zone, units)
    if (hour % every === 0 && x + widthOf(label, letterPt, 'planBold') / 2 < right + 6)
      parts.push(drawText(label, x, top - 6, { sizePt: letterPt, face: 'planBold', anchor: 'middle' }))
  }
  let edge = box.x + box.width
  for (const { head, wide, of } of columns) {
    parts.push(drawText(head, edge, top - 6, { sizePt: letterPt, anchor: 'end' }))
    for (const i of strips.keys())
      parts.push(
        drawText(of(i), edge, top + (i + 0.5) * rowPt + 5, { sizePt: letterPt, face: 'planBold', anchor: 'end' }),
      )
    edge -= wide
  }
  const isRoomy = rowPt >= 25
  const bar = Math.min(14, rowPt - 8)
  strips.forEach((strip, i) => {
    const rowTop = top + i * rowPt
    const y = rowTop + (rowPt - bar - 5) / 2
    const middle = rowTop + rowPt / 2
    if (i > 0)
      parts.push(drawPath(moveLine([box.x, rowTop], [box.x + box.width, rowTop]), { stroke: softInk, width: 0.35 }))
    if (isRoomy) parts.push(drawCircle([box.x + 12, middle], 11, { fill: '#fff', stroke: ink, width: 1.2 }))
    parts.push(drawText(strip.id, box.x + 12, middle + 5, { sizePt: letterPt, face: 'name', anchor: 'middle' }))
    const [p0, p1] = [at(strip.placeMs), at(strip.placedMs)]
    const placing = [
      [
        [p0, y],
        [p1, y],
        [p1, y + bar],
        [p0, y + bar],
      ],
    ] as const
    const [r, h] = [at(strip.readyMs), at(strip.tooHardMs)]
    const [s0, s1] = [at(strip.stampFromMs), at(strip.stampToMs)]
    const [b0, b1] = [at(strip.readyP10Ms), at(strip.readyP90Ms)]
    const under = y + bar + 5
    parts.push(
      drawRect(p0, y, Math.max(1, p1 - p0), bar, { fill: '#fff', stroke: ink, width: 0.9 }),
      drawHatch(placing, { kind: 'lines', anglesDeg: [135], spacingPt: 4, widthPt: 0.8 }, ink),
      drawRect(r, y, Math.max(1, h - r), bar, { fill: '#fff', stroke: ink, width: 1.2 }),
      drawRect(s0, y + bar * 0.24, Math.max(1, s1 - s0), bar * 0.52, { fill: ink }),
      drawPath(`M${num(b0)} ${num(under - 4)}V${num(under)}H${num(b1)}V${num(under - 4)}`, { stroke: ink, width: 1.5 }),
    )
  })
  return parts.join('')
}
