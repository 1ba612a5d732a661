/**
 * Keeps the open document with the host: what is open, whether it is kept, and autosave of the committed document. Its
 * parts stand in `keeping/` and are put together here.
 */
import type { StoreApi } from 'zustand/vanilla'
import { createAutosave } from './keeping/autosave'
import { type KeeperDesk, type KeeperOf, keeperDesk } from './keeping/desk'
import type { KeptState } from './keeping/keptState'
import { createLeaving, type Leaving } from './keeping/leaving'
import { createOpening, type Opening } from './keeping/opening'
import { createSaving, type Saving } from './keeping/saving'

export type Keeper = StoreApi<KeptState> &
  Opening &
  Saving &
  Leaving & {
    /** Keeps the newest changes in the recovery area now. */
    flush(): Promise<void>
    /** Shows the versions kept of the file. */
    showVersions(): Promise<void>
  }

export function createKeeper(of: KeeperOf): Keeper {
  const desk = keeperDesk(of)
  const autosave = createAutosave(desk)
  const { settled, ...saving } = createSaving(desk)
  return Object.assign(desk.store, {
    ...createOpening(desk),
    ...saving,
    ...createLeaving(desk, autosave, settled),
    flush: autosave.now,
    showVersions: () => showVersions(desk),
  })
}

async function showVersions({ host, dialogs, store }: KeeperDesk): Promise<void> {
  const { docId } = store.getState()
  if (docId === null) return
  const answer = await host.listVersions({ docId })
  const open = answer.ok ? { versions: answer.value, failure: null } : { versions: [], failure: answer.error }
  dialogs.setState({ open: { kind: 'versions', ...open } })
}
