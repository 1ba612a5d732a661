import type { Command } from '../../../core/document/commands/editSite'
import type { Id, Pt } from '../../../shared/document/primitives'
import { type ActionId, type Options, usualOptions } from '../actions/actions'
import type { Drawing, Mark } from '../actions/drawing'
import type { Aim } from '../aim'
import { blankWalk, type WalkNotes } from '../entry/readWalk'
import type { Said } from './telling'

/** What a form wants pointed out on the plan. */
export interface Picking {
  /** What each place is, in order. */
  readonly prompts: readonly string[]
  /** False where corners and edges must not pull the pointer: on a picture. */
  readonly catches: boolean
  /** What the places would come to, shown while the last one is aimed at. */
  readonly preview?: (points: readonly Pt[]) => Command | null
  readonly done: (points: readonly Pt[]) => void
}

export interface EditorState {
  readonly action: ActionId
  readonly options: Options
  /** How each kind of thing was drawn last: a round planter makes no round house. */
  readonly forms: Readonly<Partial<Record<ActionId, Options['form']>>>
  readonly drawing: Drawing | null
  /** Places are pointed out for a form, with nothing drawn. */
  readonly picking: Picking | null
  /** The pointer, or the point the arrow keys carry; null while neither is on the plan. */
  readonly aim: Aim | null
  /** A finger is aiming: the point is set where it is lifted. */
  readonly isAiming: boolean
  /** The aim follows a finger on the glass, which hides it. */
  readonly isUnderFinger: boolean
  /** What is typed into the boxes, by their ids. */
  readonly typed: Readonly<Record<string, string>>
  /** The box that keys go to, whether or not it stands on the page yet; null while they go to the plan. */
  readonly box: number | null
  /** Why the last thing typed or drawn was refused, and which box it stood in; or, of what was done, what it did besides. */
  readonly fault: { readonly field: string | null; readonly message: string; readonly isDone?: boolean } | null
  /** Edges chosen for a border. */
  readonly edges: readonly Id[]
  readonly mark: Mark | null
  /** Points tied by tape, in order; not in the document until a slab is drawn through them. */
  readonly traced: readonly Pt[]
  /** Edges walked in order, as they are typed. */
  readonly walk: WalkNotes
  /** The aim is carried by the arrow keys. */
  readonly keyed: boolean
  /** The selection is being carried. */
  readonly carrying: boolean
  /** Something was copied, here or in a site that was open before. */
  readonly hasCopy: boolean
  /** What a screen reader is told. */
  readonly said: Said
}

/** Of a site that was just opened. */
export const freshState: EditorState = {
  action: 'select',
  options: usualOptions,
  forms: {},
  drawing: null,
  picking: null,
  aim: null,
  isAiming: false,
  isUnderFinger: false,
  typed: {},
  box: null,
  fault: null,
  edges: [],
  mark: null,
  traced: [],
  walk: blankWalk,
  keyed: false,
  carrying: false,
  hasCopy: false,
  said: { words: '' },
}

/** Edges are chosen for a border, with nothing drawn. */
export const choosesEdges = ({ action, options }: Pick<EditorState, 'action' | 'options'>): boolean =>
  action === 'border' && options.strip === 'border'
