import type { HostEvent } from '../../shared/host'
import { ok } from '../../shared/problem'
import type { Host } from '../host/host'
import { currentDocument } from '../store/history'
import type { SiteStore } from '../store/siteStore'
import type { Keeper } from './keeper'

type MenuEntry = Extract<HostEvent, { kind: 'menu' }>['entry']

/** Does what the program around the page asks, and tells it what its title and its closing depend on. */
export function hearHost({ api, listen }: Host, keeper: Keeper, site: SiteStore, openFile: () => void): void {
  const menu: Readonly<Partial<Record<MenuEntry, () => void>>> = {
    new: () => void keeper.startNew('New site'),
    open: openFile,
    save: () => void keeper.save(),
    saveAs: () => void keeper.saveAs(),
    print: () => void api.print({}),
    undo: () => site.undo(),
    redo: () => site.redo(),
  }
  listen(event => {
    if (event.kind === 'opened') keeper.take(ok(event.site))
    else if (event.kind === 'openFailed') keeper.setState({ failure: event.failure })
    else if (event.kind === 'closing') void keeper.close()
    else if (event.kind === 'lost') keeper.setState({ failure: { reason: 'hostGone' } })
    else menu[event.entry]?.()
  })
  let told = ''
  const tell = () => {
    const { docId, kept } = keeper.getState()
    const { history } = site.getState()
    if (docId === null || history === null) return
    const document = currentDocument(history)
    const state = { docId, title: document.name, unsaved: document !== kept }
    const now = JSON.stringify(state)
    if (now === told) return
    told = now
    void api.tellState(state)
  }
  keeper.subscribe(tell)
  site.subscribe(tell)
}
