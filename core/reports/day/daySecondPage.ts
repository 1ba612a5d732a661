/** The second page of the sheet of a day: what if, doses, jobs and stock, and the log to fill in. */

import { printDay } from '../../units/printDay'
import { sheetClock } from '../sheetClock'
import { drawPath, drawText, ink, moveLine } from '../svgPen'
import { Column, dayMargin, drawChecks, letterPt, lineStep, svgPage } from './dayColumn'
import type { FirstPage } from './dayFirstPage'
import {
  afterText,
  canWait,
  caseName,
  cautionOf,
  daySentence,
  doseText,
  fallbackText,
  retarderText,
  rolesOf,
  type SheetOf,
  stockOf,
} from './daySheetWords'
import { wrapText } from './wrapText'

const sentencePt = 10.5
const sentenceTall = (widthPt: number): number => sentencePt * 1.22 * wrapText(daySentence, sentencePt, widthPt).length

function table(
  x: number,
  y: number,
  widths: readonly number[],
  rows: readonly (readonly string[])[],
  tall: number,
): string {
  const whole = widths.reduce((sum, width) => sum + width, 0)
  const parts: string[] = []
  rows.forEach((row, r) => {
    const top = y + r * tall
    parts.push(drawPath(moveLine([x, top], [x + whole, top]), { stroke: ink, width: r < 2 ? 1.1 : 0.5 }))
    let at = x
    row.forEach((cell, c) => {
      if (c > 0) parts.push(drawPath(moveLine([at, top], [at, top + tall]), { stroke: ink, width: 0.5 }))
      parts.push(
        drawText(cell, at + 3, top + tall - Math.min(6, tall - 11), {
          sizePt: 12.5,
          face: r === 0 || c === 0 ? 'planBold' : 'plan',
        }),
      )
      at += widths[c]!
    })
  })
  parts.push(
    drawPath(moveLine([x, y + rows.length * tall], [x + whole, y + rows.length * tall]), { stroke: ink, width: 1.1 }),
  )
  return parts.join('')
}

/** How the second page is set: the first way in which the log has room to write. */
export const secondPageWays = [
  { sizePt: 14, isBrief: false },
  { sizePt: 12.5, isBrief: false },
  { sizePt: 12, isBrief: true },
  { sizePt: 11, isBrief: true },
] as const
export const leastRowPt = 18
/** Under the cautions; nothing is written there. */
const footMargin = 22

type Setting = (typeof secondPageWays)[number]

/** What to do when the day goes otherwise, a line a case. */
function drawCases(column: Column, { plan, day }: SheetOf): void {
  const { zone } = plan.site.place
  const { x, width, sizePt } = column
  const at = [0, 118, 170, 232].map(own => x + (own * sizePt) / letterPt)
  const head = (text: string, i: number): string => drawText(text, at[i]!, column.y, { sizePt: Math.min(12.5, sizePt) })
  column.parts.push(...['', 'truck', 'slack', 'what to do'].map(head))
  column.y += sizePt + 5
  for (const row of day.plan.whatIf) {
    const top = column.y
    const slack = Number.isFinite(row.slackMin) ? Math.round(row.slackMin) : null
    const slackText = slack === null ? 'lost' : slack < 0 ? `${row.firstLostStripId ?? ''} lost` : `${slack} min`
    column.parts.push(
      drawPath(moveLine([x, top - sizePt], [x + width, top - sizePt]), { stroke: ink, width: 0.5 }),
      drawText(caseName(row.case, plan.site.units), at[0]!, top, { sizePt, face: 'planBold' }),
      drawText(sheetClock(row.startMs, zone, plan.site.units), at[1]!, top, { sizePt }),
      drawText(slackText, at[2]!, top, { sizePt, face: 'planBold' }),
    )
    const told = new Column(at[3]!, top, x + width - at[3]!, sizePt)
    told.text(row.doNext)
    column.parts.push(...told.parts)
    column.y = Math.max(told.y, top + sizePt * 1.25) + 3
  }
}

function drawJobs(column: Column, of: SheetOf, isBrief: boolean): void {
  const jobs = rolesOf(of.day)
  const stock = stockOf(of)
  const retarder = retarderText(of)
  if (isBrief) {
    column.y += 4
    column.text(`Jobs: ${jobs.map(([role, count]) => `${count} ${role}`).join('; ')}.`)
    const held = stock.length === 0 ? 'no stock entered.' : stock.join(' ')
    column.text(`Stock: ${held}${retarder === null ? '' : ` ${retarder}.`}`)
    return
  }
  const leftWide = column.width * 0.36
  const left = new Column(column.x, column.y, leftWide, column.sizePt)
  left.heading('Jobs')
  for (const [role, count] of jobs) left.row(role, count)
  const right = new Column(column.x + leftWide + 24, column.y, column.width - leftWide - 24, column.sizePt)
  right.heading('Stock')
  if (stock.length === 0) right.text('No stock entered.')
  for (const own of stock) right.text(own)
  if (retarder !== null) right.text(`${retarder}.`)
  column.parts.push(...left.parts, ...right.parts)
  column.y = Math.max(left.y, right.y)
}

interface SecondPage {
  readonly svg: string
  /** Height of a line of the log. */
  readonly rowPt: number
}

export function secondPage(
  of: SheetOf,
  widthPt: number,
  heightPt: number,
  { left: checks }: FirstPage,
  { sizePt, isBrief }: Setting,
): SecondPage {
  const { day } = of
  const right = widthPt - dayMargin
  const whole = right - dayMargin
  const column = new Column(dayMargin, 68, whole, sizePt)
  column.parts.push(
    drawText(`Pour ${day.number}, ${printDay(day.date, 'short')}`, right, 46, { sizePt: letterPt, anchor: 'end' }),
    drawText('If the day goes otherwise', dayMargin, 48, { sizePt: 20, face: 'name' }),
  )
  drawCases(column, of)
  if (day.doseMarks.length > 0) {
    column.heading('Retarder')
    for (const mark of day.doseMarks) column.text(doseText(mark, of))
    column.text('Its effect ends suddenly.')
  }
  drawJobs(column, of, isBrief)
  column.y += 4
  const fallback = fallbackText(of)
  if (fallback !== null) column.text(fallback, { face: 'planBold' })
  column.text(canWait)
  const after = afterText(of)
  if (after !== null) column.text(after, { sizePt: Math.min(13, sizePt) })
  if (checks.length > 0) {
    column.heading('Before the truck')
    drawChecks(column, checks, lineStep)
  }
  column.heading('Log')
  const loadRows = [
    ['Load', 'batched', 'on site', 'empty', 'temp', 'slump', 'water'],
    ...day.plan.loads.map(load => [String(load.no), '', '', '', '', '', '']),
  ]
  const { strips } = day.plan
  // Many strips stand in two tables side by side.
  const sides = strips.length > 6 ? 2 : 1
  const perSide = Math.ceil(strips.length / sides)
  const share = (parts: readonly number[], of = whole): number[] => parts.map(part => part * of)
  const rowCount = loadRows.length + perSide + 1
  const warned = cautionOf(of)
  const footTall = 16 + 12 * 1.22 * wrapText(warned, 12, whole, 'planBold').length + sentenceTall(whole)
  const rowPt = Math.min(26, (heightPt - footTall - footMargin - column.y - 8) / rowCount)
  column.parts.push(table(dayMargin, column.y - 12, share([0.1, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15]), loadRows, rowPt))
  const gap = 14
  const sideWide = (whole - (sides - 1) * gap) / sides
  const heads = ['Strip', 'placed', 'ready', 'too hard', 'stamped', ...(sides === 1 ? ['notes'] : [])]
  const widths = sides === 1 ? [0.1, 0.15, 0.15, 0.15, 0.15, 0.3] : [0.16, 0.21, 0.21, 0.21, 0.21]
  for (let side = 0; side < sides; side++) {
    const own = strips.slice(side * perSide, (side + 1) * perSide)
    const rows = [heads, ...own.map(({ id }) => [id, ...heads.slice(1).map(() => '')])]
    const left = dayMargin + side * (sideWide + gap)
    column.parts.push(table(left, column.y - 12 + loadRows.length * rowPt + 8, share(widths, sideWide), rows, rowPt))
  }
  const foot = new Column(dayMargin, heightPt - footMargin - footTall + 16, whole)
  foot.text(warned, { sizePt: 12, face: 'planBold' })
  foot.text(daySentence, { sizePt: sentencePt })
  column.parts.push(...foot.parts)
  return { svg: svgPage(column.parts, widthPt, heightPt), rowPt }
}
