import { currentDocument } from '../store/history'
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
    const { history } = site.getState()
    const { kept, filed } = keeper.getState()
    if (history === null) return
    const document = currentDocument(history)
    if (document !== kept && document !== filed) event.preventDefault()
  })
}
