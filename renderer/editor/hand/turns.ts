/** The drawing in hand: begun, shown on the preview document, and committed once it is whole. */
import type { Id, Pt } from '../../../shared/document/primitives'
import { type ActionId, madeOf, type Options, startDrawing } from '../actions/actions'
import type { Drawing, Drawn, Mark, Turn } from '../actions/drawing'
import { cornerLetter, cornersOfSite } from '../cornerNames'
import type { Desk } from './desk'

/** What is seldom placed only once. */
const repeats: ReadonlySet<ActionId> = new Set(['tree', 'access', 'furniture', 'note'])
/** What is shown before its first point is set. */
const shownAtOnce: ReadonlySet<ActionId> = new Set(['tree', 'furniture'])

const setWords = (placed: readonly Pt[]): string => {
  const [first, last] = [placed[0]!, placed.at(-1)!]
  return placed.length > 1 && first[0] === last[0] && first[1] === last[1]
    ? 'Back at point A.'
    : `Point ${cornerLetter(placed.length - 1)} is set.`
}

/** Both ends of an arc are set, and how far it bends is asked. */
const bends = (drawing: Drawing | null): boolean => drawing?.fields.some(({ id }) => id === 'rise') ?? false

export interface Turns {
  start(action: ActionId, options: Options, mark?: Mark | null): void
  /** Shows what the drawing would come to at the aim. */
  show(): void
  /** Takes what a press, a release or Enter made of the drawing. */
  take(turn: Turn): void
  /** What was made is chosen, to be shaped next. */
  choose(made: readonly Id[]): void
}

export function createTurns({ store, site, view, committed, selection, refuse, preview, commit, tell }: Desk): Turns {
  /** What was chosen because it was made: nobody asked to measure from it. */
  let justMade: readonly Id[] = []
  /** A typed start is measured from the chosen corner, else from the last mark, else from the first corner there is. */
  const markNow = (): Mark | null => {
    const now = committed()
    if (!now) return null
    const corners = cornersOfSite(now)
    const chosen = selection() === justMade ? undefined : corners.find(({ id }) => selection().includes(id))
    const kept = store.getState().mark
    return chosen ?? (kept && corners.find(({ words }) => words === kept.words)) ?? corners[0] ?? null
  }
  const chooseMade = (made: readonly Id[]) => {
    justMade = made.slice(0, 1)
    view.setState({ selection: justMade })
  }
  const showPicked = (placed: readonly Pt[]) => {
    const { aim, picking } = store.getState()
    const points = aim ? [...placed, aim.at] : placed
    preview((points.length === picking?.prompts.length && picking.preview?.(points)) || null)
  }
  const handOver = (drawn: Drawn) => {
    const { picking, options } = store.getState()
    site.drop()
    turns.start('select', options)
    store.setState({ aim: null })
    if (drawn.kind === 'line') picking?.done(drawn.corners.map(({ at }) => at))
  }

  const turns: Turns = {
    start(action, options, mark = markNow()) {
      store.setState({
        action,
        options,
        mark,
        drawing: startDrawing(action, options, mark),
        picking: null,
        isAiming: false,
        typed: {},
        box: null,
        fault: null,
        edges: [],
      })
    },
    show() {
      const { drawing, aim, action, options, picking } = store.getState()
      const now = committed()
      if (!drawing || !now) return
      if (picking) {
        showPicked(drawing.placed)
        return
      }
      const isBegun = drawing.phase !== 'idle' || drawing.placed.length > 0 || shownAtOnce.has(action)
      const sketch = isBegun ? drawing.sketch(aim?.at ?? null) : null
      preview(sketch && (madeOf(action, sketch, options, now, selection())?.command ?? null))
    },
    take({ next, drawn, refused }) {
      const { action, options, box, drawing } = store.getState()
      const now = committed()
      if (refused) {
        store.setState({ drawing: next })
        refuse(refused)
        return
      }
      store.setState({ drawing: next, typed: {}, box: box === null ? null : 0, fault: null })
      if (!drawn || !now) {
        const [set, was] = [next.placed.length, drawing?.placed.length ?? 0]
        if (!next.isStroke && set > was) tell(setWords(next.placed))
        else if (bends(drawing) && !bends(next)) tell('The arc is set.')
        turns.show()
        return
      }
      if (store.getState().picking) {
        handOver(drawn)
        return
      }
      const made = madeOf(action, drawn, options, now, selection())
      if (!made) {
        site.drop()
        store.setState({ fault: { field: null, message: 'Draw a slab first: this belongs to one.' } })
        return
      }
      const ids = commit(made.name, made.command)
      if (!ids) return
      store.setState({ aim: null })
      if (repeats.has(action)) {
        const isTyping = store.getState().box !== null
        // A row of them is typed from one and the same corner.
        turns.start(action, options, store.getState().mark)
        if (isTyping) store.setState({ box: 0 })
        chooseMade(ids)
      } else turns.choose(ids)
    },
    choose(made) {
      turns.start('select', store.getState().options)
      chooseMade(made)
    },
  }
  return turns
}
