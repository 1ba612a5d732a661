/** The pointer on the plan: what is drawn, what is chosen for a border, what is carried. */
import type { Pt } from '../../../shared/document/primitives'
import type { Drawing } from '../actions/drawing'
import type { Desk } from './desk'
import type { EdgeChoice } from './edgeChoice'
import { choosesEdges } from './editorState'
import type { Grip } from './grip'
import { type Hand, handAim } from './handAim'
import type { Turns } from './turns'

export interface Pointer {
  /** True where the editor takes the pointer; false leaves it to choosing and to moving the plan. */
  down(at: Pt, hand: Hand): boolean
  move(at: Pt, hand: Hand): void
  up(at: Pt, hand: Hand, moved: boolean): void
  leave(): void
  /** A second finger came down: what the first one began is taken back. */
  cancel(): void
}

export function createPointer(desk: Desk, turns: Turns, edges: EdgeChoice, grip: Grip): Pointer {
  const { store, site, view, committed } = desk
  let beforePress: Drawing | null = null

  const press = (drawing: Drawing, at: Pt, hand: Hand) => {
    const aim = handAim(desk, at, hand)
    const isAiming = hand.touch === true && (!drawing.byDrag || drawing.placed.length > 0)
    store.setState({ aim, keyed: false, isAiming })
    if (isAiming) {
      turns.show()
      return
    }
    beforePress = drawing
    turns.take(drawing.press(aim.at))
  }

  return {
    down(at, hand) {
      if (!committed() || view.getState().stage !== 'slab') return false
      store.setState({ isUnderFinger: hand.touch === true })
      const { drawing, action } = store.getState()
      if (drawing) press(drawing, at, hand)
      else if (choosesEdges(store.getState())) edges.press(at, hand)
      else return action === 'select' && grip.take(at, hand)
      return true
    },
    move(at, hand) {
      if (grip.holds()) {
        grip.move(at, hand)
        return
      }
      const { drawing, isAiming } = store.getState()
      if (!drawing) {
        if (store.getState().aim) store.setState({ aim: null })
        return
      }
      const aim = handAim(desk, at, hand)
      const dragged = beforePress && hand.pressed && !isAiming ? drawing.drag(aim.at) : drawing
      store.setState({ aim, drawing: dragged, keyed: false })
      turns.show()
    },
    up(at, hand, moved) {
      store.setState({ isUnderFinger: false })
      if (grip.holds()) {
        grip.end(at, hand, moved)
        return
      }
      const { drawing, isAiming } = store.getState()
      if (isAiming && drawing) {
        const aim = handAim(desk, at, hand)
        store.setState({ aim: null, isAiming: false })
        turns.take(drawing.press(aim.at))
        return
      }
      beforePress = null
      if (!drawing || !moved) return
      const aim = handAim(desk, at, hand)
      store.setState({ aim })
      turns.take(drawing.release(aim.at))
    },
    leave() {
      const { keyed, aim } = store.getState()
      if (grip.holds() || keyed || !aim) return
      store.setState({ aim: null })
      turns.show()
    },
    cancel() {
      site.drop()
      grip.drop()
      const drawing = beforePress ?? store.getState().drawing
      beforePress = null
      store.setState({ drawing, aim: null, carrying: false, isAiming: false, isUnderFinger: false })
      turns.show()
    },
  }
}
