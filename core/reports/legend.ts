import type { Measures } from '../units/measures'
import { boardFill, boardInk, pourHatches, pourHatchInk, pourTint } from './drawPours'
import { afternoonDash, isAfternoon } from './drawShade'
import { chooseFinishStyles, drawFinishSwatch, finishPartsOf, hiddenEdge } from './drawSlabs'
import { drawDirection, drawForbiddenArea, drawForbiddenLine, drawRequired } from './drawWishes'
import { drawHatch } from './hatch'
import type { PlanLayers } from './planDrawing'
import type { SheetData, SheetWish } from './sheetData'
import { drawCircle, drawPath, drawRect, ink, moveLine, softInk, type XY } from './svgPen'

export interface LegendRow {
  readonly text: string
  /** Draws the sample with its top left at (x, y). */
  readonly sample: (x: number, y: number, width: number, height: number) => string
}

function finishText(data: SheetData, finishName: string, measures: Measures): string {
  const parts = finishPartsOf(data).filter(part => part.finishName === finishName)
  const kinds = [...new Set(parts.map(part => part.kind))].join(', ')
  const widths = [...new Set(parts.flatMap(part => (part.widthM === undefined ? [] : [measures.size(part.widthM)])))]
  const width = widths.length === 1 ? `, ${widths[0]} wide` : ''
  const area = measures.area(parts.reduce((sum, part) => sum + part.areaM2, 0))
  return `${finishName}: ${kinds}${width}, ${area}`
}

const pourSample: LegendRow['sample'] = (x, y, width, height) => {
  const half = width / 2
  const box = (x0: number): (readonly [number, number])[] => [
    [x0, y],
    [x0 + half, y],
    [x0 + half, y + height],
    [x0, y + height],
  ]
  return (
    drawRect(x, y, width, height, { fill: pourTint }) +
    drawHatch([box(x)], pourHatches[0]!, pourHatchInk) +
    drawHatch([box(x + half)], pourHatches[1]!, pourHatchInk) +
    drawRect(x, y, width, height, { stroke: ink, width: 0.7 })
  )
}

const shadeSample =
  (dash: string | undefined): LegendRow['sample'] =>
  (x, y, width, height) => {
    const middle = y + height / 2 - 2
    const ticks = [0.1, 0.37, 0.63, 0.9].map(t => moveLine([x + t * width, middle], [x + t * width, middle + 5]))
    return (
      drawPath(moveLine([x, middle], [x + width, middle]), {
        stroke: ink,
        width: 1.4,
        ...(dash === undefined ? {} : { dash }),
      }) + drawPath(ticks.join(''), { stroke: ink, width: 0.6 })
    )
  }

const boardSample: LegendRow['sample'] = (x, y, width, height) => {
  const middle = y + height / 2 - 2
  const stake = (t: number): string => `M${x + t * width - 3} ${middle + 3}h6l-3 7Z`
  return (
    drawPath(moveLine([x, middle], [x + width, middle]), { stroke: boardInk, width: 6.4 }) +
    drawPath(moveLine([x, middle], [x + width, middle]), { stroke: boardFill, width: 3.2 }) +
    drawPath(stake(0.25) + stake(0.75), { fill: boardInk })
  )
}

const isolationSample: LegendRow['sample'] = (x, y, width, height) => {
  const d = moveLine([x, y + height / 2], [x + width, y + height / 2])
  return drawPath(d, { stroke: ink, width: 4.4 }) + drawPath(d, { stroke: '#FFFFFF', width: 2.4, dash: '4 4' })
}

const hiddenSample: LegendRow['sample'] = (x, y, width, height) =>
  drawPath(moveLine([x, y + height / 2], [x + width, y + height / 2]), hiddenEdge)

const contractionSample: LegendRow['sample'] = (x, y, width, height) =>
  drawPath(moveLine([x, y + height / 2], [x + width, y + height / 2]), {
    stroke: softInk,
    width: 0.8,
    dash: '10 3 2 3',
  })

const levelLine = (x: number, y: number, width: number, height: number): readonly [XY, XY] => [
  [x, y + height / 2],
  [x + width, y + height / 2],
]

const wishRows: readonly (readonly [SheetWish['kind'], string, LegendRow['sample']])[] = [
  ['required', 'joint asked for here', (...box) => drawRequired(levelLine(...box))],
  ['forbiddenLine', 'no joint across this line', (...box) => drawForbiddenLine(levelLine(...box))],
  [
    'forbiddenArea',
    'no joint in this area',
    (x, y, width, height) =>
      drawForbiddenArea([
        [x, y],
        [x + width, y],
        [x + width, y + height],
        [x, y + height],
      ]),
  ],
  ['direction', 'joints asked to run along this', (...box) => drawDirection(levelLine(...box))],
]

/** One row for each kind of mark that the sheet really bears. */
export function legendRows(data: SheetData, layers: PlanLayers, measures: Measures): LegendRow[] {
  const rows: LegendRow[] = []
  const hours = data.hours.filter(hour => layers.shadeTimes.includes(hour.time))
  if (layers.pours === 'full' && data.pours.length > 0)
    rows.push({
      text: data.pours.some(p => p.proposed)
        ? 'pour (proposed): number, area, concrete, day'
        : 'pour: number, area, concrete, day',
      sample: pourSample,
    })
  if (layers.joints && data.joints.some(j => j.kind === 'construction'))
    rows.push({ text: 'construction joint, stakes on the side that stays open', sample: boardSample })
  if (layers.joints && (data.contraction ?? []).length > 0)
    rows.push({ text: 'contraction joint, sawn or tooled', sample: contractionSample })
  if (layers.joints && data.joints.some(j => j.kind === 'isolation'))
    rows.push({ text: 'isolation joint', sample: isolationSample })
  const deepM = [...new Set(data.slabs.flatMap(slab => slab.thickened).map(({ depthM }) => depthM))]
  if (layers.dimensions && deepM.length > 0)
    rows.push({ text: `thickened edge, to ${deepM.map(measures.size).join(' or ')}`, sample: hiddenSample })
  if (layers.joints)
    for (const [kind, text, sample] of wishRows)
      if (data.wishes?.some(wish => wish.kind === kind)) rows.push({ text, sample })
  if (layers.finishes)
    for (const [name, style] of chooseFinishStyles(data))
      rows.push({
        text: finishText(data, name, measures),
        sample: (x, y, width, height) => drawFinishSwatch(style, x, y, width, height),
      })
  if (hours.some(h => !isAfternoon(h)))
    rows.push({ text: 'edge of shade before noon, ticks into the shade', sample: shadeSample(undefined) })
  if (hours.some(isAfternoon)) rows.push({ text: 'edge of shade from noon on', sample: shadeSample(afternoonDash) })
  if (data.shadows.some(s => layers.shadeTimes.includes(s.time) && s.dapple.length > 0))
    rows.push({
      text: 'thin: shade of leaves or slats, part of the sun comes through',
      sample: (x, y, width, height) =>
        drawPath(moveLine([x, y + height / 2 - 1], [x + width, y + height / 2 - 1]), { stroke: softInk, width: 0.8 }) +
        drawPath(
          [0.1, 0.3, 0.5, 0.7, 0.9]
            .map(t => moveLine([x + t * width, y + height / 2 - 1], [x + t * width, y + height / 2 + 1.5]))
            .join(''),
          { stroke: softInk, width: 0.5 },
        ),
    })
  if (layers.casters && data.casters.some(c => c.kind === 'cover'))
    rows.push({
      text: 'cover overhead',
      sample: (x, y, width, height) => drawRect(x, y, width, height, { stroke: ink, width: 1.1, dash: '9 3 2 3' }),
    })
  if (data.points.length > 0)
    rows.push({
      text: 'marked point',
      sample: (x, y, width, height) =>
        drawCircle([x + width / 2, y + height / 2], 4, { stroke: ink, width: 1.2 }) +
        drawCircle([x + width / 2, y + height / 2], 1.4, { fill: ink }),
    })
  return rows
}
