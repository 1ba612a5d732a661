/** Which dialog is open. Dialogs are only for files, for losing work, and for printing. */
import { createStore, type StoreApi } from 'zustand/vanilla'
import type { HostOutput } from '../../shared/host'

/** What was going to happen when the dialog had to ask; it happens once the work is safe. */
type Next = (() => void) | undefined

export type OpenDialog =
  | { readonly kind: 'openFile'; readonly files: HostOutput<'listFolder'> }
  /** `existing` where a file of that name is there already. */
  | { readonly kind: 'saveAs'; readonly name: string; readonly existing: boolean; readonly next: Next }
  /** Another program changed the file since it was opened. */
  | { readonly kind: 'changedOutside'; readonly name: string; readonly next: Next }
  /** The site is to be put away with changes that no file holds. */
  | {
      readonly kind: 'closing'
      readonly name: string
      readonly hasFile: boolean
      readonly leaving: boolean
      readonly next: Next
    }
  /** The file is open in another window. */
  | { readonly kind: 'openElsewhere'; readonly name: string }
  | { readonly kind: 'versions'; readonly versions: HostOutput<'listVersions'> }
  /** Unsaved work of last time is to be let go for good. */
  | { readonly kind: 'letGo'; readonly title: string; readonly drop: () => void }

export type DialogStore = StoreApi<{ readonly open: OpenDialog | null }>

export const createDialogStore = (): DialogStore => createStore(() => ({ open: null as OpenDialog | null }))
