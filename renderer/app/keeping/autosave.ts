/** The committed document in the recovery area, soon after it changed. */
import { serializeSite } from '../../../core/document/serializeSite'
import type { KeeperDesk } from './desk'

/** Below the one second the document may be unsaved for. */
const autosaveMs = 700

export interface Autosave {
  /** Keeps the newest changes without waiting. */
  now(): Promise<void>
  /** Waits for nothing any more, until the document changes again. */
  stop(): void
}

export function createAutosave({ host, site, store, committed, nextOrder, tellTrouble }: KeeperDesk): Autosave {
  let timer: ReturnType<typeof setTimeout> | null = null
  const stop = () => {
    if (timer !== null) clearTimeout(timer)
    timer = null
  }
  const now = async (): Promise<void> => {
    stop()
    const document = committed()
    const { docId, kept } = store.getState()
    if (document === null || docId === null || document === kept) return
    const answer = await host.autosave({
      docId,
      title: document.name,
      text: serializeSite(document),
      order: nextOrder(),
    })
    if (store.getState().docId !== docId) return
    if (!answer.ok) tellTrouble('recovery', 'notSaved', answer.error)
    else if (answer.value.outcome === 'saved') {
      store.setState(({ trouble }) => ({
        kept: document,
        keptAt: answer.ok && answer.value.outcome === 'saved' ? answer.value.at : null,
        trouble: trouble?.where === 'recovery' ? null : trouble,
      }))
    } else tellTrouble('recovery', answer.value.outcome, { reason: answer.value.reason })
  }
  site.subscribe((state, before) => {
    if (state.rev === before.rev || state.history === null) return
    stop()
    timer = setTimeout(() => void now(), autosaveMs)
  })
  return { now, stop }
}
