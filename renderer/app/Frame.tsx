import './narrow.css'
import { useStore } from 'zustand'
import { PlanCanvas } from '../editor/PlanCanvas'
import { Ledger } from '../ledger/Ledger'
import { PlanOutline } from '../outline/PlanOutline'
import { DayRail } from '../rail/DayRail'
import { SheetPages } from '../sheets/SheetPages'
import { ClientSheetPage } from '../slab/client/ClientSheetPage'
import { fileStem } from './fileStem'
import { StageBar } from './StageBar'
import { usePlan, useSession, useView } from './session'
import { useSaid } from './useSaid'
import { WorkLine } from './WorkLine'

const withoutRail: ReadonlySet<string> = new Set(['numbers', 'sheets', 'log'])

/** Says aloud what the eye sees change: what the keys did, the file that was saved, the plan that failed. */
function Announcer() {
  const { keeper } = useSession()
  const { saved, fileName } = useStore(keeper)
  const { failure } = usePlan(({ failure }) => ({ failure }))
  const { words, times } = useSaid()
  return (
    <>
      <div className="visually-hidden" role="status">
        {failure ? `The plan could not be worked out. ${failure}` : ''}
      </div>
      <div className="visually-hidden" role="status">
        {/* Put in anew each time: the same words are heard again. */}
        <span key={times}>{words}</span>
      </div>
      <div className="visually-hidden" role="status">
        {saved && fileName !== null ? <span key={saved.at}>Kept in {fileStem(fileName)}.</span> : null}
      </div>
    </>
  )
}

/** In client view only the client's own drawing. */
function Pages() {
  const clientView = useView(state => state.clientView)
  const live = usePlan(state => state.live)
  return clientView && live ? <ClientSheetPage live={live} /> : <SheetPages />
}

export function Frame() {
  const { stage, clientView } = useView(({ stage, clientView }) => ({ stage, clientView }))
  const showsRail = !withoutRail.has(stage)
  return (
    <div className="app" data-stage={stage} data-client={clientView || undefined}>
      <StageBar />
      <main className="plan" aria-label="Plan">
        {stage === 'sheets' ? (
          <Pages />
        ) : (
          <>
            <PlanCanvas>
              <PlanOutline />
            </PlanCanvas>
            <WorkLine />
          </>
        )}
      </main>
      <Ledger />
      {showsRail ? <DayRail /> : null}
      <Announcer />
    </div>
  )
}
