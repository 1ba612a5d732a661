/** The document put away: for another one, or with the window. */
import type { Held } from '../dialogStore'
import { fileStem } from '../fileStem'
import type { Autosave } from './autosave'
import type { KeeperDesk, Next } from './desk'
import { type KeptState, nothing } from './keptState'

export interface Leaving {
  /** Puts the document away, then goes on; asks first where no file holds the work. `leaving`: the window goes too. */
  leave(options?: { readonly leaving?: boolean; readonly next?: Next }): Promise<void>
  /** Puts the document away without its file: `aside` offers the work again, else it is thrown away. */
  putAway(options: { readonly aside: boolean; readonly leaving: boolean; readonly next: Next }): Promise<void>
}

const heldOf = ({ trouble, readOnly, fileName }: KeptState): Held => {
  if (trouble?.failure.reason === 'hostGone') return 'gone'
  if (readOnly !== null) return 'copy'
  return fileName === null ? 'none' : 'file'
}

export function createLeaving(
  { host, site, dialogs, store, committed }: KeeperDesk,
  autosave: Autosave,
  settled: () => Promise<unknown>,
): Leaving {
  const put = async (keepRecovery: boolean, leaving: boolean, next: Next) => {
    autosave.stop()
    const { docId } = store.getState()
    if (docId !== null) await host.close({ docId, keepRecovery, leaving })
    site.close()
    store.setState(nothing)
    next?.()
  }
  return {
    async leave({ leaving = false, next } = {}) {
      await settled()
      const document = committed()
      const { docId, filed, fileName } = store.getState()
      if (docId !== null && document !== null && document !== filed) {
        await autosave.now()
        const name = fileName === null ? document.name : fileStem(fileName)
        dialogs.setState({ open: { kind: 'closing', name, held: heldOf(store.getState()), leaving, next } })
        return
      }
      await put(false, leaving, next)
    },
    async putAway({ aside, leaving, next }) {
      if (aside) await autosave.now()
      // Where it could not be put aside the site stays open, and the trouble is told.
      if (aside && committed() !== store.getState().kept) return
      await put(aside, leaving, next)
    },
  }
}
