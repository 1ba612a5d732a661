/** One point: a tree, a truck spot, a note. */
import { type Drawing, fromMark, type Mark, startFields, startPrompt, typedStart } from './drawing'

export function placeSpot(mark: Mark | null, what: string): Drawing {
  const drawing: Drawing = {
    phase: 'idle',
    prompt: startPrompt(mark ?? { at: [0, 0], words: 'the middle of the sheet' }, what),
    fields: startFields,
    placed: [],
    from: undefined,
    press: at => ({ next: placeSpot(mark, what), drawn: { kind: 'spot', at } }),
    drag: () => drawing,
    release: () => ({ next: drawing }),
    live: at => fromMark(mark, at),
    type: values => ({ next: placeSpot(mark, what), drawn: { kind: 'spot', at: typedStart(mark, values) } }),
    finish: () => ({ next: drawing }),
    back: () => drawing,
    sketch: at => (at === null ? null : { kind: 'spot', at }),
  }
  return drawing
}
