/** What every drawing action is: a small state chart that knows nothing of the screen. */
import type { Shape, ShapeCorner } from '../../../core/document/commands/drawShape'
import type { Pt } from '../../../shared/document/primitives'
import type { Finding } from '../../../shared/problem'

/** What a finished drawing, or the one in hand, comes to. */
export type Drawn =
  | { readonly kind: 'shape'; readonly shape: Shape }
  | { readonly kind: 'line'; readonly corners: readonly ShapeCorner[] }
  | { readonly kind: 'spot'; readonly at: Pt }

export type Reads = 'length' | 'direction' | 'turn'

/** One labeled box. */
export interface Field {
  readonly id: string
  readonly label: string
  readonly reads: Reads
  /** Less than zero means something: a sign begins what is typed. */
  readonly signed?: true
}

/** Meters, or degrees, by the box they were typed into. */
export type Values = Readonly<Record<string, number | undefined>>

export interface Turn {
  readonly next: Drawing
  readonly drawn?: Drawn
  readonly refused?: readonly Finding[]
}

export interface Drawing {
  readonly phase: 'idle' | 'pointing' | 'dragging'
  /** Says what comes next, in one line. */
  readonly prompt: string
  readonly fields: readonly Field[]
  /** Points that are set, in order. */
  readonly placed: readonly Pt[]
  /** Where the line in hand starts: what "square to" and "alongside" are about. */
  readonly from: Pt | undefined
  /** Its first point is set by a press that may be dragged on, under a finger too. */
  readonly byDrag?: true
  /** A stroke is in hand: each step of the arrow keys goes on with it, and Enter ends it. */
  readonly isStroke?: true
  /** The pointer went down, or a point was chosen by the keys. */
  press(at: Pt): Turn
  /** The pointer moved while it was down. */
  drag(at: Pt): Drawing
  /** The pointer came up after a drag. */
  release(at: Pt): Turn
  /** What the boxes would say for a pointer there. */
  live(at: Pt): Values
  /** Boxes left empty follow the pointer, or the usual where there is none. */
  type(values: Values, at: Pt | null): Turn
  /** Enter in empty boxes: closes, or ends the line. */
  finish(): Turn
  /** Takes the last point back. */
  back(): Drawing
  sketch(at: Pt | null): Drawn | null
  /** Draws the next edge straight or as an arc; what is set stays. */
  readonly withEdge?: (edge: 'straight' | 'arc') => Drawing
}

/** Where a typed start is measured from; null on an empty sheet, where a drawing starts at the origin. */
export interface Mark {
  readonly at: Pt
  /** "corner A of Patio". */
  readonly words: string
}

export const startFields: readonly Field[] = [
  { id: 'right', label: 'Right', reads: 'length', signed: true },
  { id: 'up', label: 'Up', reads: 'length', signed: true },
]

export const typedStart = (mark: Mark | null, { right = 0, up = 0 }: Values): Pt =>
  mark === null ? [right, up] : [mark.at[0] + right, mark.at[1] + up]

export const fromMark = (mark: Mark | null, at: Pt): Values => ({
  right: at[0] - (mark?.at[0] ?? 0),
  up: at[1] - (mark?.at[1] ?? 0),
})

export const startPrompt = (mark: Mark | null, what: string): string =>
  mark === null ? `Type a length or click ${what}.` : `Click ${what}, or type it from ${mark.words}.`

/** A measure of zero makes no shape; what was set before stays. */
export const refusedMeasure = (next: Drawing, what: string): Turn => ({
  next,
  refused: [{ code: 'badMeasure', severity: 'stop', values: { foundM: 0, what } }],
})
