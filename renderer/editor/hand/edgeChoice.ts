/** Edges chosen one by one for the border that runs along them. */
import type { Command } from '../../../core/document/commands/editSite'
import { findEdge } from '../../../core/document/commands/findPath'
import { addBorder } from '../../../core/document/commands/slabParts'
import type { Id, Pt } from '../../../shared/document/primitives'
import { pickEdge } from '../pickPart'
import type { Desk } from './desk'
import { type Hand, reachPx } from './handAim'
import type { Turns } from './turns'

export interface EdgeChoice {
  /** Shows the border along what is chosen. */
  show(): void
  /** Adds the edge that is pressed, or takes it out; an edge of another path begins anew. */
  press(at: Pt, hand: Hand): void
  set(edges: readonly Id[]): void
  /** Commits the border and chooses it. */
  finish(): void
}

export function createEdgeChoice({ store, committed, preview, commit }: Desk, turns: Turns): EdgeChoice {
  const border = (): Command | null => {
    const { edges, options } = store.getState()
    const now = committed()
    const found = edges[0] === undefined || !now ? undefined : findEdge(now, edges[0])
    const slab =
      found && now?.slabs.find(s => s.outline.id === found.path.id || s.openings.some(o => o.path.id === found.path.id))
    if (!found || !slab || !now) return null
    const whole = found.path.edges.every(({ id }) => edges.includes(id))
    return addBorder(slab.id, {
      pathId: found.path.id,
      edges: whole ? 'all' : edges,
      widthM: options.widthM,
      finishId: options.finishId ?? now.finishes.at(-1)?.id ?? '',
      placed: options.placed,
    })
  }
  const choice: EdgeChoice = {
    show: () => preview(border()),
    press(at, hand) {
      const now = committed()
      const edge = now && pickEdge(now, at, reachPx(hand, 12) / hand.zoom)
      if (!edge) {
        store.setState({ fault: { field: null, message: 'No edge of a slab or an opening lies there.' } })
        return
      }
      const path = findEdge(now, edge)?.path
      const kept = store.getState().edges.filter(id => path?.edges.some(each => each.id === id))
      choice.set(kept.includes(edge) ? kept.filter(id => id !== edge) : [...kept, edge])
    },
    set(edges) {
      store.setState({ edges, fault: null })
      choice.show()
    },
    finish() {
      const command = border()
      const made = command && commit('border', command)
      if (made) turns.choose(made)
    },
  }
  return choice
}
