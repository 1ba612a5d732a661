import type { Measures } from '../units/measures'
import { type Frame, flatToPage, ringToPage, toPage } from './frame'
import { drawHatch } from './hatch'
import {
  boxPointsInside,
  type DrawLabel,
  drawGround,
  drawTag,
  type Layer,
  type PageRect,
  planLetterPt,
  pointsInside,
  ringSegments,
} from './layer'
import type { Candidate, LabelBox, LabelWish } from './placeLabels'
import type { SheetCaster, SheetData } from './sheetData'
import { closedPath, drawCircle, drawPath, ink, moveLine, num, openPath, softInk, widthOf, type XY } from './svgPen'

const gray = '#8A8A8A'

/** The tips of the scallops lie this much beyond the crown's radius. */
const scallopReach = 1.06

/** Crown in plan: scallops around the circle, twigs from the trunk. */
export function crownPaths(center: XY, radius: number): { readonly edge: string; readonly twigs: string } {
  const lobes = Math.max(8, Math.min(18, Math.round(radius / 5)))
  const at = (i: number, r: number): XY => {
    const angle = (2 * Math.PI * i) / lobes
    return [center[0] + r * Math.cos(angle), center[1] + r * Math.sin(angle)]
  }
  const inner = radius * 0.955
  const lobe = num(inner * Math.sin(Math.PI / lobes) * 1.12)
  let d = `M${num(at(0, inner)[0])} ${num(at(0, inner)[1])}`
  for (let i = 1; i <= lobes; i++) d += `A${lobe} ${lobe} 0 0 1 ${num(at(i, inner)[0])} ${num(at(i, inner)[1])}`
  const twigs = [0.4, 2.1, 3.6, 5, 6.7].map(i =>
    moveLine(at((i * lobes) / 8, radius * 0.3), at((i * lobes) / 8, radius * 0.66)),
  )
  return { edge: `${d}Z`, twigs: twigs.join('') }
}

function drawCrown(center: XY, radius: number): string {
  const { edge, twigs } = crownPaths(center, radius)
  return (
    drawPath(edge, { stroke: ink, width: 1 }) +
    drawPath(twigs, { stroke: gray, width: 0.6 }) +
    drawCircle(center, 3, { fill: ink })
  )
}

const solidUnder = (caster: SheetCaster): boolean => caster.kind === 'building' || caster.kind === 'wall'

function drawCaster(caster: SheetCaster, frame: Frame): string {
  const { shape } = caster
  if (shape.form === 'circle') return drawCrown(toPage(frame, shape.center), shape.radiusM * frame.ptPerM)
  if (shape.form === 'line') {
    const points = shape.points.map(p => toPage(frame, p))
    return (
      drawPath(openPath(points), { stroke: ink, width: 2.2 }) +
      points.map(([x, y]) => drawPath(`M${num(x - 2.6)} ${num(y - 2.6)}h5.2v5.2h-5.2Z`, { fill: ink })).join('')
    )
  }
  const rings = shape.rings.map(ring => ringToPage(frame, ring))
  const d = rings.map(closedPath).join('')
  if (caster.kind === 'cover')
    return (
      drawHatch(rings, { kind: 'lines', anglesDeg: [90], spacingPt: 14, widthPt: 0.4 }, gray) +
      drawPath(d, { stroke: ink, width: 1.1, dash: '9 3 2 3' })
    )
  return (
    drawPath(d, { fill: '#F4F4F4', evenOdd: true }) +
    drawHatch(rings, { kind: 'lines', anglesDeg: [90], spacingPt: 9, widthPt: 0.35 }, gray) +
    drawPath(d, { stroke: ink, width: 1.4 })
  )
}

/** Casters that stand on the ground lie under the slab's lines, crowns and covers over them. */
export const drawCasterShapes = (casters: readonly SheetCaster[], frame: Frame, under: boolean): string =>
  casters
    .filter(caster => solidUnder(caster) === under)
    .map(caster => drawCaster(caster, frame))
    .join('')

function heightText(caster: SheetCaster, levelM: number, measures: Measures): string {
  if (caster.kind === 'cover') return `top ${measures.length(caster.topM - levelM)} up`
  return `${measures.length(caster.topM - caster.baseM)} high`
}

interface Spot {
  readonly at: XY
  readonly cost: number
}

function spotsOf(caster: SheetCaster, frame: Frame, window: PageRect, box: LabelBox): Spot[] {
  const { shape } = caster
  if (shape.form === 'rings') {
    const rings = shape.rings.map(ring => ringToPage(frame, ring))
    return pointsInside(rings, window, 10).map(({ at, fromMiddlePt }) => ({
      at,
      cost: fromMiddlePt * 0.1 + (8 - boxPointsInside({ ...box, center: at }, rings)) * 12,
    }))
  }
  const seen = ([x, y]: XY): boolean =>
    x > window.x && x < window.x + window.width && y > window.y && y < window.y + window.height
  if (shape.form === 'circle') {
    const [x, y] = toPage(frame, shape.center)
    const r = shape.radiusM * frame.ptPerM
    if (!seen([x, y])) return []
    return [
      { at: [x, y + 20], cost: r > box.width * 0.6 ? 0 : 30 },
      { at: [x, y - 20], cost: r > box.width * 0.6 ? 2 : 30 },
      { at: [x, y + r + 18], cost: 10 },
      { at: [x, y - r - 18], cost: 12 },
      { at: [x + r + box.width / 2 + 4, y], cost: 14 },
      { at: [x - r - box.width / 2 - 4, y], cost: 14 },
    ]
  }
  const points = shape.points.map(p => toPage(frame, p))
  return points.slice(1).flatMap((b, i) => {
    const a = points[i]!
    return [0, 0.1, 0.25, 0.4, 0.5, 0.6, 0.75, 0.9, 1].flatMap(t => {
      const x = a[0] + (b[0] - a[0]) * t
      const y = a[1] + (b[1] - a[1]) * t
      if (!seen([x, y])) return []
      const cost = 4 + 10 * Math.abs(t - 0.5)
      return [
        { at: [x + box.width / 2 + 7, y] as const, cost },
        { at: [x - box.width / 2 - 7, y] as const, cost: cost + 1 },
        { at: [x, y + 22] as const, cost },
        { at: [x, y - 22] as const, cost: cost + 1 },
      ]
    })
  })
}

/** A name beside the window's edge moves in by at most its own size. */
function pullInside([x, y]: XY, { width, height }: LabelBox, window: PageRect): XY {
  const pull = (at: number, low: number, high: number, size: number): number => {
    const inside = Math.min(Math.max(at, low + size / 2 + 2), high - size / 2 - 2)
    return Math.abs(inside - at) <= size ? inside : at
  }
  return [pull(x, window.x, window.x + window.width, width), pull(y, window.y, window.y + window.height, height)]
}

/** The shape's rings on the page, to see what lies in it; a line has none. */
function shapeRings({ shape }: SheetCaster, frame: Frame): XY[][] {
  if (shape.form === 'rings') return shape.rings.map(ring => ringToPage(frame, ring))
  if (shape.form === 'line') return []
  const [x, y] = toPage(frame, shape.center)
  const r = shape.radiusM * frame.ptPerM * scallopReach
  return [
    Array.from({ length: 24 }, (_, i): XY => {
      const angle = (i * Math.PI) / 12
      return [x + r * Math.cos(angle), y + r * Math.sin(angle)]
    }),
  ]
}

/** The crowns of the trees on the page. */
export const crownRings = ({ casters }: SheetData, frame: Frame): XY[][] =>
  casters.filter(({ kind }) => kind === 'tree').flatMap(caster => shapeRings(caster, frame))

function nameWish(
  caster: SheetCaster,
  others: readonly XY[][][],
  frame: Frame,
  window: PageRect,
  slabs: readonly XY[][],
  levelM: number | null,
  measures: Measures,
): LabelWish<DrawLabel> {
  const height = levelM === null ? '' : heightText(caster, levelM, measures)
  const width = Math.max(widthOf(caster.name, planLetterPt, 'planBold'), widthOf(height, planLetterPt)) + 8
  const box: LabelBox = { center: [0, 0], width, height: height === '' ? 17 : 33 }
  const candidates = spotsOf(caster, frame, window, box).map(({ at, cost }): Candidate<DrawLabel> => {
    const [x, y] = pullInside(at, box, window)
    const placed: LabelBox = { ...box, center: [x, y] }
    return {
      boxes: [placed],
      cost:
        cost +
        slabs.reduce((sum, ring) => sum + 30 * boxPointsInside(placed, [ring]), 0) +
        others.reduce((sum, rings) => sum + 25 * boxPointsInside(placed, rings), 0),
      place: () =>
        drawGround(placed) +
        (height === ''
          ? drawTag(caster.name, placed, { sizePt: planLetterPt, face: 'planBold' })
          : drawTag(caster.name, { ...placed, center: [x, y - 8] }, { sizePt: planLetterPt, face: 'planBold' }) +
            drawTag(height, { ...placed, center: [x, y + 8] }, { sizePt: planLetterPt, fill: softInk })),
    }
  })
  return { candidates, dropAbove: 600 }
}

const outlineSegments = (caster: SheetCaster, frame: Frame): Layer['segments'] => {
  const { shape } = caster
  if (shape.form === 'rings') return shape.rings.flatMap(ring => ringSegments(ringToPage(frame, ring), 8))
  if (shape.form === 'line') {
    const points = shape.points.map(p => toPage(frame, p))
    return points.slice(1).map((b, i) => ({ a: points[i]!, b, weight: 25 }))
  }
  const [x, y] = toPage(frame, shape.center)
  return [
    ...shapeRings(caster, frame).flatMap(ring => ringSegments(ring, 6)),
    { a: [x - 3, y], b: [x + 3, y], weight: 40 },
  ]
}

/** Names and heights of the casters that show in the window; names alone where there is no level to measure from. */
export function drawCasterNames(
  data: SheetData,
  frame: Frame,
  window: PageRect,
  levelM: number | null,
  measures: Measures,
): Layer {
  const slabs = data.slabs.map(slab => flatToPage(frame, slab.outline))
  const rings = data.casters.map(caster => shapeRings(caster, frame))
  return {
    svg: '',
    wishes: data.casters.map((caster, i) =>
      nameWish(
        caster,
        rings.filter((_, other) => other !== i),
        frame,
        window,
        slabs,
        levelM,
        measures,
      ),
    ),
    segments: data.casters.flatMap(caster => outlineSegments(caster, frame)),
  }
}
