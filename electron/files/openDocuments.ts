import { randomBytes } from 'node:crypto'
import type { SaveReport } from '../../shared/host'
import type { FileFacts } from './fileLayer'

export interface OpenDocument {
  readonly docId: string
  readonly owner: symbol
  path: string | null
  title: string
  /** The file as we last read or wrote it; null where it was not there. */
  known: FileFacts | null
  /** Whether what the file holds is already among the kept versions. */
  isKept: boolean
  readOnly: 'openElsewhere' | 'readOnly' | null
  savedOrder: number
  /** The newest order asked to be kept, and the newest that may stand in the recovery area. */
  autosavedOrder: number
  recoveredOrder: number
  lastAutosave: Promise<SaveReport | null>
}

/** An id that cannot be guessed. */
export const freshId = (): string => randomBytes(12).toString('base64url')

/** The documents of one window among those of all. */
export interface WindowDocuments {
  track(made: Pick<OpenDocument, 'path' | 'title' | 'known' | 'readOnly'>, docId?: string): OpenDocument
  /** Undefined also where another window has it. */
  find(docId: string): OpenDocument | undefined
  all(): readonly OpenDocument[]
}

export function windowDocuments(documents: Map<string, OpenDocument>): WindowDocuments {
  const owner = Symbol('window')
  return {
    track(made, docId = freshId()) {
      const document: OpenDocument = {
        ...made,
        docId,
        owner,
        isKept: false,
        savedOrder: -1,
        autosavedOrder: -1,
        recoveredOrder: -1,
        lastAutosave: Promise.resolve(null),
      }
      documents.set(docId, document)
      return document
    },
    find(docId) {
      const document = documents.get(docId)
      return document?.owner === owner ? document : undefined
    },
    all: () => [...documents.values()].filter(document => document.owner === owner),
  }
}
