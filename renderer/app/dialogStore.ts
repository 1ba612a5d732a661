/** Which dialog is open. Dialogs are only for files, for losing work, and for printing. */
import { createStore, type StoreApi } from 'zustand/vanilla'
import type { FileFailure, HostOutput } from '../../shared/host'

/** What was going to happen when the dialog had to ask; it happens once the work is safe. */
type Next = (() => void) | undefined

/** Where a site can be kept that is to be put away: `copy` where its file may only be looked at, `gone` nowhere. */
export type Held = 'file' | 'none' | 'copy' | 'gone'

export type OpenDialog =
  | { readonly kind: 'openFile'; readonly files: HostOutput<'listFolder'> }
  /** `refused`: why the name it was asked to be saved under was not taken. */
  | {
      readonly kind: 'saveAs'
      readonly name: string
      readonly refused: 'exists' | 'nameRefused' | null
      readonly next: Next
    }
  /** Another program changed the file since it was opened. */
  | { readonly kind: 'changedOutside'; readonly name: string; readonly next: Next }
  /** The site is to be put away with changes that no file holds. */
  | {
      readonly kind: 'closing'
      readonly name: string
      readonly held: Held
      readonly leaving: boolean
      readonly next: Next
    }
  /** The file is open in another window. */
  | { readonly kind: 'openElsewhere'; readonly name: string }
  /** `failure`: why they could not be listed. */
  | {
      readonly kind: 'versions'
      readonly versions: HostOutput<'listVersions'>
      readonly failure: FileFailure | null
    }
  /** Unsaved work of last time is to be let go for good. */
  | { readonly kind: 'letGo'; readonly title: string; readonly drop: () => void }

export type DialogStore = StoreApi<{ readonly open: OpenDialog | null }>

export const createDialogStore = (): DialogStore => createStore(() => ({ open: null as OpenDialog | null }))
