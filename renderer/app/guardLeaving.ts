import { committedDocument } from '../store/siteStore'
import type { Session } from './session'

/**
 * In a browser tab, which nobody asks before it goes: the newest changes are kept when the tab is hidden, and leaving
 * is held up only while there are changes that are kept nowhere.
 */
export function guardLeaving({ keeper, site }: Pick<Session, 'keeper' | 'site'>): void {
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void keeper.flush()
  })
  window.addEventListener('beforeunload', event => {
    const { kept, filed } = keeper.getState()
    const document = committedDocument(site.getState())
    if (document !== null && document !== kept && document !== filed) event.preventDefault()
  })
}
