import { printDay } from '../units/printDay'
import { printMeasures } from '../units/printMeasures'
import { boxFrame } from './boxFrame'
import { compassPoint } from './compassPoint'
import { drawCasterShapes } from './drawCasters'
import { drawPourEdges, drawPourPlates } from './drawPours'
import { drawOutlines, drawSlabGrounds } from './drawSlabs'
import { flatRegionPath, ringToPage } from './frame'
import { drawHatch } from './hatch'
import type { PageRect } from './layer'
import { drawNorthArrow } from './northArrow'
import { papers, turnPaper } from './paper'
import { placeLabels } from './placeLabels'
import { chooseShadeTimes } from './shadeTimes'
import type { SheetData, SheetHour } from './sheetData'
import { drawPath, drawRect, drawText, ink, num, openSvg, softInk } from './svgPen'

export interface Picture {
  readonly svg: string
  readonly widthPt: number
  readonly heightPt: number
}

const mapCount = 6
const columns = 3
const edge = 30
const headHeight = 58
const captionHeight = 26
const gap = 14

function drawMap(data: SheetData, hour: SheetHour, box: PageRect, clipId: string): string {
  const frame = boxFrame(
    data.slabs.map(({ outline }) => outline),
    box,
    20,
  )
  const shadows = data.shadows.filter(s => s.time === hour.time)
  const dapple = shadows
    .flatMap(s => s.dapple)
    .map(region =>
      drawHatch(
        [region.ring, ...region.holes].map(ring => ringToPage(frame, ring)),
        { kind: 'dots', spacingPt: 4, radiusPt: 0.55 },
        softInk,
      ),
    )
  const shade = shadows
    .flatMap(s => s.polygons)
    .map(region => {
      const rings = [region.ring, ...region.holes].map(ring => ringToPage(frame, ring))
      return (
        drawPath(flatRegionPath(frame, region), { fill: '#D4D8DC', evenOdd: true }) +
        drawHatch(rings, { kind: 'lines', anglesDeg: [45], spacingPt: 5, widthPt: 0.5 }, softInk)
      )
    })
  const outlines = drawOutlines(data, frame)
  const plates = drawPourPlates(data, frame, box, printMeasures(data.units), 'number')
  const numbers = placeLabels(plates.wishes, {
    segments: outlines.segments,
    boxes: [],
    bounds: { x0: box.x, y0: box.y, x1: box.x + box.width, y1: box.y + box.height },
  })
  return [
    `<clipPath id="${clipId}"><rect x="${num(box.x)}" y="${num(box.y)}" width="${num(box.width)}" height="${num(box.height)}"/></clipPath>`,
    `<g clip-path="url(#${clipId})">`,
    drawCasterShapes(data.casters, frame, true),
    drawSlabGrounds(data, frame),
    ...dapple,
    ...shade,
    drawPourEdges(data, frame),
    outlines.svg,
    drawCasterShapes(data.casters, frame, false),
    ...numbers.map(draw => draw?.() ?? ''),
    '</g>',
    drawRect(box.x, box.y, box.width, box.height, { stroke: softInk, width: 0.6 }),
    drawText(hour.label, box.x, box.y - 7, { sizePt: 18, face: 'name' }),
    drawText(
      `sun ${Math.round(hour.altitudeDeg)}° high in the ${compassPoint(hour.azimuthDeg)}`,
      box.x + box.width,
      box.y - 7,
      { sizePt: 12, anchor: 'end' },
    ),
  ].join('\n')
}

/** One page with up to six maps, or none where nothing is shaded. */
export function shadeMaps(data: SheetData): Picture[] {
  const times = chooseShadeTimes(data, mapCount)
  const hours = data.hours.filter(hour => times.includes(hour.time))
  if (hours.length === 0) return []
  const { widthPt, heightPt } = turnPaper(data.units === 'ftin' ? papers.letter : papers.a4, 'landscape')
  const rows = Math.ceil(hours.length / columns)
  const width = (widthPt - 2 * edge - (columns - 1) * gap) / columns
  const height = (heightPt - 2 * edge - headHeight - rows * captionHeight - (rows - 1) * gap) / rows
  const maps = hours.map((hour, i) => {
    const box: PageRect = {
      x: edge + (i % columns) * (width + gap),
      y: edge + headHeight + captionHeight + Math.floor(i / columns) * (height + captionHeight + gap),
      width,
      height,
    }
    return drawMap(data, hour, box, `map${i + 1}`)
  })
  const svg = [
    openSvg(widthPt, heightPt),
    drawRect(0, 0, widthPt, heightPt, { fill: '#FFFFFF' }),
    drawText('Shade through the day', edge, edge + 22, { sizePt: 23, face: 'name' }),
    drawText(
      `${data.siteName}, ${printDay(data.date, 'long')}. Hatched = in shade, dotted = under leaves or slats. Not to scale.`,
      edge,
      edge + 42,
      {
        sizePt: 13,
      },
    ),
    drawPath(`M${edge} ${edge + 52}h${num(widthPt - 2 * edge)}`, { stroke: ink, width: 2 }),
    drawNorthArrow([widthPt - edge - 24, edge + 22], 15, data.place.northDeg),
    ...maps,
    '</svg>',
    '',
  ].join('\n')
  return [{ svg, widthPt, heightPt }]
}
