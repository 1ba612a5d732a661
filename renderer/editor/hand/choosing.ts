/** What is drawn, and how. */
import type { Id } from '../../../shared/document/primitives'
import { type ActionId, hasForms, isDrawnAlike, type Options, usualOptions } from '../actions/actions'
import type { Mark } from '../actions/drawing'
import { pickPoints } from '../actions/pickPoints'
import type { Desk } from './desk'
import type { EdgeChoice } from './edgeChoice'
import { choosesEdges, type Picking } from './editorState'
import type { Turns } from './turns'

export interface Choosing {
  choose(action: ActionId): void
  /** Asks for places on the plan; Esc, or any action, drops the question. */
  pick(picking: Picking): void
  setOptions(change: Partial<Options>): void
  setMark(mark: Mark): void
  chooseEdges(ids: readonly Id[]): void
}

export function createChoosing({ site, view, store }: Desk, turns: Turns, edges: EdgeChoice): Choosing {
  return {
    choose(action) {
      site.drop()
      const { options, forms } = store.getState()
      const form = forms[action] ?? usualOptions.form
      // An arc belongs to the shape it was drawn in.
      const { edge } = usualOptions
      turns.start(action, hasForms(action, options) ? { ...options, edge, form } : { ...options, edge })
    },
    pick(picking) {
      site.drop()
      turns.start('select', store.getState().options)
      store.setState(({ mark }) => ({
        picking,
        drawing: pickPoints(picking.prompts, mark),
      }))
    },
    setOptions(change) {
      const { action, options, drawing, forms } = store.getState()
      const asked = { ...options, ...change }
      const { form } = change
      // A kind that has forms after one that had none starts in its own, not in that of the action before.
      const comesToForms = form === undefined && hasForms(action, asked) && !hasForms(action, options)
      const next = comesToForms ? { ...asked, form: forms[action] ?? usualOptions.form } : asked
      if (form !== undefined) store.setState(({ forms }) => ({ forms: { ...forms, [action]: form } }))
      // A change of how the next edge runs must not cost the corners already set.
      const isKept = isDrawnAlike(action, options, next)
      if (isKept && drawing && drawing.placed.length > 0 && !('form' in change)) {
        const again = change.edge === undefined ? drawing : (drawing.withEdge?.(change.edge) ?? drawing)
        // What stands in a box that goes with the other kind of edge is not kept for one that is not there.
        const boxes = new Set(again.fields.map(({ id }) => id))
        store.setState(({ typed }) => ({
          options: next,
          drawing: again,
          typed: Object.fromEntries(Object.entries(typed).filter(([id]) => boxes.has(id))),
        }))
        turns.show()
      } else if (isKept && choosesEdges({ ...store.getState(), options: next })) {
        store.setState({ options: next })
        edges.show()
      } else {
        site.drop()
        turns.start(action, next)
      }
    },
    setMark(mark) {
      const { action, options } = store.getState()
      view.setState({ selection: [] })
      turns.start(action, options, mark)
    },
    chooseEdges: edges.set,
  }
}
