/** What the client's drawing shows; kept while the page is open, never saved with the site. */
import { create } from 'zustand'
import { papers } from '../../../core/reports/paper'
import type { Site } from '../../../shared/document/site'

export const clientPapers = ['letter', 'tabloid', 'a4', 'a3'] as const
export type ClientPaper = (typeof clientPapers)[number]

export const paperWords: Readonly<Record<ClientPaper, string>> = {
  letter: papers.letter.name,
  tabloid: papers.tabloid.name,
  a4: papers.a4.name,
  a3: papers.a3.name,
}

export interface ClientState {
  /** The choices are of this site. */
  readonly siteId: string | null
  readonly paper: ClientPaper
  readonly title: string
  readonly client: string
  readonly showAreas: boolean
  readonly showPrice: boolean
  /** A total typed by hand; the site's prices where empty. */
  readonly total: string
  readonly showPours: boolean
  readonly signed: boolean
}

const fresh: ClientState = {
  siteId: null,
  paper: 'letter',
  title: '',
  client: '',
  showAreas: false,
  showPrice: false,
  total: '',
  showPours: false,
  signed: true,
}

const store = create<ClientState>(() => fresh)

/** Whether areas were asked for on the client's drawing of a site. */
export const useClientAreas = (siteId: string | undefined): boolean =>
  store(state => state.siteId === siteId && state.showAreas)

/** The choices for a site; another site starts afresh. */
export function useClient(site: Site): readonly [ClientState, (change: Partial<ClientState>) => void] {
  const state = store()
  const own =
    state.siteId === site.id
      ? state
      : { ...fresh, siteId: site.id, paper: site.units === 'metric' ? ('a4' as const) : ('letter' as const) }
  return [own, change => store.setState({ ...own, ...change })]
}
