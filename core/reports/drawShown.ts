/** Furniture, notes and tape dimensions on paper. */
import type { Pt } from '../../shared/document/primitives'
import type { Furnishing, Note, TapeDimension } from '../../shared/document/shown'
import type { Measures } from '../units/measures'
import { type Frame, ringToPage, toPage } from './frame'
import { furnishingShape } from './furnishingShape'
import { type DrawLabel, drawGround, drawTag, type Layer, planLetterPt, readingDeg, tagBox } from './layer'
import { wrapText } from './letterWidths'
import type { Candidate, LabelBox } from './placeLabels'
import {
  closedPath,
  drawCircle,
  drawPath,
  drawRect,
  drawText,
  ink,
  moveLine,
  openPath,
  softInk,
  type XY,
} from './svgPen'
import { tapeWords } from './tapeWords'

export function drawFurnishings(furnishings: readonly Furnishing[], frame: Frame): string {
  return furnishings
    .map(furnishing => {
      const { body, details } = furnishingShape(furnishing)
      return (
        drawPath(closedPath(ringToPage(frame, body)), { fill: '#FFFFFF', stroke: softInk, width: 0.9 }) +
        drawPath(details.map(line => openPath(line.map(p => toPage(frame, p)))).join(''), {
          stroke: softInk,
          width: 0.5,
        })
      )
    })
    .join('')
}

const along = (a: XY, b: XY, t: number): XY => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]

export function drawTapes(tapes: readonly TapeDimension[], frame: Frame, measures: Measures): Layer {
  const ends = (tape: TapeDimension): readonly [XY, XY] => [
    toPage(frame, tape.ends[0].last),
    toPage(frame, tape.ends[1].last),
  ]
  const bar = ([a, b]: readonly [XY, XY]): string => {
    const long = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1
    const [ux, uy] = [(b[0] - a[0]) / long, (b[1] - a[1]) / long]
    return [a, b].map(([x, y]) => moveLine([x - 5 * uy, y + 5 * ux], [x + 5 * uy, y - 5 * ux])).join('')
  }
  return {
    svg: tapes
      .map(
        tape =>
          drawPath(moveLine(...ends(tape)), { stroke: softInk, width: 0.9, dash: '8 2.5 1.5 2.5' }) +
          drawPath(bar(ends(tape)), { stroke: softInk, width: 1.5 }),
      )
      .join(''),
    wishes: tapes.map(tape => {
      const [a, b] = ends(tape)
      const text = tapeWords(tape, measures).join(', ')
      const turnDeg = readingDeg(a, b)
      return {
        dropAbove: 900,
        candidates: [0.5, 0.35, 0.65, 0.2, 0.8].map((t, i): Candidate<DrawLabel> => {
          const box = tagBox(text, along(a, b, t), planLetterPt, 'planBold', turnDeg)
          return {
            boxes: [box],
            cost: i * 8,
            place: () => drawGround(box) + drawTag(text, box, { sizePt: planLetterPt, face: 'planBold' }),
          }
        }),
      }
    }),
    segments: tapes.map(tape => ({ a: ends(tape)[0], b: ends(tape)[1], weight: 60 })),
  }
}

const noteLetterPt = planLetterPt
const lineHeight = 17

/** A pin at the place, the words on a slip beside it. */
export function drawNotes(notes: readonly Note[], frame: Frame): Layer {
  return {
    svg: notes.map(({ at }) => drawCircle(toPage(frame, at), 2.6, { fill: ink })).join(''),
    wishes: notes.map(({ at, text }) => {
      const pin = toPage(frame, at)
      const lines = wrapText(text, noteLetterPt, 'plan', 150)
      const width = Math.max(...lines.map(line => tagBox(line, pin, noteLetterPt, 'plan').width)) + 8
      const height = lines.length * lineHeight + 6
      const spots = [16, 40, 70].flatMap(far =>
        (
          [
            [1, -1],
            [1, 1],
            [-1, -1],
            [-1, 1],
          ] as const
        ).map(([sx, sy]): Pt => [pin[0] + sx * (far + width / 2), pin[1] + sy * (far * 0.7 + height / 2)]),
      )
      return {
        dropAbove: 1400,
        candidates: spots.map((center, i): Candidate<DrawLabel> => {
          const box: LabelBox = { center, width, height }
          const [x, y] = [center[0] - width / 2, center[1] - height / 2]
          const hook: XY = [center[0] > pin[0] ? x : x + width, center[1] > pin[1] ? y : y + height]
          return {
            boxes: [box],
            cost: i * 6,
            place: () =>
              drawPath(moveLine(pin, hook), { stroke: softInk, width: 0.7 }) +
              drawRect(x, y, width, height, { fill: '#FFFFFF', stroke: softInk, width: 0.7 }) +
              lines.map((line, k) => drawText(line, x + 5, y + 16 + k * lineHeight, { sizePt: noteLetterPt })).join(''),
          }
        }),
      }
    }),
    segments: [],
  }
}
