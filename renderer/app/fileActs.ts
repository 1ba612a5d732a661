/** What can be done with the file, by name; the program's menu and the page's own list both choose from these. */
import type { HostEvent } from '../../shared/host'
import { unnamed } from './emptySite'
import type { Session } from './session'

export type FileAct = Extract<HostEvent, { kind: 'menu' }>['entry'] | 'startPage'

type ActsOf = Pick<Session, 'host' | 'keeper' | 'site' | 'view' | 'openFile'>

export function fileActs({ host, keeper, site, view, openFile }: ActsOf): Readonly<Record<FileAct, () => void>> {
  return {
    new: () => void keeper.leave({ next: () => void keeper.startNew(unnamed) }),
    open: () => void keeper.leave({ next: openFile }),
    save: () => void keeper.save(),
    saveAs: () => void keeper.saveAs(),
    versions: () => void keeper.showVersions(),
    // Sheets and tables leave the program from their stage.
    export: () => view.setState({ stage: 'sheets' }),
    print: () =>
      void host.print({}).then(answer => {
        if (!answer.ok && answer.error.reason === 'notHere') window.print()
      }),
    undo: () => site.undo(),
    redo: () => site.redo(),
    startPage: () => void keeper.leave(),
  }
}
