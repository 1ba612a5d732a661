import type { Pt } from '../../shared/document/primitives'
import type { Measures } from '../units/measures'
import { printDay } from '../units/printDay'
import { curveRegionPath, edgePath, type Frame, regionRings, toPage } from './frame'
import { drawHatch, type Hatch } from './hatch'
import {
  boxPointsInside,
  type DrawLabel,
  drawGround,
  drawTag,
  evenOddContains,
  type Layer,
  type PageRect,
  planLetterPt,
  pointsInside,
  readingDeg,
  tagBox,
} from './layer'
import type { Candidate, LabelBox, LabelWish } from './placeLabels'
import type { SheetData, SheetJoint, SheetPour } from './sheetData'
import { closedPath, drawPath, drawRect, drawText, ink, moveLine, softInk, widthOf, type XY } from './svgPen'

/** Neighbors never share a hatch: four are enough for pours that meet in a tee. */
export const pourHatches: readonly Hatch[] = [
  { kind: 'lines', anglesDeg: [45], spacingPt: 9, widthPt: 0.6 },
  { kind: 'dots', spacingPt: 11, radiusPt: 0.8 },
  { kind: 'lines', anglesDeg: [-45], spacingPt: 4.5, widthPt: 0.6, skipEvery: 3 },
  { kind: 'lines', anglesDeg: [0, 90], spacingPt: 11, widthPt: 0.45 },
]
export const pourHatchInk = '#6F8496'
export const pourTint = '#E6EEF6'
export const boardInk = '#7A4A1E'
export const boardFill = '#D9A566'

/** A hatch for each pour, unlike those of the pours it shares a joint with. */
export function chooseHatches(pours: readonly SheetPour[], joints: readonly SheetJoint[]): ReadonlyMap<string, number> {
  const chosen = new Map<string, number>()
  for (const pour of pours) {
    const taken = new Set(
      joints
        .filter(j => j.pourIds.includes(pour.id))
        .flatMap(j => j.pourIds.filter(id => id !== pour.id))
        .map(id => chosen.get(id)),
    )
    const uses = pourHatches.map((_, i) => [...chosen.values()].filter(h => h === i).length + (taken.has(i) ? 1e6 : 0))
    chosen.set(pour.id, uses.indexOf(Math.min(...uses)))
  }
  return chosen
}

/** The edges of the pours alone, for sheets that are about something else. */
export const drawPourEdges = (data: SheetData, frame: Frame): string =>
  data.pours
    .map(pour => drawPath(curveRegionPath(frame, pour.region), { stroke: softInk, width: 0.7, dash: '2 2.5' }))
    .join('')

/** Ground and hatch of the pours, under everything else. */
export function drawPourGrounds(data: SheetData, frame: Frame): string {
  const hatches = chooseHatches(data.pours, data.joints)
  return data.pours
    .map(pour => {
      const rings = regionRings(frame, pour.region)
      return (
        drawPath(curveRegionPath(frame, pour.region), { fill: pourTint, evenOdd: true }) +
        drawHatch(rings, pourHatches[hatches.get(pour.id)!]!, pourHatchInk)
      )
    })
    .join('')
}

interface Plate {
  readonly width: number
  readonly height: number
  readonly draw: (x: number, y: number) => string
}

const framed = (x: number, y: number, width: number, height: number): string =>
  drawRect(x, y, width, height, { fill: '#FFFFFF', stroke: ink, width: 1.6 })

function fullPlate(pour: SheetPour, measures: Measures): Plate {
  const small = 12
  const notes = [
    ...(pour.concreteM3 === undefined ? [] : [measures.volume(pour.concreteM3)]),
    pour.date === null ? `day ${pour.day}` : printDay(pour.date, 'short'),
  ]
  const area = measures.area(pour.areaM2)
  const numberWidth = widthOf(pour.number, 30, 'name')
  const textWidth = Math.max(widthOf(area, 15, 'planBold'), ...notes.map(n => widthOf(n, small)))
  const height = 26 + notes.length * 13.5
  const width = 8 + numberWidth + 9 + textWidth + 8
  return {
    width,
    height,
    draw: (x, y) =>
      framed(x, y, width, height) +
      drawText(pour.number, x + 8, y + height / 2 + 10, { sizePt: 30, face: 'name' }) +
      drawText(area, x + 17 + numberWidth, y + 19, { sizePt: 15, face: 'planBold' }) +
      notes.map((n, i) => drawText(n, x + 17 + numberWidth, y + 34 + i * 13.5, { sizePt: small })).join(''),
  }
}

function shortPlate(pour: SheetPour, measures: Measures): Plate {
  const area = measures.area(pour.areaM2)
  const numberWidth = widthOf(pour.number, 20, 'name')
  const width = 6 + numberWidth + 6 + widthOf(area, planLetterPt, 'planBold') + 6
  return {
    width,
    height: 25,
    draw: (x, y) =>
      framed(x, y, width, 25) +
      drawText(pour.number, x + 6, y + 19, { sizePt: 20, face: 'name' }) +
      drawText(area, x + 12 + numberWidth, y + 17.5, { sizePt: planLetterPt, face: 'planBold' }),
  }
}

function stackedPlate(pour: SheetPour, measures: Measures): Plate {
  const area = measures.area(pour.areaM2)
  const width = Math.max(widthOf(pour.number, 20, 'name'), widthOf(area, planLetterPt, 'planBold')) + 10
  return {
    width,
    height: 40,
    draw: (x, y) =>
      framed(x, y, width, 40) +
      drawText(pour.number, x + width / 2, y + 18, { sizePt: 20, face: 'name', anchor: 'middle' }) +
      drawText(area, x + width / 2, y + 34.5, { sizePt: planLetterPt, face: 'planBold', anchor: 'middle' }),
  }
}

function numberPlate(pour: SheetPour): Plate {
  const width = widthOf(pour.number, 18, 'name') + 9
  return {
    width,
    height: 23,
    draw: (x, y) => framed(x, y, width, 23) + drawText(pour.number, x + 4.5, y + 17.5, { sizePt: 18, face: 'name' }),
  }
}

function plateWish(
  pour: SheetPour,
  frame: Frame,
  window: PageRect,
  measures: Measures,
  style: 'full' | 'number',
): LabelWish<DrawLabel> {
  const rings = regionRings(frame, pour.region)
  const plates =
    style === 'number'
      ? [numberPlate(pour)]
      : [fullPlate(pour, measures), shortPlate(pour, measures), stackedPlate(pour, measures), numberPlate(pour)]
  const candidates = plates.flatMap((plate, rank) =>
    pointsInside(rings, window, 12).map(({ at, fromMiddlePt }): Candidate<DrawLabel> => {
      const box: LabelBox = { center: at, width: plate.width, height: plate.height }
      const spill = 8 - boxPointsInside({ ...box, width: plate.width + 8, height: plate.height + 8 }, rings)
      return {
        boxes: [{ ...box, width: plate.width + 4, height: plate.height + 4 }],
        cost: rank * 90 + fromMiddlePt * 0.15 + spill * 60,
        place: () => plate.draw(at[0] - plate.width / 2, at[1] - plate.height / 2),
      }
    }),
  )
  return { candidates }
}

export function drawPourPlates(
  data: SheetData,
  frame: Frame,
  window: PageRect,
  measures: Measures,
  style: 'full' | 'number',
): Layer {
  return {
    svg: '',
    wishes: data.pours.map(pour => plateWish(pour, frame, window, measures, style)),
    segments: [],
  }
}

/** +1 where the pour placed later lies on the left of from → to at this place: the stakes of the header stand there. */
function laterSide(orders: readonly { rings: XY[][]; order: number }[], normal: XY, at: XY): 1 | -1 {
  const orderOn = (side: 1 | -1): number =>
    orders.find(({ rings }) => evenOddContains(rings, [at[0] + normal[0] * side * 5, at[1] + normal[1] * side * 5]))
      ?.order ?? 0
  return orderOn(1) >= orderOn(-1) ? 1 : -1
}

function drawBoard(joint: SheetJoint, data: SheetData, frame: Frame): string {
  const [a, b] = [toPage(frame, joint.from), toPage(frame, joint.to)]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (length < 1) return ''
  const d: XY = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
  const normal: XY = [-d[1], d[0]]
  const orders = data.pours
    .filter(p => joint.pourIds.includes(p.id))
    .map(p => ({ rings: regionRings(frame, p.region), order: p.order }))
  const stakes: string[] = []
  const count = Math.max(1, Math.round(length / 36))
  for (let i = 0; i < count; i++) {
    const s = ((i + 0.5) * length) / count
    const side = laterSide(orders, normal, [a[0] + d[0] * s, a[1] + d[1] * s])
    const at = (u: number, v: number): XY => [
      a[0] + d[0] * (s + u) + normal[0] * side * v,
      a[1] + d[1] * (s + u) + normal[1] * side * v,
    ]
    stakes.push(closedPath([at(-3.2, 3), at(3.2, 3), at(0, 11)]))
  }
  return (
    drawPath(moveLine(a, b), { stroke: boardInk, width: 6.4 }) +
    drawPath(moveLine(a, b), { stroke: boardFill, width: 3.2 }) +
    drawPath(stakes.join(''), { fill: boardInk })
  )
}

function boardWish(joint: SheetJoint, frame: Frame, measures: Measures): LabelWish<DrawLabel> {
  const [a, b] = [toPage(frame, joint.from), toPage(frame, joint.to)]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  const text = `joint ${measures.length(joint.lengthM)}`
  const turnDeg = readingDeg(a, b)
  const d: XY = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
  const candidates: Candidate<DrawLabel>[] = []
  const add = (t: number, side: number, offset: number, turn: number, cost: number): void => {
    const center: XY = [
      a[0] + (b[0] - a[0]) * t - d[1] * side * offset,
      a[1] + (b[1] - a[1]) * t + d[0] * side * offset,
    ]
    const box = tagBox(text, center, planLetterPt, 'planBold', turn)
    candidates.push({
      boxes: [box],
      cost: Math.abs(t - 0.5) * 30 + cost,
      place: () => drawGround(box) + drawTag(text, box, { sizePt: planLetterPt, face: 'planBold', fill: '#5A3412' }),
    })
  }
  const count = Math.max(5, Math.min(15, Math.floor(length / 40)))
  for (let i = 1; i < count; i++)
    for (const side of [1, -1]) {
      for (const offset of [22, 15]) add(i / count, side, offset, turnDeg, offset === 15 ? 4 : 0)
      // A short upright joint is read more easily beside it.
      if (Math.abs(turnDeg) > 45) add(i / count, side, widthOf(text, planLetterPt, 'planBold') / 2 + 12, 0, 20)
    }
  return { candidates, dropAbove: 260 }
}

/** Construction joints as form boards with the stakes on the side that stays open. */
export function drawConstructionJoints(data: SheetData, frame: Frame, measures: Measures): Layer {
  const joints = data.joints.filter(j => j.kind === 'construction' && j.lengthM * frame.ptPerM > 1)
  return {
    svg: joints.map(joint => drawBoard(joint, data, frame)).join(''),
    wishes: joints.map(joint => boardWish(joint, frame, measures)),
    segments: joints.map(joint => ({ a: toPage(frame, joint.from), b: toPage(frame, joint.to), weight: 90 })),
  }
}

/** Contraction joints as thin broken lines: they are sawn or tooled, not formed. */
export const drawContractionJoints = (data: SheetData, frame: Frame): string =>
  drawPath((data.contraction ?? []).map(({ from, to }) => moveLine(toPage(frame, from), toPage(frame, to))).join(''), {
    stroke: softInk,
    width: 0.8,
    dash: '10 3 2 3',
  })

const near = (p: Pt, q: Pt): boolean => Math.hypot(p[0] - q[0], p[1] - q[1]) < 1e-4

/** The edge of the drawing that an isolation joint follows: an arc stays an arc. */
function isolationPath(joint: SheetJoint, data: SheetData, frame: Frame): string {
  const edge = data.slabs
    .filter(slab => slab.id === joint.slabId)
    .flatMap(slab => [slab.outline, ...slab.openings.map(o => o.ring)].flat())
    .find(e => (near(e.from, joint.from) && near(e.to, joint.to)) || (near(e.from, joint.to) && near(e.to, joint.from)))
  return edge === undefined ? moveLine(toPage(frame, joint.from), toPage(frame, joint.to)) : edgePath(frame, edge)
}

/** Isolation joints: white blocks on an ink line. */
export function drawIsolationJoints(data: SheetData, frame: Frame): string {
  const d = data.joints
    .filter(j => j.kind === 'isolation')
    .map(j => isolationPath(j, data, frame))
    .join('')
  return drawPath(d, { stroke: ink, width: 4.4 }) + drawPath(d, { stroke: '#FFFFFF', width: 2.4, dash: '4 4' })
}
