/** The stores of one page, and how components reach them. */
import { createContext, useContext } from 'react'
import { useStore } from 'zustand'
import { useShallow } from 'zustand/react/shallow'
import type { HostApi, StartInfo } from '../../shared/host'
import type { DerivedState, PlanStore } from '../store/planStore'
import type { SiteState, SiteStore } from '../store/siteStore'
import type { ViewState, ViewStore } from '../store/viewStore'
import type { DialogStore } from './dialogStore'
import type { Keeper } from './keeper'

export interface Session {
  readonly host: HostApi
  readonly start: StartInfo
  readonly site: SiteStore
  readonly view: ViewStore
  readonly plan: PlanStore
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

export const useSite = <T>(select: (state: SiteState) => T): T => useStore(useSession().site, useShallow(select))
export const useView = <T>(select: (state: ViewState) => T): T => useStore(useSession().view, useShallow(select))
export const usePlan = <T>(select: (state: DerivedState) => T): T => useStore(useSession().plan, useShallow(select))
