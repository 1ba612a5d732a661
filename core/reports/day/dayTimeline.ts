/** Placing, window and stamping of each strip against the clock; hatched, outlined and solid, so that gray paper will do. */
import { DateTime } from 'luxon'
import type { PourDayPlan } from '../../pours/day/pourDay'
import { drawHatch } from '../hatch'
import { drawCircle, drawPath, drawRect, drawText, ink, moveLine, softInk, widthOf } from '../svgPen'
import type { MapBox } from './dayMap'

const letterPt = 14
const hourMs = 3_600_000

export const clockTime = (ms: number, zone: string): string => DateTime.fromMillis(ms, { zone }).toFormat('H:mm')

export function dayTimeline(day: PourDayPlan, zone: string, box: MapBox): string {
  const { strips } = day.plan
  const fromMs = Math.floor((day.plan.startMs - 20 * 60_000) / hourMs) * hourMs
  const endMs = Math.max(...strips.map(strip => Math.max(strip.tooHardMs, strip.stampToMs)))
  const toMs = Math.ceil((endMs + 20 * 60_000) / hourMs) * hourMs
  const left = box.x + 30
  // Room for the last time to the right of its window.
  const right = box.x + box.width - 44
  const at = (ms: number): number => left + ((ms - fromMs) / (toMs - fromMs)) * (right - left)
  const top = box.y + 22
  const rowPt = Math.min(26, (box.height - 26) / strips.length)
  const bar = rowPt * 0.72
  const parts: string[] = [drawPath(moveLine([left, top], [right, top]), { stroke: ink, width: 1.2 })]
  const hours = Math.round((toMs - fromMs) / hourMs)
  const every = Math.max(1, Math.ceil((hours * 40) / (right - left)))
  for (let hour = 0; hour <= hours; hour++) {
    const x = at(fromMs + hour * hourMs)
    parts.push(drawPath(moveLine([x, top], [x, top + rowPt * strips.length + 4]), { stroke: softInk, width: 0.35 }))
    if (hour % every === 0)
      parts.push(
        drawText(clockTime(fromMs + hour * hourMs, zone), x, top - 6, {
          sizePt: letterPt,
          face: 'planBold',
          anchor: 'middle',
        }),
      )
  }
  strips.forEach((strip, i) => {
    const y = top + 4 + i * rowPt
    const middle = y + bar / 2
    const baseline = middle + 5
    parts.push(
      drawCircle([box.x + 12, middle], Math.min(11, rowPt / 2 - 0.5), { fill: '#fff', stroke: ink, width: 1.2 }),
      drawText(strip.id, box.x + 12, baseline, { sizePt: letterPt, face: 'name', anchor: 'middle' }),
    )
    const [p0, p1] = [at(strip.placeMs), at(strip.placedMs)]
    parts.push(
      drawHatch(
        [
          [
            [p0, y],
            [p1, y],
            [p1, y + bar],
            [p0, y + bar],
          ],
        ],
        { kind: 'lines', anglesDeg: [135], spacingPt: 4, widthPt: 0.8 },
        ink,
      ),
      drawRect(p0, y, Math.max(1, p1 - p0), bar, { stroke: ink, width: 0.9 }),
    )
    const [r, h] = [at(strip.readyMs), at(strip.tooHardMs)]
    const [s0, s1] = [at(strip.stampFromMs), at(strip.stampToMs)]
    const ready = clockTime(strip.readyMs, zone)
    // The hour lines must not run through the figures.
    const clear = (x: number, text: string): string =>
      drawRect(x - 1, y + 1, widthOf(text, letterPt) + 2, bar - 2, { fill: '#fff' })
    const readyX = r - 4 - widthOf(ready, letterPt)
    parts.push(
      drawRect(r, y, Math.max(1, h - r), bar, { fill: '#fff', stroke: ink, width: 1.2 }),
      drawRect(s0, y + bar * 0.22, Math.max(1, s1 - s0), bar * 0.56, { fill: ink }),
      ...(readyX > p1 + 2 ? [clear(readyX, ready), drawText(ready, readyX, baseline, { sizePt: letterPt })] : []),
      clear(Math.max(h, s1) + 4, clockTime(strip.tooHardMs, zone)),
      drawText(clockTime(strip.tooHardMs, zone), Math.max(h, s1) + 4, baseline, { sizePt: letterPt }),
    )
  })
  return parts.join('')
}
