import type { Site } from '../../../shared/document/site'
import type { FileFailure, SaveReport } from '../../../shared/host'
import type { Problem } from '../../../shared/problem'
import type { WriteTrouble } from '../fileWords'

type Saved = Extract<SaveReport, { outcome: 'saved' }>

export interface KeptState {
  readonly docId: string | null
  /** A site is on its way: keys pressed meanwhile are meant for it. */
  readonly isOpening: boolean
  readonly fileName: string | null
  /** Why the file may be looked at but not saved to. */
  readonly readOnly: 'openElsewhere' | 'readOnly' | null
  /** The committed document that the file, or the recovery area, holds. */
  readonly kept: Site | null
  readonly keptAt: string | null
  /** The committed document that putting the site away would not lose: in its file, or never changed. */
  readonly filed: Site | null
  readonly filedAt: string | null
  /** The last save that went through. */
  readonly saved: Saved | null
  readonly trouble: WriteTrouble | null
  /** Why something could not be opened or listed. */
  readonly failure: FileFailure | null
  /** Why a file would not open, and its name where it has one. */
  readonly problems: readonly Problem[]
  readonly problemsIn: string | null
}

/** With no site open. */
export const nothing: KeptState = {
  docId: null,
  isOpening: false,
  fileName: null,
  readOnly: null,
  kept: null,
  keptAt: null,
  filed: null,
  filedAt: null,
  saved: null,
  trouble: null,
  failure: null,
  problems: [],
  problemsIn: null,
}
