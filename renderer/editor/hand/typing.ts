/** The boxes beside the drawing: what is typed into them, and what Enter makes of it. */
import { err, ok, type Result } from '../../../shared/problem'
import type { Drawing, Values } from '../actions/drawing'
import { readField } from '../entry/readField'
import type { Desk } from './desk'
import type { EdgeChoice } from './edgeChoice'
import { choosesEdges, type EditorState } from './editorState'
import type { Turns } from './turns'

export interface Typing {
  write(field: string, text: string): void
  /** The box that has the focus; null where the plan has it. */
  attend(box: number | null): void
  enter(): void
  /** True where there was something to take back. */
  back(): boolean
}

export function createTyping({ store, site, committed }: Desk, turns: Turns, edges: EdgeChoice): Typing {
  /** Empty boxes are left out; the first that can't be read has the fault, and gets the keys. */
  const readBoxes = ({ fields }: Drawing): Result<Values, Pick<EditorState, 'box' | 'fault'>> => {
    const { typed } = store.getState()
    const now = committed()
    if (!now) return ok({})
    const values: Record<string, number> = {}
    for (const [box, field] of fields.entries()) {
      const text = typed[field.id]?.trim() ?? ''
      if (text === '') continue
      const value = readField(field, text, now)
      if (!value.ok) return err({ box, fault: { field: field.id, message: value.error.message } })
      values[field.id] = value.value
    }
    return ok(values)
  }
  /** Enter in empty boxes; where nothing is there to be ended, it sets the point the arrow keys carry. */
  const finish = (drawing: Drawing) => {
    const { keyed, aim } = store.getState()
    const turn = keyed ? { next: drawing } : drawing.finish()
    if (!turn.drawn && aim) {
      store.setState({ keyed: false })
      turns.take(drawing.press(aim.at))
    } else turns.take(turn)
  }
  return {
    write(field, text) {
      store.setState(({ typed }) => ({ typed: { ...typed, [field]: text }, fault: null }))
    },
    attend(box) {
      if (store.getState().box !== box) store.setState({ box })
    },
    enter() {
      const { drawing, aim } = store.getState()
      if (choosesEdges(store.getState())) {
        edges.finish()
        return
      }
      if (!drawing) return
      const read = readBoxes(drawing)
      if (!read.ok) store.setState(read.error)
      else if (Object.keys(read.value).length === 0) finish(drawing)
      else {
        // What was typed has the word until the pointer moves again.
        store.setState({ aim: null, keyed: false })
        turns.take(drawing.type(read.value, aim?.at ?? null))
      }
    },
    back() {
      const { drawing } = store.getState()
      if (!drawing || drawing.placed.length === 0) return false
      store.setState({ drawing: drawing.back(), typed: {}, fault: null })
      site.drop()
      turns.show()
      return true
    },
  }
}
