/** A map of each day: what is poured, what is still fresh, and which doors the fresh concrete closes. */

import type { Pt } from '../../shared/document/primitives'
import { distanceToEdge, ringContains } from '../geometry/contains'
import { tangentAt } from '../geometry/edgeAt'
import { printDay } from '../units/printDay'
import { boxFrame } from './boxFrame'
import { drawCasterShapes } from './drawCasters'
import { drawOutlines } from './drawSlabs'
import { curveRegionPath, type Frame, regionRings, toPage } from './frame'
import { drawHatch, type Hatch } from './hatch'
import { boxPointsInside, type DrawLabel, drawGround, drawTag, type PageRect, pointsInside } from './layer'
import { drawNorthArrow } from './northArrow'
import { papers, turnPaper } from './paper'
import { type Candidate, type LabelBox, type LabelWish, placeLabels } from './placeLabels'
import type { Picture } from './shadeMaps'
import type { SheetData, SheetDay, SheetPour, SheetWay } from './sheetData'
import { drawPath, drawRect, drawText, ink, moveLine, num, openSvg, softInk, widthOf, type XY } from './svgPen'

const columns = 2
const rows = 2
const edge = 30
const headHeight = 82
const captionHeight = 27
const gap = 16
/** Room around the slab for the names of the doors. */
const pad = 27
const letterPt = 14

/** Told apart by hatch alone, so that a black and white copy says the same. */
const looks = {
  today: {
    fill: '#C9CED3',
    hatch: { kind: 'lines', anglesDeg: [45, -45], spacingPt: 5, widthPt: 0.8 } satisfies Hatch,
    text: 'poured this day',
  },
  fresh: {
    fill: '#F4F4F4',
    hatch: { kind: 'dots', spacingPt: 5, radiusPt: 0.9 } satisfies Hatch,
    text: 'still fresh: keep off',
  },
  hard: { fill: '#E3E6E9', hatch: null, text: 'hard: walk on it' },
  base: { fill: '#FFFFFF', hatch: null, text: 'base, not yet poured' },
} as const

type Look = keyof typeof looks

const lookOf = (day: SheetDay, pourId: string): Look =>
  day.pourIds.includes(pourId)
    ? 'today'
    : day.freshPourIds.includes(pourId)
      ? 'fresh'
      : day.hardPourIds.includes(pourId)
        ? 'hard'
        : 'base'

interface Door {
  /** Where it stands at the slab's edge, on the page. */
  readonly at: XY
  /** Along the edge and away from the slab, on the page. */
  readonly along: XY
  readonly out: XY
  readonly halfPt: number
}

function doorOf(way: SheetWay, data: SheetData, frame: Frame): Door {
  const outlines = data.slabs.map(slab => slab.outline)
  const nearest = outlines
    .flat()
    .reduce((best, e) => (distanceToEdge(e, way.at) < distanceToEdge(best, way.at) ? e : best))
  const [tx, ty] = tangentAt(nearest, 0)
  const beside: Pt = [way.at[0] + 0.05 * ty, way.at[1] - 0.05 * tx]
  const sign = outlines.some(ring => ringContains(ring, beside)) ? -1 : 1
  return {
    at: toPage(frame, way.at),
    along: [tx, -ty],
    out: [sign * ty, sign * tx],
    halfPt: Math.max(7, (way.widthM / 2) * frame.ptPerM),
  }
}

/** An open door is a white bar; a closed one is black, with a cross before it. */
function drawDoor({ at: [x, y], along: [ax, ay], out: [ox, oy], halfPt }: Door, isClosed: boolean): string {
  const a: XY = [x - ax * halfPt, y - ay * halfPt]
  const b: XY = [x + ax * halfPt, y + ay * halfPt]
  const bar =
    drawPath(moveLine(a, b), { stroke: ink, width: 7 }) +
    (isClosed ? '' : drawPath(moveLine(a, b), { stroke: '#FFFFFF', width: 4 }))
  if (!isClosed) return bar
  const at = (u: number, v: number): XY => [x + ax * u - ox * v, y + ay * u - oy * v]
  const cross = moveLine(at(-6, 6), at(6, 18)) + moveLine(at(6, 6), at(-6, 18))
  return bar + drawPath(cross, { stroke: '#FFFFFF', width: 6 }) + drawPath(cross, { stroke: ink, width: 2.6 })
}

const crossBox = ({ at: [x, y], out: [ox, oy] }: Door): LabelBox => ({
  center: [x - 12 * ox, y - 12 * oy],
  width: 18,
  height: 18,
})

/** The number of a pour; that of the day stands in a frame. */
function numberWish(pour: SheetPour, isToday: boolean, frame: Frame, window: PageRect): LabelWish<DrawLabel> {
  const rings = regionRings(frame, pour.region)
  const face = isToday ? 'name' : 'plan'
  const width = widthOf(pour.number, letterPt, face) + (isToday ? 8 : 3)
  const height = isToday ? 18 : 14
  const candidates = pointsInside(rings, window, 12).map(({ at, fromMiddlePt }): Candidate<DrawLabel> => {
    const box: LabelBox = { center: at, width, height }
    return {
      boxes: [box],
      cost: fromMiddlePt * 0.3 + (8 - boxPointsInside(box, rings)) * 25,
      place: () =>
        (isToday
          ? drawRect(at[0] - width / 2, at[1] - height / 2, width, height, { fill: '#FFFFFF', stroke: ink, width: 1.4 })
          : drawGround(box)) + drawTag(pour.number, box, { sizePt: letterPt, face }),
    }
  })
  return { candidates, ...(isToday ? {} : { dropAbove: 500 }) }
}

function doorWish(way: SheetWay, door: Door, isClosed: boolean): LabelWish<DrawLabel> {
  const text = isClosed ? `${way.name} closed` : way.name
  const face = isClosed ? 'planBold' : 'plan'
  const width = widthOf(text, letterPt, face) + 6
  const [ox, oy] = door.out
  const isUpright = Math.abs(ox) > Math.abs(oy)
  const spots = [0, -1, 1].flatMap(slide =>
    [15, 28].map((away, level): Candidate<DrawLabel> => {
      const center: XY = [
        door.at[0] + ox * away + (door.along[0] * slide * width) / 3,
        door.at[1] + oy * away + (door.along[1] * slide * width) / 3,
      ]
      const box: LabelBox = { center, width, height: letterPt + 4, turnDeg: isUpright ? 90 : 0 }
      return {
        boxes: [box],
        cost: Math.abs(slide) * 20 + level * 30,
        place: () => drawDoorName(text, box, face),
      }
    }),
  )
  return { candidates: spots }
}

function drawDoorName(text: string, box: LabelBox, face: 'plan' | 'planBold'): string {
  const [cx, cy] = box.center
  const ground = drawRect(cx - box.width / 2, cy - box.height / 2, box.width, box.height, { fill: '#FFFFFF' })
  const turned = box.turnDeg === 90 ? `<g transform="rotate(-90 ${num(cx)} ${num(cy)})">${ground}</g>` : ground
  return turned + drawTag(text, box, { sizePt: letterPt, face })
}

function drawMap(data: SheetData, day: SheetDay, box: PageRect, clipId: string): string {
  const frame = boxFrame(
    data.slabs.map(({ outline }) => outline),
    box,
    pad,
  )
  const ways = data.ways ?? []
  const isClosed = (way: SheetWay): boolean => day.closedWayIds.includes(way.id)
  const grounds = data.pours.map(pour => {
    const look = looks[lookOf(day, pour.id)]
    const d = curveRegionPath(frame, pour.region)
    return (
      drawPath(d, { fill: look.fill, evenOdd: true }) +
      (look.hatch === null ? '' : drawHatch(regionRings(frame, pour.region), look.hatch, ink)) +
      drawPath(d, { stroke: softInk, width: 0.8, evenOdd: true })
    )
  })
  const outlines = drawOutlines(data, frame)
  const doors = ways.map(way => ({ way, door: doorOf(way, data, frame) }))
  const labels = placeLabels(
    [
      ...doors.map(({ way, door }) => doorWish(way, door, isClosed(way))),
      ...[...data.pours]
        .sort((a, b) => Number(day.pourIds.includes(b.id)) - Number(day.pourIds.includes(a.id)))
        .map(pour => numberWish(pour, day.pourIds.includes(pour.id), frame, box)),
    ],
    {
      segments: outlines.segments,
      boxes: doors.filter(({ way }) => isClosed(way)).map(({ door }) => ({ box: crossBox(door), weight: 200 })),
      bounds: { x0: box.x, y0: box.y, x1: box.x + box.width, y1: box.y + box.height },
    },
  )
  const numbers = day.pourIds.map(id => data.pours.find(p => p.id === id)?.number ?? '?')
  const closed = ways.filter(isClosed)
  const when = day.date === null ? `Day ${day.day}` : printDay(day.date, 'short')
  const open =
    closed.length === 0
      ? 'all ways open'
      : closed.length === ways.length
        ? 'no way open: plan a plank'
        : `${ways.length - closed.length} of ${ways.length} ways open`
  return [
    `<clipPath id="${clipId}"><rect x="${num(box.x)}" y="${num(box.y)}" width="${num(box.width)}" height="${num(box.height)}"/></clipPath>`,
    `<g clip-path="url(#${clipId})">`,
    drawCasterShapes(
      data.casters.filter(({ kind }) => kind === 'building' || kind === 'wall'),
      frame,
      true,
    ),
    ...grounds,
    outlines.svg,
    ...doors.map(({ way, door }) => drawDoor(door, isClosed(way))),
    ...labels.map(draw => draw?.() ?? ''),
    '</g>',
    drawRect(box.x, box.y, box.width, box.height, { stroke: softInk, width: 0.6 }),
    drawText(`${when}: pour ${numbers.join(' and ')}`, box.x, box.y - 7, { sizePt: 18, face: 'name' }),
    drawText(open, box.x + box.width, box.y - 7, { sizePt: letterPt, face: 'planBold', anchor: 'end' }),
  ].join('\n')
}

function drawKey(x: number, y: number): string {
  let at = x
  return (Object.keys(looks) as Look[])
    .map(name => {
      const { fill, hatch, text } = looks[name]
      const ring: XY[] = [
        [at, y - 12],
        [at + 26, y - 12],
        [at + 26, y + 2],
        [at, y + 2],
      ]
      const swatch =
        drawRect(at, y - 12, 26, 14, { fill }) +
        (hatch === null ? '' : drawHatch([ring], hatch, ink)) +
        drawRect(at, y - 12, 26, 14, { stroke: ink, width: 0.8 }) +
        drawText(text, at + 32, y, { sizePt: letterPt })
      at += 32 + widthOf(text, letterPt) + 20
      return swatch
    })
    .join('')
}

/** Pages of four maps, a map for each day with a pour; none where no way in and out is named. */
export function courtMaps(data: SheetData): Picture[] {
  const days = data.days ?? []
  if (days.length === 0 || (data.ways ?? []).length === 0) return []
  const { widthPt, heightPt } = turnPaper(data.units === 'ftin' ? papers.letter : papers.a4, 'landscape')
  const width = (widthPt - 2 * edge - (columns - 1) * gap) / columns
  const height = (heightPt - 2 * edge - headHeight - rows * captionHeight - (rows - 1) * gap) / rows
  const pageCount = Math.ceil(days.length / (columns * rows))
  return Array.from({ length: pageCount }, (_, page): Picture => {
    const maps = days.slice(page * columns * rows, (page + 1) * columns * rows).map((day, i) => {
      const box: PageRect = {
        x: edge + (i % columns) * (width + gap),
        y: edge + headHeight + captionHeight + Math.floor(i / columns) * (height + captionHeight + gap),
        width,
        height,
      }
      return drawMap(data, day, box, `day${page * columns * rows + i + 1}`)
    })
    const svg = [
      openSvg(widthPt, heightPt),
      drawRect(0, 0, widthPt, heightPt, { fill: '#FFFFFF' }),
      drawText('Doors open and closed, day by day', edge, edge + 22, { sizePt: 23, face: 'name' }),
      drawText(
        `${data.siteName}${pageCount > 1 ? `, page ${page + 1} of ${pageCount}` : ''}. A black door with a cross is closed all that day. Not to scale.`,
        edge,
        edge + 43,
        { sizePt: letterPt },
      ),
      drawKey(edge, edge + 66),
      drawPath(`M${edge} ${edge + 76}h${num(widthPt - 2 * edge)}`, { stroke: ink, width: 2 }),
      drawNorthArrow([widthPt - edge - 24, edge + 30], 15, data.place.northDeg),
      ...maps,
      '</svg>',
      '',
    ].join('\n')
    return { svg, widthPt, heightPt }
  })
}
