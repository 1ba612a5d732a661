/** Keys pressed on the plan: into the boxes, as steps of the aim, and Esc. */
import type { Pt } from '../../../shared/document/primitives'
import { actionWords } from '../actions/actions'
import type { Desk } from './desk'
import type { Grip } from './grip'
import { aimWords } from './telling'
import type { Turns } from './turns'
import type { Typing } from './typing'

export interface Keys {
  /** The arrow keys carry the aim, from the last point or from `middle`. */
  carry(by: Pt, middle: Pt): void
  /** A key pressed while no box had the focus; true where it went to the boxes, which then have the keys. */
  key(key: string): boolean
  /** Takes back one thing at a time: what is carried, what is typed, what is drawn, the action, the choice. */
  escape(): void
}

export function createKeys(
  { site, view, store, committed, tell }: Desk,
  turns: Turns,
  grip: Grip,
  typing: Typing,
): Keys {
  const toBox = (key: string): boolean => {
    const { drawing, box, typed } = store.getState()
    const fields = drawing?.fields ?? []
    const field = fields[box ?? 0]
    if (!field) return false
    const text = typed[field.id] ?? ''
    if (box === null) {
      if (!(field.signed ? /^[-−\d.]$/ : /^[\d.]$/).test(key)) return false
      typing.write(field.id, key)
      typing.attend(0)
    } else if (key.length === 1) typing.write(field.id, text + key)
    else if (key === 'Enter') typing.enter()
    else if (key === 'Escape') keys.escape()
    else if (key === 'Tab') typing.attend((box + 1) % fields.length)
    else if (key === 'Backspace') {
      if (text === '') typing.back()
      else typing.write(field.id, text.slice(0, -1))
    } else return false
    return true
  }
  const keys: Keys = {
    carry(by, middle) {
      const { drawing, aim } = store.getState()
      if (!drawing) return
      const from = aim?.at ?? drawing.placed.at(-1) ?? middle
      const at: Pt = [from[0] + by[0], from[1] + by[1]]
      store.setState({
        aim: { at, caught: null },
        drawing: drawing.isStroke ? drawing.drag(at) : drawing,
        keyed: true,
        fault: null,
      })
      turns.show()
      tell(aimWords(drawing, at, committed()?.units ?? 'ftin'))
    },
    key(key) {
      const { stage, clientView } = view.getState()
      return stage === 'slab' && !clientView && toBox(key)
    },
    escape() {
      const { drawing, action, options, typed, edges, picking } = store.getState()
      site.drop()
      if (grip.holds()) {
        grip.drop()
        store.setState({ carrying: false, aim: null })
      } else if (Object.values(typed).some(text => text !== '')) {
        store.setState({ typed: {}, fault: null })
        turns.show()
      } else if ((drawing && drawing.placed.length > 0) || edges.length > 0 || picking) {
        turns.start(action, options)
        tell('Dropped.')
      } else if (action !== 'select') {
        turns.start('select', options)
        tell(actionWords.select)
      } else if (view.getState().selection.length > 0) {
        view.setState({ selection: [] })
        store.setState({ fault: null })
        tell('Nothing is chosen.')
      }
    },
  }
  return keys
}
