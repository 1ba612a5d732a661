/** The first page of the sheet of a day: order, map, windows, and the checklist where it finds room. */

import { pumpFacts } from '../../pours/day/placingMethod'
import { printDay } from '../../units/printDay'
import { printMeasures } from '../../units/printMeasures'
import { printNumber } from '../../units/printNumber'
import { sheetClock } from '../sheetClock'
import { drawPath, drawRect, drawText, ink, moveLine, widthOf } from '../svgPen'
import { Column, dayMargin, drawChecks, letterPt, lineStep, rowsOf, svgPage } from './dayColumn'
import { type DayMap, dayMap } from './dayMap'
import { checklist, mapWords, type SheetOf, windowWords } from './daySheetWords'
import { dayTimeline, timelineTall } from './dayTimeline'
import { wrapText } from './wrapText'

function plantOrder(of: SheetOf, x: number, y: number, width: number): Column {
  const { plan, day } = of
  const print = printMeasures(plan.site.units)
  const { mix, units, place } = plan.site
  const column = new Column(x, y, width)
  const total = day.plan.loads.reduce((sum, load) => sum + load.volumeM3, 0)
  column.heading('Plant order')
  column.row(
    'Concrete',
    `${print.volume(total)}, ${day.plan.loads.length} ${day.plan.loads.length === 1 ? 'load' : 'loads'}`,
  )
  column.row('Strength, air', '________')
  column.row('Aggregate, slump', '________')
  column.row('Cement', mix?.sacksPerYd3 === undefined ? '____ sacks' : `${printNumber(mix.sacksPerYd3, 1)} sacks/yd³`)
  column.row('Color, fibers', '________')
  column.row('Most at discharge', print.temperature(35))
  const [first, next] = day.plan.loads
  if (first && next) column.row('Trucks apart', `${Math.round((next.onSiteMs - first.onSiteMs) / 60_000)} min`)
  const paceM3H = (total / (day.plan.strips.at(-1)!.placedMs - day.plan.startMs)) * 3_600_000
  column.row('Placing', `${print.volume(paceM3H)} an hour`)
  for (const load of day.plan.loads)
    column.row(
      `Load ${load.no}, ${print.volume(load.volumeM3)}`,
      `on site ${sheetClock(load.onSiteMs, place.zone, units)}`,
    )
  column.text(
    'No calcium chloride. Same cement and color throughout. Foreman may reject. Hold the balance until called.',
  )
  return column
}

export interface FirstPage {
  readonly svg: string
  /** The checklist where it found no room. */
  readonly left: readonly string[]
}

const headingTall = 25

export function firstPage(of: SheetOf, widthPt: number, heightPt: number): FirstPage {
  const { plan, day } = of
  const print = printMeasures(plan.site.units)
  const { zone } = plan.site.place
  const parts: string[] = []
  const right = widthPt - dayMargin
  const whole = right - dayMargin
  const areaM2 = day.plan.strips.reduce((sum, strip) => sum + strip.areaM2, 0)
  const total = day.plan.loads.reduce((sum, load) => sum + load.volumeM3, 0)
  const numberWide = widthOf(day.number, 52, 'planBold')
  parts.push(
    drawText(day.number, dayMargin, 76, { sizePt: 52, face: 'planBold' }),
    drawText(`Day sheet, pour ${day.number} of ${plan.pours.length}`, dayMargin + numberWide + 18, 56, {
      sizePt: 22,
      face: 'name',
    }),
    drawText('first truck on site', right, 42, { sizePt: letterPt, anchor: 'end' }),
    drawText(sheetClock(day.plan.startMs, zone, plan.site.units), right, 76, {
      sizePt: 36,
      face: 'planBold',
      anchor: 'end',
    }),
  )
  const sub = wrapText(
    `${plan.site.name}. ${printDay(day.date, 'short')}. ${print.area(areaM2)}, ${print.volume(total)}, crew of ${day.input.hands}.`,
    letterPt,
    whole - numberWide - 134,
  )
  sub.slice(0, 2).forEach((line, i) => {
    parts.push(drawText(line, dayMargin + numberWide + 18, 75 + i * 16, { sizePt: letterPt }))
  })
  parts.push(drawPath(moveLine([dayMargin, 98], [right, 98]), { stroke: ink, width: 2.4 }))

  const mapWide = whole * 0.54
  const order = plantOrder(of, dayMargin + mapWide + 22, 120, whole - mapWide - 34)
  const windows = wrapText(windowWords(of), letterPt, whole)
  const lines = [...checklist, ...(day.method.method === 'pump' ? pumpFacts.map(({ fact }) => fact) : [])]
  const strips = day.plan.strips.length
  const checksTall = headingTall + 18 + lineStep * rowsOf(lines)
  const restOf = (bottom: number): number =>
    heightPt - dayMargin - bottom - 20 - headingTall - 16 - lineStep * windows.length
  const least = Math.max(order.y + 2, 340)
  const isWhole = restOf(least) - checksTall >= timelineTall(strips, 0)
  // The map takes the room that neither the windows nor the checklist can use.
  const spare = restOf(least) - (isWhole ? checksTall : 0) - timelineTall(strips, Number.POSITIVE_INFINITY)
  const bottom = least + Math.min(110, Math.max(0, spare - (isWhole ? 3 * rowsOf(lines) : 0)))

  const words = (map: DayMap): string[] => wrapText(mapWords(of, map), letterPt, mapWide)
  const mapBox = (under: number) => ({ x: dayMargin, y: 104, width: mapWide, height: bottom - 104 - under * 17 - 10 })
  const first = dayMap(plan, day, mapBox(3))
  const under = words(first).length
  const map = under === 3 ? first : dayMap(plan, day, mapBox(under))
  const told = new Column(dayMargin, bottom - (words(map).length - 1) * 17 - 2, mapWide)
  told.text(mapWords(of, map))
  parts.push(
    ...order.parts,
    drawRect(order.x - 12, 104, order.width + 24, order.y - 4 - 104, { stroke: ink, width: 1.4 }),
    map.svg,
    ...told.parts,
  )

  const time = new Column(dayMargin, bottom + 20, whole)
  time.heading('Stamping windows')
  const timeTall = timelineTall(strips, restOf(bottom) - (isWhole ? checksTall : 0))
  parts.push(
    ...time.parts,
    dayTimeline(day, zone, plan.site.units, { x: dayMargin, y: time.y - 8, width: whole, height: timeTall }),
  )
  const said = new Column(dayMargin, time.y - 8 + timeTall + 18, whole)
  for (const line of windows) said.text(line)
  parts.push(...said.parts)
  if (!isWhole) return { svg: svgPage(parts, widthPt, heightPt), left: lines }
  const rule = said.y - 4
  parts.push(drawPath(moveLine([dayMargin, rule], [right, rule]), { stroke: ink, width: 1.2 }))
  const checks = new Column(dayMargin, rule + 14, whole)
  checks.heading('Before the truck')
  drawChecks(checks, lines, Math.min(22, (heightPt - dayMargin + 8 - checks.y) / rowsOf(lines)))
  parts.push(...checks.parts)
  return { svg: svgPage(parts, widthPt, heightPt), left: [] }
}
