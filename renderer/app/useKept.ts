import { useStore } from 'zustand'
import { keptWords } from './fileWords'
import { useCommitted, useSession } from './session'

/** One line on whether the document is kept. */
export function useKept(): string {
  const { keeper } = useSession()
  const state = useStore(keeper)
  const committed = useCommitted()
  return keptWords({ ...state, committed })
}
