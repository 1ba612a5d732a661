import { ok } from '../../shared/problem'
import type { Host } from '../host/host'
import { committedDocument } from '../store/siteStore'
import { fileActs } from './fileActs'
import type { Session } from './session'

/** Does what the program around the page asks, and tells it what its title and its closing depend on. */
export function hearHost({ api, listen }: Host, session: Session): void {
  const { keeper, site } = session
  const acts = fileActs(session)
  listen(event => {
    if (event.kind === 'opened') keeper.take(ok(event.site))
    else if (event.kind === 'openFailed') keeper.setState({ failure: event.failure })
    else if (event.kind === 'closing') void keeper.leave({ leaving: true })
    else if (event.kind === 'lost') {
      const failure = { reason: 'hostGone' as const }
      keeper.setState({ failure, trouble: { where: 'recovery', outcome: 'notSaved', failure } })
    } else acts[event.entry]()
  })
  let told = ''
  const tell = () => {
    const { docId, filed } = keeper.getState()
    const document = committedDocument(site.getState())
    if (docId === null || document === null) return
    const state = { docId, title: document.name, unsaved: document !== filed }
    const now = JSON.stringify(state)
    if (now === told) return
    told = now
    void api.tellState(state)
  }
  keeper.subscribe(tell)
  site.subscribe(tell)
}
