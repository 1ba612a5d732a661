/** Ways to split a part of the slab side by side: drawing, figures, price and what speaks for each. */

import type { Alternative } from '../pours/alternatives/alternative'
import { printMixedSun } from '../pours/alternatives/printMixedSun'
import type { Measures } from '../units/measures'
import { printDay } from '../units/printDay'
import { printMeasures } from '../units/printMeasures'
import { printNumber } from '../units/printNumber'
import { boxFrame } from './boxFrame'
import { curveRegionPath, toPage } from './frame'
import type { PageRect } from './layer'
import { wrapText } from './letterWidths'
import { papers, turnPaper } from './paper'
import type { Picture } from './shadeMaps'
import type { SheetAlternative, SheetData } from './sheetData'
import { drawPath, drawRect, drawText, ink, moveLine, num, openSvg, softInk } from './svgPen'

const edge = 30
const headHeight = 64
const gap = 18
const mapHeight = 120
const letterPt = 11.5
const rowHeight = 16.5
const lineHeight = 12.8

const kindNames: Readonly<Record<Alternative['kind'], string>> = {
  fewest: 'Fewest pours',
  oneMore: 'One more',
  twoMore: 'Two more',
  lanes: 'Lanes',
}

type Row = readonly [label: string, value: string]

function rowsOf({ figures, price, shadeLineFt }: SheetAlternative, measures: Measures): Row[] {
  return [
    ['Crew-days', printNumber(figures.crewDays, 1)],
    ['Trucks', String(figures.trucks)],
    ['Short loads', String(figures.shortLoads)],
    ['Joint and header', measures.length(figures.jointM)],
    ['Re-entrant corners left', String(figures.reentrantLeft)],
    ['Corners under 60°', String(figures.cornersUnder60)],
    ['Out of reach', measures.area(figures.outOfReachM2)],
    ['Beyond the chute', measures.area(figures.beyondChuteM2)],
    ['Pours part in sun', printMixedSun(figures) ?? '–'],
    ['Sun and shade mixed', shadeLineFt === null ? '–' : `${printNumber(shadeLineFt, 0)} ft`],
    ['Largest pour', measures.area(figures.largestM2)],
    ['Last pour', figures.lastPourDate === null ? 'open' : printDay(figures.lastPourDate, 'short')],
    ['Price of these', printNumber(price.total, 0)],
  ]
}

/** Pours as light grounds, joints as heavy lines: it reads the same in black and white. */
function drawSplit(alternative: SheetAlternative, box: PageRect): string {
  const frame = boxFrame(
    alternative.pours.map(({ region }) => region.outer),
    box,
    4,
  )
  const grounds = alternative.pours.map(({ region }) =>
    drawPath(curveRegionPath(frame, region), { fill: '#EEF2F5', stroke: ink, width: 1, evenOdd: true }),
  )
  const joints = alternative.joints.map(({ from, to }) => moveLine(toPage(frame, from), toPage(frame, to)))
  return grounds.join('') + drawPath(joints.join(''), { stroke: ink, width: alternative.pours.length > 20 ? 2 : 3 })
}

function drawColumn(
  alternative: SheetAlternative,
  measures: Measures,
  x: number,
  y: number,
  width: number,
  bottom: number,
): string {
  const parts: string[] = []
  const count = alternative.pours.length
  parts.push(
    drawText(kindNames[alternative.kind], x, y + 15, { sizePt: 16, face: 'name' }),
    drawText(count === 1 ? '1 pour' : `${count} pours`, x + width, y + 15, {
      sizePt: 14,
      face: 'planBold',
      anchor: 'end',
    }),
    drawSplit(alternative, { x, y: y + 24, width, height: mapHeight }),
  )
  let at = y + 24 + mapHeight + 10
  for (const [label, value] of rowsOf(alternative, measures)) {
    parts.push(
      drawPath(`M${num(x)} ${num(at)}h${num(width)}`, { stroke: softInk, width: 0.5 }),
      drawText(label, x, at + 12.5, { sizePt: letterPt }),
      drawText(value, x + width, at + 12.5, { sizePt: letterPt, face: 'planBold', anchor: 'end' }),
    )
    at += rowHeight
  }
  parts.push(drawPath(`M${num(x)} ${num(at)}h${num(width)}`, { stroke: softInk, width: 0.5 }))
  at += 6
  for (const { sign, words } of alternative.sentences) {
    const lines = wrapText(words, letterPt, 'plan', width - 16)
    // The figures above say it all: what finds no room is left out whole.
    if (at + lines.length * lineHeight > bottom) break
    for (const [i, line] of lines.entries()) {
      at += lineHeight
      if (i === 0) parts.push(drawText(sign, x, at, { sizePt: 13, face: 'planBold' }))
      parts.push(drawText(line, x + 14, at, { sizePt: letterPt }))
    }
    at += 2
  }
  return parts.join('\n')
}

/** A page for each piece that can be split in more ways than one; none where no ways were worked out. */
export function alternativeSheets(data: SheetData): Picture[] {
  const measures = printMeasures(data.units)
  const groups = new Map<string, SheetAlternative[]>()
  for (const each of data.alternatives ?? []) groups.set(each.place, [...(groups.get(each.place) ?? []), each])
  const { widthPt, heightPt } = turnPaper(data.units === 'ftin' ? papers.letter : papers.a4, 'landscape')
  return [...groups.values()]
    .filter(group => group.length > 1)
    .map((group): Picture => {
      const width = (widthPt - 2 * edge - (group.length - 1) * gap) / group.length
      const slab = data.slabs.find(({ id }) => id === group[0]!.slabId)?.name ?? ''
      const svg = [
        openSvg(widthPt, heightPt),
        drawRect(0, 0, widthPt, heightPt, { fill: '#FFFFFF' }),
        drawText('Ways to split', edge, edge + 22, { sizePt: 23, face: 'name' }),
        drawText(
          `${data.siteName}, ${slab}. Prices by the settings; mixed sun as feet of joint. Not to scale.`,
          edge,
          edge + 42,
          { sizePt: 13 },
        ),
        drawPath(`M${edge} ${edge + 52}h${num(widthPt - 2 * edge)}`, { stroke: ink, width: 2 }),
        ...group.map((each, i) =>
          drawColumn(each, measures, edge + i * (width + gap), edge + headHeight, width, heightPt - edge),
        ),
        '</svg>',
        '',
      ].join('\n')
      return { svg, widthPt, heightPt }
    })
}
