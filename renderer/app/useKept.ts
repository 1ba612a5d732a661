import { useStore } from 'zustand'
import { currentDocument } from '../store/history'
import { keptWords } from './fileWords'
import { useSession, useSite } from './session'

/** One line on whether the document is kept. */
export function useKept(): string {
  const { keeper } = useSession()
  const state = useStore(keeper)
  const committed = useSite(({ history }) => (history ? currentDocument(history) : null))
  return keptWords({ ...state, committed })
}
