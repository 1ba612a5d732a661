/** What is looked at and how; never saved with the document and never an undo step. */

import { createStore, type StoreApi } from 'zustand/vanilla'
import type { CurveRegion } from '../../core/geometry/curve'
import type { OtherDay, OtherPour } from '../../core/plan/deriveScreen'
import type { TriedStart } from '../../core/plan/planDayPlans'
import type { PourPart } from '../../shared/document/pours'
import type { Pt } from '../../shared/document/primitives'

export const stages = ['slab', 'sun', 'pours', 'numbers', 'sheets', 'log'] as const
export type Stage = (typeof stages)[number]

export const themes = ['light', 'dark', 'sunlight'] as const
export type Theme = (typeof themes)[number]

/** Pours looked at before they are taken: drawn on the plan in place of the part's own. */
export interface TrialSplit {
  readonly slabId: string
  readonly part: PourPart
  readonly pours: readonly { readonly number: string; readonly region: CurveRegion; readonly areaM2: number }[]
  readonly joints: readonly { readonly from: Pt; readonly to: Pt; readonly lengthM: number }[]
  /** Pours of the part that stay as they are. */
  readonly keptPourIds: readonly string[]
}

export interface ViewState {
  readonly stage: Stage
  readonly theme: Theme
  /** Ids of entities, the last chosen last. */
  readonly selection: readonly string[]
  /** The figure that is opened, by its id; its geometry is lit. */
  readonly openFigure: string | null
  /** The shown hour, as minutes from the site day's first instant, so that another date keeps the hour. */
  readonly minute: number
  /** The date asked for; null follows the document. */
  readonly date: string | null
  /** Another day laid beside the one shown; null for none. */
  readonly other: OtherDay | null
  /** A point of a slab asked about in the sun stage. */
  readonly pin: { readonly at: Pt; readonly slabId: string } | null
  /** Two points on the edge of the shade as it lies on the slab today, while they are being marked. */
  readonly marking: readonly Pt[] | null
  readonly markedSlabId: string | null
  /** Minutes to ready on the plan, in the pours stage. */
  readonly setMapShown: boolean
  /** A pour planned otherwise, laid beside its plan; null for none. */
  readonly otherPour: OtherPour | null
  /** Where the hand holds the start of a pour that is only proposed; null for none. */
  readonly triedStart: TriedStart | null
  /** Of the card under the hand or with the focus; null for none. */
  readonly trial: TrialSplit | null
  /** What the last edit refused, or did besides its purpose. */
  readonly notice: string | null
  /** Sheets that are neither shown nor sent, by their ids. */
  readonly leftOut: readonly string[]
  readonly clientView: boolean
  readonly outlineShown: boolean
  /** The pour on the screen at the slab; null while the planner is shown. */
  readonly atSlab: string | null
  readonly slabTheme: Theme
  /** The cautions of the day were read. */
  readonly cautionsSeen: boolean
}

export type ViewStore = StoreApi<ViewState>

const start: ViewState = {
  stage: 'slab',
  theme: 'light',
  selection: [],
  openFigure: null,
  minute: 10 * 60,
  date: null,
  other: null,
  pin: null,
  marking: null,
  markedSlabId: null,
  setMapShown: false,
  otherPour: null,
  triedStart: null,
  trial: null,
  notice: null,
  leftOut: [],
  clientView: false,
  outlineShown: false,
  atSlab: null,
  slabTheme: 'sunlight',
  cautionsSeen: false,
}

export const createViewStore = (): ViewStore => createStore<ViewState>(() => start)

/** Back to the first stage with nothing selected, as for a site just opened; the theme stays. */
export const resetView = (view: ViewStore): void => view.setState(({ theme }) => ({ ...start, theme }))
