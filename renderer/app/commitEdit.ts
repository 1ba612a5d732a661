/** Every edit of a page goes through here; where its words are shown is left to the caller. */
import type { Command } from '../../core/document/commands/editSite'
import type { Id } from '../../shared/document/primitives'
import { committedDocument, type SiteStore } from '../store/siteStore'
import { wordFindings } from './wordFindings'

export interface Committed {
  /** Ids of what was made; null where the edit was refused and the document stays as it was. */
  readonly made: readonly Id[] | null
  /** Why it was refused, or what it did besides its purpose; empty for nothing to tell. */
  readonly words: string
}

/** A command as one named step of undo; `by` a hand that is likely to push again, or at one stroke. */
export function commitEdit(site: SiteStore, name: string, command: Command, by: 'push' | 'apply' = 'apply'): Committed {
  const document = committedDocument(site.getState())
  if (!document) return { made: null, words: '' }
  const result = command(document)
  if (result.ok) site[by](name, () => result.value)
  else site.drop()
  return {
    made: result.ok ? result.made : null,
    words: wordFindings(document, result.ok ? result.findings : result.error),
  }
}
