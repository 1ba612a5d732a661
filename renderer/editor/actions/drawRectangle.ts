/** Two opposite corners, or a corner with width and depth. Sides run along and up the drawing. */
import type { Pt } from '../../../shared/document/primitives'
import {
  type Drawing,
  type Drawn,
  fromMark,
  type Mark,
  startFields,
  startPrompt,
  type Turn,
  typedStart,
} from './drawing'

const sizeFields = [
  { id: 'width', label: 'Width', reads: 'length' },
  { id: 'depth', label: 'Depth', reads: 'length' },
] as const

export function drawRectangle(mark: Mark | null, corner: Pt | null = null, dragging = false): Drawing {
  const rectangle = ([x, y]: Pt, [toX, toY]: Pt): Drawn => ({
    kind: 'shape',
    shape: {
      kind: 'rectangle',
      at: [Math.min(x, toX), Math.min(y, toY)],
      widthM: Math.abs(toX - x),
      depthM: Math.abs(toY - y),
    },
  })
  const place = (at: Pt): Turn => {
    if (corner === null) return { next: drawRectangle(mark, at) }
    if (at[0] === corner[0] || at[1] === corner[1]) return { next: drawRectangle(mark, corner) }
    return { next: drawRectangle(mark), drawn: rectangle(corner, at) }
  }
  return {
    phase: dragging ? 'dragging' : corner === null ? 'idle' : 'pointing',
    prompt:
      corner === null ? startPrompt(mark, 'the first corner') : 'Click the opposite corner, or type width and depth.',
    fields: corner === null && mark !== null ? startFields : sizeFields,
    placed: corner === null ? [] : [corner],
    from: undefined,
    press: place,
    drag: () => drawRectangle(mark, corner, true),
    release: place,
    live: at =>
      corner === null
        ? mark === null
          ? {}
          : fromMark(mark, at)
        : { width: Math.abs(at[0] - corner[0]), depth: Math.abs(at[1] - corner[1]) },
    type(values, at) {
      if (corner === null && mark !== null) return place(typedStart(mark, values))
      const from = corner ?? ([0, 0] as const)
      const toward = (i: 0 | 1) => (at !== null && at[i] < from[i] ? -1 : 1)
      const widthM = values.width ?? (at === null ? 0 : Math.abs(at[0] - from[0]))
      const depthM = values.depth ?? (at === null ? 0 : Math.abs(at[1] - from[1]))
      if (widthM === 0 || depthM === 0)
        return {
          next: drawRectangle(mark, corner),
          refused: [
            { code: 'badMeasure', severity: 'stop', values: { found: 0, what: widthM === 0 ? 'width' : 'depth' } },
          ],
        }
      return {
        next: drawRectangle(mark),
        drawn: rectangle(from, [from[0] + toward(0) * widthM, from[1] + toward(1) * depthM]),
      }
    },
    finish: () => ({ next: drawRectangle(mark, corner) }),
    back: () => drawRectangle(mark),
    sketch: at =>
      corner === null || at === null || at[0] === corner[0] || at[1] === corner[1] ? null : rectangle(corner, at),
  }
}
