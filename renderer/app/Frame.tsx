import { useEffect } from 'react'
import { PlanCanvas } from '../editor/PlanCanvas'
import { Ledger } from '../ledger/Ledger'
import { PlanOutline } from '../outline/PlanOutline'
import { DayRail } from '../rail/DayRail'
import { SheetPages } from '../sheets/SheetPages'
import { StageBar } from './StageBar'
import { usePlan, useSession, useView } from './session'

const withoutRail: ReadonlySet<string> = new Set(['numbers', 'sheets', 'log'])

/** Undo, redo and save by the platform's keys; Esc drops the gesture in hand. */
function useKeys() {
  const { site, keeper } = useSession()
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const target = event.target as HTMLElement | null
      const isTyping = target?.matches('input, textarea, [contenteditable]') ?? false
      if (event.key === 'Escape') {
        site.drop()
        return
      }
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return
      const key = event.key.toLowerCase()
      if (key === 's') void keeper.save()
      else if (isTyping) return
      else if (key === 'z' && !event.shiftKey) site.undo()
      else if (key === 'y' || key === 'z') site.redo()
      else return
      event.preventDefault()
    }
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [site, keeper])
}

/** Says aloud what the eye sees change: the plan renewed, the plan that failed. */
function Announcer() {
  const { failure } = usePlan(({ failure }) => ({ failure }))
  return (
    <div className="visually-hidden" role="status">
      {failure ? `The plan could not be worked out. ${failure}` : ''}
    </div>
  )
}

export function Frame() {
  useKeys()
  const { stage, clientView } = useView(({ stage, clientView }) => ({ stage, clientView }))
  const showsRail = !withoutRail.has(stage)
  return (
    <div className="app" data-stage={stage} data-client={clientView || undefined}>
      <StageBar />
      <main className="plan" aria-label="Plan">
        {stage === 'sheets' ? (
          <SheetPages />
        ) : (
          <>
            <PlanCanvas />
            <PlanOutline />
          </>
        )}
      </main>
      <Ledger />
      {showsRail ? <DayRail /> : null}
      <Announcer />
    </div>
  )
}
