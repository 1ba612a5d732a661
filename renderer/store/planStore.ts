/** What is derived from the document on screen: at once on the page, and in parts from the worker. */
import { createStore, type StoreApi } from 'zustand/vanilla'
import { createMemo } from '../../core/plan/memo'
import { planDate } from '../../core/plan/planDate'
import type { ScreenExtra } from '../../core/plan/screenExtras'
import { createPlanClient, type PlanClient, type PlanClientOf, type PlanState } from '../worker/planClient'
import { deriveHour, deriveLive, type LivePlan, type ShownHour } from './livePlan'
import { type SiteStore, shownDocument } from './siteStore'
import type { Stage, ViewStore } from './viewStore'

export interface DerivedState extends PlanState {
  readonly live: LivePlan | null
  readonly hour: ShownHour | null
  readonly date: string
}

export type PlanStore = StoreApi<DerivedState> & Pick<PlanClient, 'cancel' | 'goOn'>

const extrasOf: Readonly<Partial<Record<Stage, readonly ScreenExtra[]>>> = {
  sun: ['sunMaps'],
  pours: ['proposals', 'capacityMap'],
}

const setMapExtra = ['setMaps'] as const

export interface PlanStoreOf extends Omit<PlanClientOf, 'onChange'> {
  readonly siteStore: SiteStore
  readonly viewStore: ViewStore
  /** The local date as the host tells it. */
  readonly today: () => string
}

/** Follows the document and the view; the stores' listeners live as long as the page. */
export function createPlanStore({ siteStore, viewStore, today, ...client }: PlanStoreOf): PlanStore {
  const store = createStore<DerivedState>(() => ({
    live: null,
    hour: null,
    date: '',
    parts: {},
    revs: {},
    rev: 0,
    isRenewing: false,
    progress: null,
    isStopped: false,
    failure: null,
  }))
  const memo = createMemo()
  /** What the client says while a change is followed: shown with what the page works out itself, at one stroke. */
  let said: Partial<PlanState> | null = null
  const plans = createPlanClient({
    ...client,
    onChange: state => {
      if (said === null) store.setState(state)
      else said = state
    },
  })

  function follow(): void {
    said = {}
    const own = followOwn()
    const next = { ...said, ...own }
    said = null
    if (Object.keys(next).length > 0) store.setState(next)
  }

  /** Tells the client what is on screen; what of the page's own part has changed by it. */
  function followOwn(): Partial<Pick<DerivedState, 'live' | 'hour' | 'date'>> {
    const state = siteStore.getState()
    const view = viewStore.getState()
    const site = shownDocument(state)
    if (site === null) {
      if (store.getState().live !== null) plans.reset()
      return { live: null, hour: null, date: '' }
    }
    const date = planDate(site, view.date ?? undefined, today())
    const before = store.getState()
    const live = deriveLive(site, date, memo)
    const hourMs = (live.day?.startMs ?? 0) + view.minute * 60_000
    const isSame = live === before.live && hourMs === before.hour?.hourMs
    const hour = isSame ? before.hour : deriveHour(live, hourMs, memo)
    if (!isSame) memo.sweep()
    const ask = {
      date,
      focus: view.selection.at(-1) ?? null,
      extras: [...(extrasOf[view.stage] ?? []), ...(view.stage === 'pours' && view.setMapShown ? setMapExtra : [])],
      ...(view.stage === 'sun' && view.other ? { other: view.other } : {}),
      ...(view.stage === 'pours' && view.otherPour ? { otherPour: view.otherPour } : {}),
      ...(view.stage === 'pours' && view.triedStart ? { triedStart: view.triedStart } : {}),
    }
    plans.update(site, ask, state.preview !== null)
    return isSame ? {} : { live, hour, date }
  }

  siteStore.subscribe(follow)
  viewStore.subscribe(follow)
  return Object.assign(store, { cancel: plans.cancel, goOn: plans.goOn })
}
