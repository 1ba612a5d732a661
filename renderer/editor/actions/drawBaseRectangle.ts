/** A rectangle in any direction: two corners of its base line, then how deep it is to one side. */
import { leftOf } from '../../../core/geometry/leftOf'
import type { Pt } from '../../../shared/document/primitives'
import { directionOf, unitOf } from '../entry/directions'
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
} from './drawing'

const baseFields: readonly Field[] = [
  { id: 'length', label: 'Length', reads: 'length' },
  { id: 'direction', label: 'Direction', reads: 'direction' },
]
const depthFields: readonly Field[] = [{ id: 'depth', label: 'Depth', reads: 'length' }]

const farFrom = (a: Pt, b: Pt): number => Math.hypot(b[0] - a[0], b[1] - a[1])

export function drawBaseRectangle(mark: Mark | null, set: readonly Pt[] = [], dragging = false): Drawing {
  const [a, b] = set
  const rest = (points: readonly Pt[] = []) => drawBaseRectangle(mark, points)
  const drawn = (from: Pt, to: Pt, deepM: number): Drawn => {
    const widthM = farFrom(from, to)
    const [nx, ny] = [-(to[1] - from[1]) / widthM, (to[0] - from[0]) / widthM]
    const far: readonly Pt[] = [to, from].map(([x, y]): Pt => [x + nx * deepM, y + ny * deepM])
    return { kind: 'shape', shape: { kind: 'corners', corners: [from, to, ...far].map(at => ({ at })) } }
  }
  const end = (deepM: number): Turn =>
    deepM === 0 ? refusedMeasure(rest(set), 'depth') : { next: rest(), drawn: drawn(a!, b!, deepM) }
  const place = (at: Pt): Turn => {
    if (a !== undefined && b !== undefined) return end(leftOf(a, b, at))
    return { next: rest(a !== undefined && farFrom(a, at) === 0 ? set : [...set, at]) }
  }
  return {
    phase: dragging ? 'dragging' : a === undefined ? 'idle' : 'pointing',
    prompt:
      a === undefined
        ? startPrompt(mark, 'one end of the base line')
        : b === undefined
          ? 'Click the other end of the base line, or type its length and direction.'
          : 'Click how deep it is, or type the depth.',
    fields: b !== undefined ? depthFields : a === undefined && mark !== null ? startFields : baseFields,
    placed: set,
    from: b === undefined ? a : undefined,
    byDrag: true,
    press: place,
    drag: () => drawBaseRectangle(mark, set, true),
    release(at) {
      const last = set.at(-1)
      return last !== undefined && farFrom(last, at) === 0 ? { next: rest(set) } : place(at)
    },
    live(at) {
      if (a === undefined) return mark === null ? {} : fromMark(mark, at)
      return b === undefined
        ? { length: farFrom(a, at), direction: directionOf(a, at) }
        : { depth: Math.abs(leftOf(a, b, at)) }
    },
    type(values, at) {
      if (a !== undefined && b !== undefined) {
        const pointed = at === null ? 0 : leftOf(a, b, at)
        const deepM = values.depth ?? Math.abs(pointed)
        return end(pointed < 0 ? -deepM : deepM)
      }
      if (a === undefined && mark !== null) return place(typedStart(mark, values))
      const from = a ?? ([0, 0] as const)
      const lengthM = values.length ?? (at === null ? 0 : farFrom(from, at))
      if (lengthM === 0) return refusedMeasure(rest(set), 'length of the base line')
      const [ux, uy] = unitOf(values.direction ?? (at === null ? 90 : directionOf(from, at)))
      return { next: rest([from, [from[0] + ux * lengthM, from[1] + uy * lengthM]]) }
    },
    finish: () => ({ next: rest(set) }),
    back: () => rest(set.slice(0, -1)),
    sketch(at) {
      if (a === undefined || at === null) return null
      if (b === undefined) return farFrom(a, at) === 0 ? null : { kind: 'line', corners: [{ at: a }, { at }] }
      const deepM = leftOf(a, b, at)
      return deepM === 0 ? { kind: 'line', corners: [{ at: a }, { at: b }] } : drawn(a, b, deepM)
    },
  }
}
