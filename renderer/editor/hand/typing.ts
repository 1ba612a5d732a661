/** The boxes beside the drawing: what is typed into them, and what Enter makes of it. */
import { err, ok, type Result } from '../../../shared/problem'
import type { Drawing, Values } from '../actions/drawing'
import { cornerLetter } from '../cornerNames'
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

export function createTyping({ store, site, committed, tell }: Desk, turns: Turns, edges: EdgeChoice): Typing {
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
    const isLedOn = turn.drawn !== undefined || turn.next.placed.length > drawing.placed.length
    if (!isLedOn && aim) {
      store.setState({ keyed: false })
      turns.take(drawing.isStroke ? drawing.release(aim.at) : drawing.press(aim.at))
    } else if (isLedOn) turns.take(turn)
    else store.setState({ fault: { field: null, message: drawing.prompt } })
  }
  /** A box left empty that can't be: it gets the keys, and what stands in the other one stays. */
  const askFor = ({ fields }: Drawing, values: Values): boolean => {
    const box = fields.findIndex(({ id }) => values[id] === undefined)
    const field = fields[box]
    if (!field || Object.values(values).includes(0)) return false
    const message = `Type the ${field.label.toLowerCase()} as well.`
    store.setState({ box, fault: { field: field.id, message } })
    return true
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
        const turn = drawing.type(read.value, aim?.at ?? null)
        const isMissing = turn.refused?.some(({ code, values }) => code === 'badMeasure' && values?.foundM === 0)
        if (isMissing && askFor(drawing, read.value)) return
        // What was typed has the word until the pointer moves again.
        if (!turn.refused) store.setState({ aim: null, keyed: false })
        turns.take(turn)
      }
    },
    back() {
      const { drawing } = store.getState()
      if (!drawing || drawing.placed.length === 0) return false
      const back = drawing.back()
      store.setState({ drawing: back, typed: {}, fault: null })
      site.drop()
      turns.show()
      tell(
        drawing.isStroke ? 'The last step is taken back.' : `Point ${cornerLetter(back.placed.length)} is taken back.`,
      )
      return true
    },
  }
}
