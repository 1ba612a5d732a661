/** Places pointed out on the plan, one after the other, for what a form asks: nothing is drawn by it. */
import type { Pt } from '../../../shared/document/primitives'
import { directionOf, unitOf } from '../entry/directions'
import {
  type Drawing,
  type Drawn,
  fromMark,
  type Mark,
  refusedMeasure,
  startFields,
  type Turn,
  typedStart,
} from './drawing'

/** `prompts`: what each place is, in the order they are asked for. At least one. */
export function pickPoints(prompts: readonly string[], mark: Mark | null, placed: readonly Pt[] = []): Drawing {
  const last = placed.at(-1)
  const drawnOf = (points: readonly Pt[]): Drawn => ({ kind: 'line', corners: points.map(at => ({ at })) })
  const place = (at: Pt): Turn => {
    if (last !== undefined && last[0] === at[0] && last[1] === at[1]) return refusedMeasure(drawing, 'length of a line')
    const all = [...placed, at]
    return all.length < prompts.length
      ? { next: pickPoints(prompts, mark, all) }
      : { next: pickPoints(prompts, mark), drawn: drawnOf(all) }
  }
  const drawing: Drawing = {
    phase: last === undefined ? 'idle' : 'pointing',
    prompt: prompts[placed.length] ?? '',
    fields:
      last === undefined
        ? startFields
        : [
            { id: 'length', label: 'Length', reads: 'length' },
            { id: 'direction', label: 'Direction', reads: 'direction' },
          ],
    placed,
    from: last,
    press: place,
    drag: () => drawing,
    // Dragged from one place to the next; a click that trembled sets one.
    release: at => (last === undefined || (last[0] === at[0] && last[1] === at[1]) ? { next: drawing } : place(at)),
    live: at =>
      last === undefined
        ? fromMark(mark, at)
        : { length: Math.hypot(at[0] - last[0], at[1] - last[1]), direction: directionOf(last, at) },
    type(values, at) {
      if (last === undefined) return place(typedStart(mark, values))
      const pointed = at === null ? 90 : directionOf(last, at)
      const [ux, uy] = unitOf(values.direction ?? pointed)
      const lengthM = values.length ?? (at === null ? 0 : Math.hypot(at[0] - last[0], at[1] - last[1]))
      if (!(lengthM > 0))
        return {
          next: drawing,
          refused: [{ code: 'badMeasure', severity: 'stop', values: { foundM: lengthM, what: 'length of a line' } }],
        }
      return place([last[0] + ux * lengthM, last[1] + uy * lengthM])
    },
    finish: () => ({ next: drawing }),
    back: () => pickPoints(prompts, mark, placed.slice(0, -1)),
    sketch: at => (last === undefined ? null : drawnOf(at === null ? placed : [...placed, at])),
  }
  return drawing
}
