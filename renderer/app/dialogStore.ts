/** Which dialog is open. Dialogs are only for files, for losing work, and for printing. */
import { createStore, type StoreApi } from 'zustand/vanilla'
import type { HostOutput } from '../../shared/host'

export type OpenDialog =
  | { readonly kind: 'openFile'; readonly files: HostOutput<'listFolder'> }
  /** `existing` where a file of that name is there already. */
  | { readonly kind: 'saveAs'; readonly name: string; readonly existing: boolean }
  /** Another program changed the file since it was opened. */
  | { readonly kind: 'changedOutside'; readonly name: string }

export type DialogStore = StoreApi<{ readonly open: OpenDialog | null }>

export const createDialogStore = (): DialogStore => createStore(() => ({ open: null as OpenDialog | null }))
