/** The plan sheet: a true-scale drawing with its title, figures, legend, scale bar and caution line. */
import { pointBounds } from '../geometry/bounds'
import { flattenRing } from '../geometry/flattenRing'
import type { Measures } from '../units/measures'
import { printDay } from '../units/printDay'
import { printMeasures } from '../units/printMeasures'
import { cautionLine, noticeLine } from './cautions'
import { dimensionMarginPt } from './drawDimensions'
import { chooseScale, type DrawingScale, type ScaleChoice, scalePtPerM } from './drawingScale'
import type { Frame } from './frame'
import type { PageRect } from './layer'
import { type LegendRow, legendRows } from './legend'
import { wrapText } from './letterWidths'
import { drawNorthArrow } from './northArrow'
import type { Paper } from './paper'
import { drawPlan, type PlanLayers } from './planDrawing'
import { barCheck, chooseScaleBar, drawScaleBar } from './scaleBar'
import type { SheetData } from './sheetData'
import { type SheetLayout, sheetLayout } from './sheetLayout'
import { drawPath, drawRect, drawText, ink, num, openSvg, softInk, widthOf } from './svgPen'

export interface PlanSheetOptions {
  readonly title: string
  readonly layers: PlanLayers
  /** From the smallest to the largest; default all of the unit system. */
  readonly papers?: readonly Paper[]
  readonly scale?: DrawingScale
}

export interface PlanSheet {
  readonly svg: string
  readonly paper: Paper
  readonly widthPt: number
  readonly heightPt: number
  readonly scale: DrawingScale
}

/** A pour's plate needs about this much paper to be read standing. */
const readablePourPt = 84
/** Neighboring sheets of a tiled plan share this strip; the match line runs in its middle. */
const overlapPt = 36

interface Extent {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

const slabExtent = (data: SheetData): Extent => pointBounds(data.slabs.flatMap(slab => flattenRing(slab.outline)))

/** Boxes of the casters, as far as they stand near the slabs. */
function casterBoxes(data: SheetData): Extent[] {
  const slabs = slabExtent(data)
  const [dx, dy] = [slabs.maxX - slabs.minX, slabs.maxY - slabs.minY]
  return data.casters
    .map(({ shape }): Extent => {
      if (shape.form === 'rings') return pointBounds(shape.rings.flat())
      if (shape.form === 'line') return pointBounds(shape.points)
      const [[x, y], r] = [shape.center, shape.radiusM]
      return { minX: x - r, minY: y - r, maxX: x + r, maxY: y + r }
    })
    .map(box => ({
      minX: Math.max(box.minX, slabs.minX - dx / 2),
      minY: Math.max(box.minY, slabs.minY - dy / 2),
      maxX: Math.min(box.maxX, slabs.maxX + dx / 2),
      maxY: Math.min(box.maxY, slabs.maxY + dy / 2),
    }))
    .filter(box => box.minX <= box.maxX && box.minY <= box.maxY)
}

function readableScale(data: SheetData): number {
  const smallest = data.pours.reduce((m, p) => Math.min(m, p.areaM2), Infinity)
  const typical = data.pours.length === 0 ? Infinity : data.pours.reduce((s, p) => s + p.areaM2, 0) / data.pours.length
  const areaM2 = Number.isFinite(typical)
    ? Math.max(smallest, typical / 2)
    : data.slabs.reduce((s, slab) => s + slab.netAreaM2, 0) / 9
  return readablePourPt / Math.sqrt(areaM2)
}

function choosePage(data: SheetData, options: PlanSheetOptions): ScaleChoice {
  const extent = slabExtent(data)
  return chooseScale({
    units: data.units,
    widthM: extent.maxX - extent.minX,
    heightM: extent.maxY - extent.minY,
    marginPt: dimensionMarginPt,
    readablePtPerM: readableScale(data),
    windowOf: (paper, orientation) => {
      const { window } = sheetLayout(paper, orientation)
      return { widthPt: window.width, heightPt: window.height }
    },
    overlapPt,
    ...(options.papers === undefined ? {} : { papers: options.papers }),
    ...(options.scale === undefined ? {} : { scale: options.scale }),
  })
}

type Span = readonly [low: number, high: number]

/** Share of a span that lies in another; a span without length is in or out. */
const shareInside = ([low, high]: Span, [from, to]: Span): number =>
  high - low < 1e-9
    ? low >= from && low <= to
      ? 1
      : 0
    : Math.max(0, Math.min(high, to) - Math.max(low, from)) / (high - low)

/**
 * Along one axis: where the slabs' span starts in the window so that it keeps its margins and as much of the casters
 * shows as can. Of equals, the one nearest the middle.
 */
function placeSpan([low, high]: Span, others: readonly Span[], windowPt: number, ptPerM: number): number {
  const room = windowPt - (high - low) * ptPerM - 2 * dimensionMarginPt
  const steps = Math.max(0, Math.floor(room / 4))
  let best = { start: dimensionMarginPt + room / 2, score: -1 }
  for (let i = 0; i <= steps; i++) {
    const start = dimensionMarginPt + (steps === 0 ? room / 2 : (room * i) / steps)
    const shown: Span = [low - (start - 6) / ptPerM, low + (windowPt - start - 6) / ptPerM]
    const offCenter = Math.abs(start - dimensionMarginPt - room / 2) / windowPt
    const score = others.reduce((sum, other) => sum + shareInside(other, shown), 0) - 0.3 * offCenter
    if (score > best.score) best = { start, score }
  }
  return best.start
}

/** Where the drawing lies when one window shows it all. */
function placeOnWindow(data: SheetData, window: PageRect, ptPerM: number, withCasters: boolean): Frame {
  const slabs = slabExtent(data)
  const boxes = withCasters ? casterBoxes(data) : []
  const left = placeSpan(
    [slabs.minX, slabs.maxX],
    boxes.map(b => [b.minX, b.maxX]),
    window.width,
    ptPerM,
  )
  const top = placeSpan(
    [-slabs.maxY, -slabs.minY],
    boxes.map(b => [-b.maxY, -b.minY]),
    window.height,
    ptPerM,
  )
  return { ptPerM, originPt: [window.x + left - slabs.minX * ptPerM, window.y + top + slabs.maxY * ptPerM] }
}

interface Tile {
  readonly column: number
  readonly row: number
  readonly number: number
}

function drawMatchLines(choice: ScaleChoice, tile: Tile, window: PageRect, wordScale: number): string {
  const half = overlapPt / 2
  const parts: string[] = []
  const size = 14 * wordScale
  const line = (x1: number, y1: number, x2: number, y2: number, sheet: number, upright: boolean): void => {
    const text = `match line, sheet ${sheet} goes on`
    const width = widthOf(text, size, 'planBold') + 12
    const [cx, cy] = [(x1 + x2) / 2, (y1 + y2) / 2]
    const turn = upright ? ` transform="rotate(-90 ${num(cx)} ${num(cy)})"` : ''
    parts.push(
      drawPath(`M${num(x1)} ${num(y1)}L${num(x2)} ${num(y2)}`, { stroke: ink, width: 2, dash: '24 5 4 5 4 5' }),
      `<g${turn}>${drawRect(cx - width / 2, cy - size * 0.65, width, size * 1.3, { fill: '#FFFFFF' })}${drawText(text, cx, cy + size * 0.35, { sizePt: size, face: 'planBold', anchor: 'middle' })}</g>`,
    )
  }
  const right = window.x + window.width
  const bottom = window.y + window.height
  if (tile.column > 0) line(window.x + half, window.y, window.x + half, bottom, tile.number - 1, true)
  if (tile.column < choice.columns - 1) line(right - half, window.y, right - half, bottom, tile.number + 1, true)
  if (tile.row > 0) line(window.x, window.y + half, right, window.y + half, tile.number - choice.columns, false)
  if (tile.row < choice.rows - 1)
    line(window.x, bottom - half, right, bottom - half, tile.number + choice.columns, false)
  return parts.join('')
}

interface Words {
  readonly data: SheetData
  readonly options: PlanSheetOptions
  readonly choice: ScaleChoice
  readonly tile: Tile
  readonly layout: SheetLayout
  readonly measures: Measures
}

function figureRows({ data, measures }: Words): (readonly [string, string])[] {
  const sum = (of: (slab: SheetData['slabs'][number]) => number): number =>
    data.slabs.reduce((s, slab) => s + of(slab), 0)
  const net = sum(slab => slab.netAreaM2)
  const field = sum(slab => slab.fieldAreaM2)
  const concrete = data.pours.every(p => p.concreteM3 !== undefined)
    ? data.pours.reduce((s, p) => s + (p.concreteM3 ?? 0), 0)
    : 0
  return [
    [data.slabs.length === 1 ? 'Slab' : `${data.slabs.length} slabs`, measures.area(net)] as const,
    ...(net - field > 1e-6
      ? [['Field', measures.area(field)] as const, ['Borders and bands', measures.area(net - field)] as const]
      : []),
    ...(data.pours.length > 0 ? [['Pours', String(data.pours.length)] as const] : []),
    ...(concrete > 0 ? [['Concrete to order', measures.volume(concrete)] as const] : []),
  ]
}

/** Words of one column, top to bottom; returns the SVG and how far down it came. */
function drawTitle(words: Words, x: number, y: number, width: number): { svg: string; bottom: number } {
  const { data, options, choice, tile } = words
  const k = words.layout.wordScale
  const parts: string[] = []
  let at = y
  for (const line of wrapText(data.siteName, 23 * k, 'name', width)) {
    at += 23 * k
    parts.push(drawText(line, x, at, { sizePt: 23 * k, face: 'name' }))
  }
  at += 8 * k
  parts.push(drawPath(`M${num(x)} ${num(at)}h${num(width)}`, { stroke: ink, width: 2 }))
  at += 17 * k
  parts.push(drawText(options.title, x, at, { sizePt: 15 * k, face: 'name' }))
  const sheets = choice.columns * choice.rows
  const lines = [
    printDay(data.date, 'long'),
    ...(data.place.name === undefined ? [] : [data.place.name]),
    `Scale ${choice.scale.name}`,
    `${choice.paper.name}, ${choice.orientation}${sheets > 1 ? `, sheet ${tile.number} of ${sheets}` : ''}`,
  ]
  for (const text of lines)
    for (const line of wrapText(text, 12 * k, 'plan', width)) {
      at += 15 * k
      parts.push(drawText(line, x, at, { sizePt: 12 * k }))
    }
  return { svg: parts.join(''), bottom: at }
}

function drawFigures(words: Words, x: number, y: number, width: number): { svg: string; bottom: number } {
  const k = words.layout.wordScale
  const parts: string[] = []
  let at = y
  for (const [label, value] of figureRows(words)) {
    parts.push(drawPath(`M${num(x)} ${num(at)}h${num(width)}`, { stroke: ink, width: 0.6 }))
    at += 19 * k
    parts.push(
      drawText(label, x, at - 5 * k, { sizePt: 12.5 * k }),
      drawText(value, x + width, at - 5 * k, { sizePt: 14 * k, face: 'planBold', anchor: 'end' }),
    )
  }
  parts.push(drawPath(`M${num(x)} ${num(at)}h${num(width)}`, { stroke: ink, width: 0.6 }))
  return { svg: parts.join(''), bottom: at }
}

function drawLegend(
  rows: readonly LegendRow[],
  k: number,
  x: number,
  y: number,
  width: number,
): { svg: string; bottom: number } {
  const sample = 30 * k
  const size = 11 * k
  const parts: string[] = []
  let at = y
  for (const row of rows) {
    const lines = wrapText(row.text, size, 'plan', width - sample - 8 * k)
    const height = Math.max(17 * k, lines.length * 12.5 * k + 4 * k)
    parts.push(row.sample(x, at + (height - 13 * k) / 2, sample, 13 * k))
    for (const [i, line] of lines.entries())
      parts.push(
        drawText(line, x + sample + 8 * k, at + (height - lines.length * 12.5 * k) / 2 + 9.7 * k + i * 12.5 * k, {
          sizePt: size,
        }),
      )
    at += height + 3 * k
  }
  return { svg: parts.join(''), bottom: at }
}

function drawWords(words: Words): string {
  const { data, layout, options, measures } = words
  const { words: box, wordScale: k, orientation } = layout
  const rows = legendRows(data, options.layers, measures)
  const north = (x: number, y: number): string => drawNorthArrow([x, y], 20 * k, data.place.northDeg)
  if (orientation === 'landscape') {
    const title = drawTitle(words, box.x, box.y, box.width)
    const figures = drawFigures(words, box.x, title.bottom + 12 * k, box.width)
    const legend = drawLegend(rows, k, box.x, figures.bottom + 10 * k, box.width)
    const room = box.y + box.height - legend.bottom
    return (
      title.svg +
      figures.svg +
      legend.svg +
      // A long legend leaves no room for north: it then stands in the corner of the drawing, on white.
      (room > 74 * k ? north(box.x + box.width / 2, box.y + box.height - 38 * k) : northInCorner(words))
    )
  }
  const third = (box.width - 36 * k) / 3
  const left = drawTitle(words, box.x, box.y, third)
  const figures = drawFigures(words, box.x + third + 18 * k, box.y + 6 * k, third)
  const legend = drawLegend(rows, k, box.x + 2 * third + 36 * k, box.y + 4 * k, third)
  return left.svg + figures.svg + legend.svg + north(box.x + 1.5 * third + 18 * k, box.y + box.height - 36 * k)
}

function northInCorner({ data, layout }: Words): string {
  const { window, wordScale: k } = layout
  const side = 80 * k
  const [x, y] = [window.x + 4, window.y + window.height - side - 4]
  return (
    drawRect(x, y, side, side, { fill: '#FFFFFF', stroke: softInk, width: 0.6 }) +
    drawNorthArrow([x + side / 2, y + side / 2], 20 * k, data.place.northDeg)
  )
}

function drawFoot({ data, choice, layout }: Words): string {
  const { foot, wordScale: k } = layout
  const bar = chooseScaleBar(data.units, choice.scale, foot.width * 0.4)
  const x = foot.x + 6 * k
  const barBlock = Math.max(bar.lengthPt + 34 * k, 170 * k)
  const left = foot.x + barBlock + 14 * k
  const width = foot.x + foot.width - left
  const stripe = 26 * k
  const textX = left + stripe + 9 * k
  const textWidth = width - stripe - 16 * k
  const stripes = [-1, 0, 1, 2, 3].map(i => {
    const y0 = foot.y + i * 22 * k
    const clipY = (y: number): number => Math.min(Math.max(y, foot.y), foot.y + foot.height)
    return `M${num(left)} ${num(clipY(y0 + 26 * k))}L${num(left + stripe)} ${num(clipY(y0))}L${num(left + stripe)} ${num(clipY(y0 + 11 * k))}L${num(left)} ${num(clipY(y0 + 37 * k))}Z`
  })
  const caution = wrapText(cautionLine, 11.5 * k, 'planBold', textWidth)
  const rest = wrapText(noticeLine, 10.5 * k, 'plan', textWidth)
  const height = caution.length * 13.5 * k + rest.length * 12.5 * k + 3 * k
  let at = foot.y + (foot.height - height) / 2
  const lines = [
    ...caution.map(line => drawText(line, textX, (at += 13.5 * k) - 3 * k, { sizePt: 11.5 * k, face: 'planBold' })),
    ...rest.map((line, i) =>
      drawText(line, textX, (at += 12.5 * k + (i === 0 ? 3 * k : 0)) - 3 * k, { sizePt: 10.5 * k, fill: softInk }),
    ),
  ]
  return (
    drawScaleBar(bar, x, foot.y + 16 * k, 12 * k) +
    drawText('Print at 100 %', foot.x, foot.y + 42 * k, { sizePt: 14 * k, face: 'planBold' }) +
    drawText(barCheck(bar, data.units), foot.x, foot.y + 57 * k, { sizePt: 11 * k }) +
    drawPath(stripes.join(''), { fill: ink }) +
    drawRect(left, foot.y, width, foot.height, { stroke: ink, width: 1.6 }) +
    lines.join('')
  )
}

function drawSheet(
  data: SheetData,
  options: PlanSheetOptions,
  choice: ScaleChoice,
  tile: Tile,
  layout: SheetLayout,
): string {
  const measures = printMeasures(data.units)
  const { window, page, wordScale } = layout
  const ptPerM = scalePtPerM(choice.scale)
  const single = choice.columns * choice.rows === 1
  const extent = slabExtent(data)
  const frame: Frame = single
    ? placeOnWindow(data, window, ptPerM, options.layers.casters)
    : {
        ptPerM,
        originPt: [
          window.x + dimensionMarginPt - extent.minX * ptPerM - tile.column * (window.width - overlapPt),
          window.y + dimensionMarginPt + extent.maxY * ptPerM - tile.row * (window.height - overlapPt),
        ],
      }
  const words: Words = { data, options, choice, tile, layout, measures }
  return [
    openSvg(page.widthPt, page.heightPt),
    `<defs><clipPath id="window"><rect x="${num(window.x)}" y="${num(window.y)}" width="${num(window.width)}" height="${num(window.height)}"/></clipPath></defs>`,
    drawRect(0, 0, page.widthPt, page.heightPt, { fill: '#FFFFFF' }),
    `<g clip-path="url(#window)">`,
    drawPlan(data, frame, window, options.layers, measures),
    drawMatchLines(choice, tile, window, wordScale),
    '</g>',
    drawRect(window.x, window.y, window.width, window.height, { stroke: softInk, width: 0.6 }),
    drawWords(words),
    drawFoot(words),
    '</svg>',
    '',
  ].join('\n')
}

/** The sheets of one plan: one where it fits, else tiles row by row with match lines. */
export function planSheets(data: SheetData, options: PlanSheetOptions): PlanSheet[] {
  if (data.slabs.length === 0) return []
  const choice = choosePage(data, options)
  const layout = sheetLayout(choice.paper, choice.orientation)
  const sheets: PlanSheet[] = []
  for (let row = 0; row < choice.rows; row++)
    for (let column = 0; column < choice.columns; column++)
      sheets.push({
        svg: drawSheet(data, options, choice, { column, row, number: row * choice.columns + column + 1 }, layout),
        paper: choice.paper,
        widthPt: layout.page.widthPt,
        heightPt: layout.page.heightPt,
        scale: choice.scale,
      })
  return sheets
}
