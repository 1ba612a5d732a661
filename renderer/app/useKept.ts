import { useStore } from 'zustand'
import { currentDocument } from '../store/history'
import { fileWords } from './fileWords'
import { useSession, useSite } from './session'

const clock = new Intl.DateTimeFormat('en-US', { hour: 'numeric', minute: '2-digit' })

/** One line on whether the document is kept: "Kept 9:31 on this computer". */
export function useKept(): string {
  const { keeper } = useSession()
  const { kept, keptAt, failure } = useStore(keeper)
  const committed = useSite(({ history }) => (history ? currentDocument(history) : null))
  if (failure) return `Not kept. ${fileWords(failure)}`
  if (kept !== committed) return 'Not kept yet'
  if (keptAt === null) return 'As it was opened'
  return `Kept ${clock.format(new Date(keptAt))} on this computer`
}
