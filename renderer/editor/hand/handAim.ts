/** Where the hand on the plan is taken to point. */
import type { Id, Pt } from '../../../shared/document/primitives'
import { type Aim, aimAt } from '../aim'
import type { Desk } from './desk'

export interface Hand {
  /** Screen pixels per meter. */
  readonly zoom: number
  /** Catches nothing. */
  readonly free?: boolean
  /** The pointer is down. */
  readonly pressed?: boolean
  /** A finger: it hides what is under it, and cannot point without pressing. */
  readonly touch?: boolean
}

/** How near on the screen something is taken hold of: a fingertip covers some 44 px. */
export const reachPx = ({ touch }: Hand, px: number): number => (touch ? Math.max(px, 22) : px)

/** `carried`: what goes with the hand, and never holds it. */
export function handAim(
  { store, committed, print }: Desk,
  at: Pt,
  { zoom, free = false }: Hand,
  carried: readonly Id[] = [],
): Aim {
  const now = committed()
  const { drawing, picking } = store.getState()
  if (!now) return { at, caught: null }
  return aimAt(
    at,
    { site: now, zoom, selection: carried, from: drawing?.from, placed: drawing?.placed ?? [], print: print() },
    free || picking?.catches === false,
  )
}
