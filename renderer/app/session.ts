/** The stores of one page, and how components reach them. */
import { createContext, useContext, useRef } from 'react'
import { useStore } from 'zustand'
import type { Site } from '../../shared/document/site'
import type { HostApi, StartInfo } from '../../shared/host'
import type { Shown } from '../store/calmStore'
import type { DerivedState, PlanStore } from '../store/planStore'
import { committedDocument, type SiteState, type SiteStore } from '../store/siteStore'
import type { ViewState, ViewStore } from '../store/viewStore'
import type { DialogStore } from './dialogStore'
import type { Keeper } from './keeper'

export interface Session {
  readonly host: HostApi
  readonly start: StartInfo
  readonly site: SiteStore
  readonly view: ViewStore
  readonly plan: PlanStore
  /** The plan at a reader's pace: for what is read beside it, never for what a hand is at. */
  readonly calmPlan: Shown<DerivedState>
  readonly keeper: Keeper
  readonly dialogs: DialogStore
  /** By the system's dialog on the desktop, else from a list of the folder. */
  readonly openFile: () => void
}

export const SessionContext = createContext<Session | null>(null)

export function useSession(): Session {
  const session = useContext(SessionContext)
  if (!session) throw new Error('no session around this component')
  return session
}

const isPick = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype

function isSamePick(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true
  if (!isPick(a) || !isPick(b)) return false
  const keys = Object.keys(a)
  return keys.length === Object.keys(b).length && keys.every(key => Object.hasOwn(b, key) && Object.is(a[key], b[key]))
}

/**
 * The last pick as long as a new one has the same fields: asked of every component at every change of a store, so it
 * looks no deeper and makes nothing. A list is another where it is another object.
 */
export function usePick<S, T>(select: (state: S) => T): (state: S) => T {
  const last = useRef<T>(undefined)
  return state => {
    const picked = select(state)
    if (last.current === undefined || !isSamePick(last.current, picked)) last.current = picked
    return last.current
  }
}

export const useSite = <T>(select: (state: SiteState) => T): T => useStore(useSession().site, usePick(select))
/** The document without the gesture in hand: what a form is about that follows no pointer. */
export const useCommitted = (): Site | null => useSite(committedDocument)
export const useView = <T>(select: (state: ViewState) => T): T => useStore(useSession().view, usePick(select))
export const usePlan = <T>(select: (state: DerivedState) => T): T => useStore(useSession().plan, usePick(select))
export const useCalmPlan = <T>(select: (state: DerivedState) => T): T =>
  useStore(useSession().calmPlan, usePick(select))
