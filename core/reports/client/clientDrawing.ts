/** One sheet for the client: the slab to scale with its pattern and color, and a block of words to sign under. */
import type { Site } from '../../../shared/document/site'
import { type Box, joinBounds, pointBounds } from '../../geometry/bounds'
import { flattenRing } from '../../geometry/flattenRing'
import type { ResolvedSlab } from '../../geometry/resolvedSlab'
import { printMeasures } from '../../units/printMeasures'
import { crownRings, drawCasterNames } from '../drawCasters'
import { dimensionMarginPt, drawDimensions } from '../drawDimensions'
import { type DrawingScale, scalePtPerM, scalesOf } from '../drawingScale'
import { drawPourEdges, drawPourPlates } from '../drawPours'
import { drawFurnishings } from '../drawShown'
import { drawOpeningNames, drawOutlines, drawSteps, stepRings } from '../drawSlabs'
import type { Frame } from '../frame'
import type { Layer, PageRect } from '../layer'
import { wrapText } from '../letterWidths'
import { drawNorthArrow } from '../northArrow'
import { type Orientation, type Paper, turnPaper } from '../paper'
import { drawFinish } from '../pattern/drawFinish'
import { patternTile } from '../pattern/finishPattern'
import { placeLabels } from '../placeLabels'
import { barCheck, chooseScaleBar, drawScaleBar } from '../scaleBar'
import type { CasterShape, SheetData, SheetPour } from '../sheetData'
import { drawRect, drawText, ink, num, openSvg, softInk } from '../svgPen'
import { clientData } from './clientData'
import { drawHead, edgePt, type HeadWords, wordScale } from './clientHead'
import { type ClientPrice, type PriceRow, totalWords } from './clientPrice'
import { drawClientCasters } from './drawClientSite'
import { drawClientSlabs } from './drawClientSlabs'
import { finishRows } from './finishRows'
import { type Block, type Column, heading, noteBlock, type Row, rowBlock, signBlock, stackBlocks } from './wordBlocks'

/** All off: a drawing with sizes and finishes, and nothing about money or work. */
export interface ClientOptions extends HeadWords {
  readonly paper: Paper
  readonly showAreas: boolean
  readonly price: ClientPrice | null
  /** The pours, where the client is to see them. */
  readonly pours: readonly SheetPour[]
  /** Lines to sign on. */
  readonly signed: boolean
}

export interface ClientSheet {
  readonly svg: string
  readonly widthPt: number
  readonly heightPt: number
  readonly scale: DrawingScale
  readonly orientation: Orientation
}

const gapPt = 16
/** Beyond the slab by this share of its size casters still show. */
const around = 0.22

interface ClientLayout {
  readonly window: PageRect
  readonly words: PageRect
  readonly foot: PageRect
  readonly k: number
  readonly page: { readonly widthPt: number; readonly heightPt: number }
}

function layOut(paper: Paper, orientation: Orientation): ClientLayout {
  const page = turnPaper(paper, orientation)
  const k = wordScale(paper)
  const [width, height] = [page.widthPt - 2 * edgePt, page.heightPt - 2 * edgePt]
  const head = 46 * k
  const footHeight = 44 * k
  const foot = { x: edgePt, y: edgePt + height - footHeight, width, height: footHeight }
  const top = edgePt + head
  const room = height - head - footHeight - gapPt
  if (orientation === 'landscape') {
    const column = 176 * k
    return {
      page,
      k,
      foot,
      window: { x: edgePt, y: top, width: width - column - gapPt, height: room },
      words: { x: edgePt + width - column, y: top, width: column, height: room },
    }
  }
  const band = 210 * k
  return {
    page,
    k,
    foot,
    window: { x: edgePt, y: top, width, height: room - band - gapPt },
    words: { x: edgePt, y: top + room - band, width, height: band },
  }
}

const shapeBounds = (shape: CasterShape): Box => {
  if (shape.form === 'rings') return pointBounds(shape.rings.flat())
  if (shape.form === 'line') return pointBounds(shape.points)
  const [[x, y], r] = [shape.center, shape.radiusM]
  return { minX: x - r, minY: y - r, maxX: x + r, maxY: y + r }
}

interface Extent {
  readonly slabs: Box
  /** What stands around them, as far as it lies near. */
  readonly near: readonly Box[]
}

function extentOf(data: SheetData): Extent {
  const slabs = pointBounds(data.slabs.flatMap(({ outline }) => flattenRing(outline)))
  const [dx, dy] = [(slabs.maxX - slabs.minX) * around, (slabs.maxY - slabs.minY) * around]
  const near = data.casters
    .map(({ shape }) => shapeBounds(shape))
    .map(box => ({
      minX: Math.max(box.minX, slabs.minX - dx),
      minY: Math.max(box.minY, slabs.minY - dy),
      maxX: Math.min(box.maxX, slabs.maxX + dx),
      maxY: Math.min(box.maxY, slabs.maxY + dy),
    }))
    .filter(box => box.minX <= box.maxX && box.minY <= box.maxY)
  return { slabs, near }
}

/** Slabs with room for their dimensions, and the rest with a little room, in plan meters at a scale. */
function boxAt({ slabs, near }: Extent, ptPerM: number): Box {
  const widened = (box: Box, byPt: number): Box => ({
    minX: box.minX - byPt / ptPerM,
    minY: box.minY - byPt / ptPerM,
    maxX: box.maxX + byPt / ptPerM,
    maxY: box.maxY + byPt / ptPerM,
  })
  return joinBounds([widened(slabs, dimensionMarginPt), ...near.map(box => widened(box, 8))])
}

/** A slab larger than the smallest named scale: the next round one that fits. */
function roundScale(units: Site['units'], leastRatio: number): DrawingScale {
  const step = units === 'ftin' ? 120 : 100
  const ratio = Math.ceil(leastRatio / step) * step
  return { ratio, name: units === 'ftin' ? `1 in = ${ratio / 12} ft` : `1:${ratio}` }
}

interface Fit {
  readonly layout: ClientLayout
  readonly orientation: Orientation
  readonly scale: DrawingScale
  readonly frame: Frame
}

/** The larger scale of the two ways the paper can lie. */
function fitPage(data: SheetData, paper: Paper): Fit {
  const extent = extentOf(data)
  const fits = (['landscape', 'portrait'] as const).map((orientation): Fit => {
    const layout = layOut(paper, orientation)
    const { window } = layout
    const holds = (scale: DrawingScale): boolean => {
      const ptPerM = scalePtPerM(scale)
      const box = boxAt(extent, ptPerM)
      return (box.maxX - box.minX) * ptPerM <= window.width && (box.maxY - box.minY) * ptPerM <= window.height
    }
    const scales = scalesOf(data.units)
    let scale = scales.find(holds)
    for (let ratio = scales.at(-1)!.ratio; scale === undefined; ratio *= 1.1) {
      const next = roundScale(data.units, ratio)
      if (holds(next)) scale = next
    }
    const ptPerM = scalePtPerM(scale)
    const box = boxAt(extent, ptPerM)
    const frame: Frame = {
      ptPerM,
      originPt: [
        window.x + window.width / 2 - ((box.minX + box.maxX) / 2) * ptPerM,
        window.y + window.height / 2 + ((box.minY + box.maxY) / 2) * ptPerM,
      ],
    }
    return { layout, orientation, scale, frame }
  })
  return fits.reduce((best, next) => (next.scale.ratio < best.scale.ratio ? next : best))
}

/** The client's sheet; undefined while nothing is drawn. `date` YYYY-MM-DD is written on it. */
export function clientDrawing(
  site: Site,
  slabs: readonly ResolvedSlab[],
  date: string,
  options: ClientOptions,
): ClientSheet | undefined {
  const drawn = slabs.filter(({ outline }) => outline.length > 0)
  if (drawn.length === 0) return undefined
  const data: SheetData = { ...clientData(site, drawn, date), pours: options.pours }
  const fit = fitPage(data, options.paper)
  const { page, window } = fit.layout
  const svg = [
    openSvg(page.widthPt, page.heightPt),
    `<defs><clipPath id="window"><rect x="${num(window.x)}" y="${num(window.y)}" width="${num(window.width)}" height="${num(window.height)}"/></clipPath></defs>`,
    drawRect(0, 0, page.widthPt, page.heightPt, { fill: '#FFFFFF' }),
    drawHead(site, date, options, page),
    drawRect(window.x, window.y, window.width, window.height, { fill: '#F6F4EB' }),
    '<g clip-path="url(#window)">',
    drawWindow(site, drawn, data, fit, options.showAreas),
    '</g>',
    drawRect(window.x, window.y, window.width, window.height, { stroke: softInk, width: 0.6 }),
    drawWords(site, drawn, options, fit),
    drawFoot(data, fit),
    '</svg>',
    '',
  ].join('\n')
  return { svg, widthPt: page.widthPt, heightPt: page.heightPt, scale: fit.scale, orientation: fit.orientation }
}

/** More of a kind than this are known by what is drawn of them: their names would hide it. */
const mostNamedOfKind = 6

const isNamed =
  (casters: SheetData['casters']) =>
  ({ kind }: SheetData['casters'][number]): boolean =>
    casters.filter(each => each.kind === kind).length <= mostNamedOfKind

function drawWindow(
  site: Site,
  slabs: readonly ResolvedSlab[],
  data: SheetData,
  { frame, layout }: Fit,
  showAreas: boolean,
): string {
  const measures = printMeasures(data.units)
  const { window, k } = layout
  const north: PageRect = { x: window.x + window.width - 58 * k, y: window.y + 8 * k, width: 50 * k, height: 66 * k }
  const outlines = drawOutlines(data, frame)
  const labeled: readonly Layer[] = [
    drawDimensions(
      data.slabs.map(({ outline }) => outline),
      frame,
      measures,
      { crowns: crownRings(data, frame), steps: stepRings(data, frame) },
    ),
    drawOpeningNames(data, frame, window, measures, showAreas),
    drawCasterNames({ ...data, casters: data.casters.filter(isNamed(data.casters)) }, frame, window, null, measures),
    ...(data.pours.length > 0 ? [drawPourPlates(data, frame, window, measures, 'number')] : []),
  ]
  const places = placeLabels(
    labeled.flatMap(({ wishes }) => wishes),
    {
      segments: [outlines, ...labeled].flatMap(({ segments }) => segments),
      boxes: [
        {
          box: {
            center: [north.x + north.width / 2, north.y + north.height / 2],
            width: north.width,
            height: north.height,
          },
          weight: 400,
        },
      ],
      bounds: { x0: window.x, y0: window.y, x1: window.x + window.width, y1: window.y + window.height },
    },
  )
  return [
    drawClientCasters(data.casters, frame, true),
    drawClientSlabs(site, slabs, frame),
    drawSteps(data, frame),
    drawPourEdges(data, frame),
    drawFurnishings(data.furnishings ?? [], frame),
    drawClientCasters(data.casters, frame, false),
    ...places.map(place => place?.() ?? ''),
    drawRect(north.x, north.y, north.width, north.height, { fill: '#F6F4EB', fillOpacity: 0.85 }),
    drawNorthArrow([north.x + north.width / 2, north.y + north.height / 2 + 2], 17 * k, data.place.northDeg),
  ].join('\n')
}

/** Joints in a swatch stand at least this far apart. */
const swatchJointPt = 5

/** A swatch of the finish, not smaller than in the drawing, its name and where it lies. */
const finishBlock =
  (site: Site, slabs: readonly ResolvedSlab[], ptPerM: number): Block =>
  ({ x, width, k }, y) => {
    const rows = finishRows(site, slabs, printMeasures(site.units))
    const side = 40 * k
    let at = y
    const parts = rows.map(({ finish, where }, i) => {
      const lines = [
        ...wrapText(finish.name, 12.5 * k, 'planBold', width - side - 10 * k).map(text => ({ text, bold: true })),
        ...wrapText(where, 11.5 * k, 'plan', width - side - 10 * k).map(text => ({ text, bold: false })),
      ]
      const height = Math.max(side, lines.length * 14 * k)
      // The swatch is a piece of the plan of its own, beside the drawing.
      const swatchScale = Math.max(ptPerM, 22, swatchJointPt / (patternTile(finish.pattern)?.jointM ?? 1))
      const [wM, hM] = [side / swatchScale, side / swatchScale]
      const frame: Frame = { ptPerM: swatchScale, originPt: [x, at + side] }
      const corners = [
        [0, 0],
        [wM, 0],
        [wM, hM],
        [0, hM],
      ] as const
      const outer = corners.map((from, c) => ({ edgeId: '', from, to: corners[(c + 1) % 4]! }))
      const svg =
        drawFinish([{ outer, holes: [] }], { ...finish, patternAt: [0, 0] }, { frame, clips: { next: 5000 + i } }) +
        drawRect(x, at, side, side, { stroke: ink, width: 0.9 }) +
        lines
          .map(({ text, bold }, n) =>
            drawText(text, x + side + 9 * k, at + 11 * k + n * 14 * k, {
              sizePt: (bold ? 12.5 : 11.5) * k,
              ...(bold ? { face: 'planBold' as const } : { fill: softInk }),
            }),
          )
          .join('')
      at += height + 8 * k
      return svg
    })
    return { svg: parts.join(''), bottom: at }
  }

const guideNote =
  'Colors on paper are a guide: the sample board decides. Concrete moves with the seasons; contraction joints follow the pattern where they can.'

function areaRows(site: Site, slabs: readonly ResolvedSlab[]): readonly Row[] {
  const measures = printMeasures(site.units)
  const total = slabs.reduce((sum, { netAreaM2 }) => sum + netAreaM2, 0)
  const finishes = finishRows(site, slabs, measures)
  return [
    ['Slab', measures.area(total)],
    ...(finishes.length > 1 ? finishes.map(({ where, areaM2 }) => [where, measures.area(areaM2)] as const) : []),
    ...thicknesses(site, slabs),
  ]
}

const thicknesses = (site: Site, slabs: readonly ResolvedSlab[]): readonly Row[] => {
  const measures = printMeasures(site.units)
  const all = site.slabs.filter(({ id }) => slabs.some(slab => slab.id === id)).map(({ thicknessM }) => thicknessM)
  const words = [...new Set(all.map(each => measures.size(each)))]
  return words.length === 0 ? [] : [['Thickness', words.join(', ')]]
}

const rowsOf = (rows: readonly PriceRow[]): readonly Row[] => rows.map(({ label, value }) => [label, value])

function drawWords(site: Site, slabs: readonly ResolvedSlab[], options: ClientOptions, fit: Fit): string {
  const { words, k } = fit.layout
  const finishes: readonly Block[] = [heading('Finish'), finishBlock(site, slabs, fit.frame.ptPerM)]
  const { price } = options
  const figuresWith = (rows: readonly Row[]): readonly Block[] => [
    ...(options.showAreas ? [rowBlock(areaRows(site, slabs))] : []),
    ...(price === null ? [] : [rowBlock([...rows, ...rowsOf(price.tax)], [totalWords(price), price.total])]),
    noteBlock(guideNote),
  ]
  const sign: readonly Block[] = options.signed ? [signBlock] : []
  const bottom = words.y + words.height
  const signHeight = options.signed ? 74 * k : 0
  /** Every line of the price, or their sum alone where the column is too short for them. */
  const fitted = (above: readonly Block[], column: Column) => {
    const full = stackBlocks([...above, ...figuresWith(price === null ? [] : rowsOf(price.lines))], column, words.y)
    return full.bottom + signHeight <= bottom ? full : stackBlocks([...above, ...figuresWith([])], column, words.y)
  }
  if (fit.orientation === 'landscape') {
    const column = { x: words.x, width: words.width, k }
    const upper = fitted(finishes, column)
    // The lines to sign on stand at the foot of the column.
    const lower = stackBlocks(sign, column, Math.max(upper.bottom, bottom - signHeight))
    return upper.svg + lower.svg
  }
  const width = (words.width - 24 * k) / 2
  const left = { x: words.x, width, k }
  const right = { x: words.x + width + 24 * k, width, k }
  const figures = fitted([], right)
  return stackBlocks(finishes, left, words.y).svg + figures.svg + stackBlocks(sign, right, figures.bottom).svg
}

function drawFoot(data: SheetData, { layout, scale }: Fit): string {
  const { foot, k } = layout
  const bar = chooseScaleBar(data.units, scale, foot.width * 0.4)
  const y = foot.y + 18 * k
  const x = foot.x + bar.lengthPt + 26 * k
  const right = foot.x + foot.width
  return (
    drawScaleBar(bar, foot.x + 4 * k, y, 11 * k) +
    drawText(`Scale ${scale.name}, printed at 100 %`, x, y - 2 * k, { sizePt: 11.5 * k, face: 'planBold' }) +
    drawText(barCheck(bar, data.units), x, y + 11 * k, { sizePt: 10.5 * k, fill: softInk }) +
    drawText('Dimensions to the outside of the forms.', right, y - 2 * k, {
      sizePt: 10.5 * k,
      anchor: 'end',
      fill: softInk,
    }) +
    drawText('Check on site before work.', right, y + 11 * k, { sizePt: 10.5 * k, anchor: 'end', fill: softInk })
  )
}
