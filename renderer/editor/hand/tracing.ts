/** Field notes in hand: points tied by tape, until a slab is drawn through them, and edges walked in order. */
import type { Pt } from '../../../shared/document/primitives'
import { madeOf } from '../actions/actions'
import type { WalkNotes } from '../entry/readWalk'
import type { Desk } from './desk'
import type { Turns } from './turns'

export interface Tracing {
  trace(at: Pt): void
  untrace(): void
  drawTraced(): void
  writeWalk(walk: WalkNotes): void
}

export function createTracing({ store, committed, commit }: Desk, turns: Turns): Tracing {
  return {
    trace(at) {
      store.setState(({ traced }) => ({ traced: [...traced, at] }))
    },
    untrace() {
      store.setState(({ traced }) => ({ traced: traced.slice(0, -1) }))
    },
    drawTraced() {
      const { traced, options } = store.getState()
      const now = committed()
      const shape = { kind: 'corners', corners: traced.map(at => ({ at })) } as const
      const made = now && madeOf('slab', { kind: 'shape', shape }, options, now, [])
      const ids = made && commit(made.name, made.command)
      if (!ids) return
      store.setState({ traced: [] })
      turns.choose(ids)
    },
    writeWalk(walk) {
      store.setState({ walk })
    },
  }
}
