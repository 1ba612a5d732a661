/** A middle and a radius, or how far across. */
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
  { id: 'radius', label: 'Radius', reads: 'length' },
  { id: 'across', label: 'Across', reads: 'length' },
] as const

export function drawCircle(mark: Mark | null, center: Pt | null = null, dragging = false): Drawing {
  const circle = (middle: Pt, radiusM: number): Drawn => ({
    kind: 'shape',
    shape: { kind: 'circle', center: middle, radiusM },
  })
  const reach = (at: Pt): number => Math.hypot(at[0] - center![0], at[1] - center![1])
  const place = (at: Pt): Turn => {
    if (center === null) return { next: drawCircle(mark, at) }
    return reach(at) === 0
      ? { next: drawCircle(mark, center) }
      : { next: drawCircle(mark), drawn: circle(center, reach(at)) }
  }
  return {
    phase: dragging ? 'dragging' : center === null ? 'idle' : 'pointing',
    prompt:
      center === null
        ? startPrompt(mark, 'the middle')
        : 'Click how far it reaches, or type its radius or how far across.',
    fields: center === null && mark !== null ? startFields : sizeFields,
    placed: center === null ? [] : [center],
    from: undefined,
    press: place,
    drag: () => drawCircle(mark, center, true),
    release: place,
    live: at =>
      center === null ? (mark === null ? {} : fromMark(mark, at)) : { radius: reach(at), across: 2 * reach(at) },
    type(values, at) {
      if (center === null && mark !== null) return place(typedStart(mark, values))
      const radiusM = values.radius ?? (values.across !== undefined ? values.across / 2 : at && center ? reach(at) : 0)
      return radiusM > 0
        ? { next: drawCircle(mark), drawn: circle(center ?? [0, 0], radiusM) }
        : {
            next: drawCircle(mark, center),
            refused: [{ code: 'badMeasure', severity: 'stop', values: { found: radiusM, what: 'radius' } }],
          }
    },
    finish: () => ({ next: drawCircle(mark, center) }),
    back: () => drawCircle(mark),
    sketch: at => (center === null || at === null || reach(at) === 0 ? null : circle(center, reach(at))),
  }
}
