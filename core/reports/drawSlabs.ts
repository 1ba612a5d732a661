import { openingNames } from '../document/openingNames'
import { flattenEdge } from '../geometry/flattenRing'
import type { Measures } from '../units/measures'
import { curvePath, curveRegionPath, edgePath, type Frame, flatToPage, regionRings, toPage } from './frame'
import { drawHatch, type Hatch } from './hatch'
import {
  boxPointsInside,
  type DrawLabel,
  drawTag,
  type Layer,
  type PageRect,
  planLetterPt,
  pointsInside,
  ringSegments,
} from './layer'
import type { Candidate, LabelBox, LabelWish } from './placeLabels'
import type { SheetData, SheetFinishPart, SheetOpening, SheetSlab } from './sheetData'
import { drawCircle, drawPath, ink, moveLine, softInk, widthOf, type XY } from './svgPen'

export interface FinishStyle {
  readonly fill: string
  readonly hatch: Hatch
}

/** Grounds and hatches of finishes other than the field's, in the order they first appear. */
const finishStyles: readonly FinishStyle[] = [
  { fill: '#D9D9D9', hatch: { kind: 'lines', anglesDeg: [60], spacingPt: 3.6, widthPt: 0.5 } },
  { fill: '#F2F2F2', hatch: { kind: 'lines', anglesDeg: [0], spacingPt: 3.2, widthPt: 0.5 } },
  { fill: '#E6E6E6', hatch: { kind: 'dots', spacingPt: 4.5, radiusPt: 0.6 } },
  { fill: '#FAFAFA', hatch: { kind: 'lines', anglesDeg: [45, -45], spacingPt: 4.5, widthPt: 0.45 } },
]
const finishInk = '#4F4F4F'

export const finishPartsOf = (data: SheetData): SheetFinishPart[] => data.slabs.flatMap(slab => slab.finishParts)

export function chooseFinishStyles(data: SheetData): ReadonlyMap<string, FinishStyle> {
  const names = [...new Set(finishPartsOf(data).map(part => part.finishName))]
  return new Map(names.map((name, i) => [name, finishStyles[i % finishStyles.length]!]))
}

/** Borders, bands and insets with ground, hatch and a fine edge. */
export function drawFinishParts(data: SheetData, frame: Frame): string {
  const styles = chooseFinishStyles(data)
  return finishPartsOf(data)
    .flatMap(part =>
      part.shape.map(region => {
        const d = curveRegionPath(frame, region)
        const style = styles.get(part.finishName)!
        return (
          drawPath(d, { fill: style.fill, evenOdd: true }) +
          drawHatch(regionRings(frame, region), style.hatch, finishInk) +
          drawPath(d, { stroke: finishInk, width: 0.7 })
        )
      }),
    )
    .join('')
}

export const drawFinishSwatch = (style: FinishStyle, x: number, y: number, width: number, height: number): string => {
  const ring = [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ] as const
  const d = `M${ring.map(([px, py]) => `${px} ${py}`).join('L')}Z`
  return (
    drawPath(d, { fill: style.fill }) +
    drawHatch([ring], style.hatch, finishInk) +
    drawPath(d, { stroke: finishInk, width: 0.7 })
  )
}

/** The ground of slabs that have no pours drawn. */
export const drawSlabGrounds = (data: SheetData, frame: Frame): string =>
  data.slabs
    .flatMap(slab =>
      slab.net.map(region => drawPath(curveRegionPath(frame, region), { fill: '#FFFFFF', evenOdd: true })),
    )
    .join('')

/** Outlines in the heaviest ink of the sheet, openings white inside. */
export function drawOutlines(data: SheetData, frame: Frame): Layer {
  const openings = data.slabs.flatMap(slab => slab.openings)
  return {
    svg:
      openings.map(o => drawPath(curvePath(frame, o.ring), { fill: '#FFFFFF', stroke: ink, width: 1.7 })).join('') +
      data.slabs.map(slab => drawPath(curvePath(frame, slab.outline), { stroke: ink, width: 2.6 })).join(''),
    wishes: [],
    segments: [
      ...data.slabs.flatMap(slab => ringSegments(flatToPage(frame, slab.outline), 60)),
      ...openings.flatMap(o => ringSegments(flatToPage(frame, o.ring), 60)),
    ],
  }
}

/** A hidden edge: the haunch under the slab, by dashes. */
export const hiddenEdge = { stroke: ink, width: 0.8, dash: '5 3' } as const

/** How far each thickened edge reaches under the slab. */
export function drawThickened(data: SheetData, frame: Frame): string {
  const shapes = data.slabs.flatMap(slab => slab.thickened).flatMap(({ shape }) => shape)
  return shapes.length === 0 ? '' : drawPath(shapes.map(each => curveRegionPath(frame, each)).join(''), hiddenEdge)
}

/** The corners of each flight of steps on the page. */
export const stepRings = ({ slabs }: SheetData, frame: Frame): XY[][] =>
  slabs.flatMap(({ steps }) => steps.filter(lines => lines.length > 0).map(lines => pageBox(lines, frame)))

/** Its last lines are the outermost tread and the sides: see `stepLines`. */
function pageBox(lines: SheetSlab['steps'][number], frame: Frame): XY[] {
  const [outer, left, right] = lines.slice(-3)
  return [left!.from, ...flattenEdge(outer!, 0.05), right!.to, right!.from].map(at => toPage(frame, at))
}

/** Treads and sides of the steps that leave a slab. */
export function drawSteps({ slabs }: SheetData, frame: Frame): string {
  const lines = slabs.flatMap(({ steps }) => steps.flat())
  return lines.length === 0
    ? ''
    : drawPath(lines.map(line => edgePath(frame, line)).join(''), { stroke: ink, width: 1.1 })
}

function openingWish(
  opening: SheetOpening,
  name: string,
  frame: Frame,
  window: PageRect,
  measures: Measures,
  withArea: boolean,
): LabelWish<DrawLabel> {
  const rings = [flatToPage(frame, opening.ring)]
  const area = measures.area(opening.areaM2)
  const twoLines: LabelBox = {
    center: [0, 0],
    width: Math.max(widthOf(name, planLetterPt, 'planBold'), widthOf(area, planLetterPt)) + 4,
    height: 32,
  }
  const oneLine: LabelBox = { center: [0, 0], width: widthOf(name, planLetterPt, 'planBold') + 4, height: 17 }
  const candidates: Candidate<DrawLabel>[] = pointsInside(rings, window, 8).flatMap(({ at, fromMiddlePt }) => {
    const [x, y] = at
    const both: LabelBox = { ...twoLines, center: at }
    const one: LabelBox = { ...oneLine, center: at }
    const named: Candidate<DrawLabel> = {
      boxes: [one],
      cost: 20 + fromMiddlePt * 0.2 + (8 - boxPointsInside(one, rings)) * 80,
      place: () => drawTag(name, one, { sizePt: planLetterPt, face: 'planBold' }),
    }
    if (!withArea) return [named]
    return [
      {
        boxes: [both],
        cost: fromMiddlePt * 0.2 + (8 - boxPointsInside(both, rings)) * 80,
        place: () =>
          drawTag(name, { ...both, center: [x, y - 8] }, { sizePt: planLetterPt, face: 'planBold' }) +
          drawTag(area, { ...both, center: [x, y + 8] }, { sizePt: planLetterPt, fill: softInk }),
      },
      named,
    ]
  })
  return { candidates: [...candidates, ...outsideSpots(opening, name, frame, oneLine)], dropAbove: 300 }
}

/** An opening too small for its name is named beside it, with a short line. */
function outsideSpots(opening: SheetOpening, name: string, frame: Frame, box: LabelBox): Candidate<DrawLabel>[] {
  const ring = flatToPage(frame, opening.ring)
  const x0 = ring.reduce((m, p) => Math.min(m, p[0]), Infinity)
  const x1 = ring.reduce((m, p) => Math.max(m, p[0]), -Infinity)
  const y0 = ring.reduce((m, p) => Math.min(m, p[1]), Infinity)
  const y1 = ring.reduce((m, p) => Math.max(m, p[1]), -Infinity)
  const [cx, cy] = [(x0 + x1) / 2, (y0 + y1) / 2]
  const reach = (d: number) =>
    [
      { center: [x1 + d + box.width / 2, cy], from: [x1, cy], to: [x1 + d, cy] },
      { center: [x0 - d - box.width / 2, cy], from: [x0, cy], to: [x0 - d, cy] },
      { center: [cx, y1 + d + 8], from: [cx, y1], to: [cx, y1 + d] },
      { center: [cx, y0 - d - 8], from: [cx, y0], to: [cx, y0 - d] },
    ] as const
  return [5, 20, 40].flatMap((d, level) =>
    reach(d).map(({ center, from, to }): Candidate<DrawLabel> => {
      const placed: LabelBox = { ...box, center }
      return {
        boxes: [placed],
        cost: 130 + level * 15,
        place: () =>
          drawPath(moveLine(from, to), { stroke: ink, width: 0.7 }) +
          drawPath(`M${center[0] - box.width / 2} ${center[1] - 8.5}h${box.width}v17h${-box.width}Z`, {
            fill: '#FFFFFF',
            fillOpacity: 0.85,
          }) +
          drawTag(name, placed, { sizePt: planLetterPt, face: 'planBold' }),
      }
    }),
  )
}

export function drawOpeningNames(
  data: SheetData,
  frame: Frame,
  window: PageRect,
  measures: Measures,
  withAreas = true,
): Layer {
  const wishes = data.slabs.flatMap(({ openings }) => {
    const names = openingNames(openings)
    return openings
      .filter(({ kind }) => kind !== 'column' && kind !== 'drain')
      .map(opening => openingWish(opening, names.get(opening.id)!.title, frame, window, measures, withAreas))
  })
  return { svg: '', wishes, segments: [] }
}

/** Marked points: a ring with a dot, named beside. */
export function drawPoints(data: SheetData, frame: Frame): Layer {
  return {
    svg: data.points
      .map(point => {
        const at = toPage(frame, point.at)
        return drawCircle(at, 4, { fill: '#FFFFFF', stroke: ink, width: 1.2 }) + drawCircle(at, 1.4, { fill: ink })
      })
      .join(''),
    wishes: data.points.map(point => {
      const [x, y] = toPage(frame, point.at)
      const width = widthOf(point.name, planLetterPt) + 4
      const spots = [
        [x + 8 + width / 2, y],
        [x - 8 - width / 2, y],
        [x, y - 15],
        [x, y + 15],
      ] as const
      return {
        dropAbove: 900,
        candidates: spots.map((center, i): Candidate<DrawLabel> => {
          const box: LabelBox = { center, width, height: 17 }
          return {
            boxes: [box],
            cost: i * 2,
            place: () =>
              drawPath(`M${center[0] - width / 2} ${center[1] - 8.5}h${width}v17h${-width}Z`, {
                fill: '#FFFFFF',
                fillOpacity: 0.85,
              }) + drawTag(point.name, box, { sizePt: planLetterPt }),
          }
        }),
      }
    }),
    segments: data.points.flatMap(point => {
      const [x, y] = toPage(frame, point.at)
      return [
        { a: [x - 4, y], b: [x + 4, y], weight: 120 },
        { a: [x, y - 4], b: [x, y + 4], weight: 120 },
      ] as const
    }),
  }
}
