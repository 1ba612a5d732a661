/** A shape of two points: the first is set by a click or from the mark, the second ends it. */
import type { Pt } from '../../../shared/document/primitives'
import {
  type Drawing,
  type Drawn,
  type Field,
  fromMark,
  type Mark,
  refusedMeasure,
  startFields,
  startPrompt,
  type Turn,
  typedStart,
  type Values,
} from './drawing'

export interface TwoPoints {
  readonly firstWords: string
  readonly secondPrompt: string
  readonly fields: readonly Field[]
  /** What the boxes say with the pointer at `at`. */
  measure(first: Pt, at: Pt): Values
  /** Null where the two make nothing. */
  drawn(first: Pt, second: Pt): Drawn | null
  /** The second point by what was typed; the name of the measure that is missing where it makes nothing. */
  second(first: Pt, values: Values, at: Pt | null): Pt | string
}

export function drawTwoPoints(shape: TwoPoints, mark: Mark | null, first: Pt | null = null, dragging = false): Drawing {
  const again = (at: Pt | null = null) => drawTwoPoints(shape, mark, at)
  const place = (at: Pt): Turn => {
    if (first === null) return { next: again(at) }
    const drawn = shape.drawn(first, at)
    if (drawn !== null) return { next: again(), drawn }
    const missing = shape.second(first, {}, at)
    return typeof missing === 'string' ? refusedMeasure(again(first), missing) : { next: again(first) }
  }
  const isFirst = (at: Pt) => first !== null && first[0] === at[0] && first[1] === at[1]
  return {
    phase: dragging ? 'dragging' : first === null ? 'idle' : 'pointing',
    prompt: first === null ? startPrompt(mark, shape.firstWords) : shape.secondPrompt,
    fields: first === null && mark !== null ? startFields : shape.fields,
    placed: first === null ? [] : [first],
    from: undefined,
    byDrag: true,
    press: place,
    drag: () => drawTwoPoints(shape, mark, first, true),
    // A click that trembled sets its first point, and asks for no second.
    release: at => (isFirst(at) ? { next: again(first) } : place(at)),
    live: at => (first !== null ? shape.measure(first, at) : mark === null ? {} : fromMark(mark, at)),
    type(values, at) {
      if (first === null && mark !== null) return place(typedStart(mark, values))
      const from = first ?? ([0, 0] as const)
      const to = shape.second(from, values, at)
      if (typeof to === 'string') return refusedMeasure(again(first), to)
      const drawn = shape.drawn(from, to)
      return drawn === null ? { next: again(first) } : { next: again(), drawn }
    },
    finish: () => ({ next: again(first) }),
    back: () => again(),
    sketch: at => (first === null || at === null ? null : shape.drawn(first, at)),
  }
}
