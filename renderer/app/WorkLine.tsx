import './work.css'
import { useCalmPlan, useSession } from './session'

/** What the plan is being worked on, as one says it. */
const words: Readonly<Record<string, string>> = {
  areas: 'areas',
  pours: 'splitting into pours',
  figures: 'figures',
  shade: 'shade',
  points: 'points',
  days: 'order and days',
  'shade line': 'when the shade leaves',
  'sun hours': 'hours of sun',
  'other splits': 'other ways to split',
  'other day': 'the other day',
  'crews and hours': 'crews and hours',
  'set map': 'hours to the first print',
}

/** Work that takes longer than a moment: how far it is, and a way to stop it and go on. */
export function WorkLine() {
  const { plan } = useSession()
  const { doing, share, isRenewing, isStopped } = useCalmPlan(({ progress, isRenewing, isStopped }) => ({
    doing: progress?.doing,
    share: progress?.share ?? 0,
    isRenewing,
    isStopped,
  }))
  if (isStopped)
    return (
      <div className="work-line" role="status">
        <p>Stopped. What is marked “being renewed” is of an older drawing.</p>
        <button type="button" className="btn" onClick={() => plan.goOn()}>
          Go on
        </button>
      </div>
    )
  if (!isRenewing) return null
  return (
    <div className="work-line late">
      <p>Being renewed: {words[doing ?? ''] ?? 'the plan'}</p>
      <progress value={share} aria-label="How far the plan is" />
      <button type="button" className="btn" onClick={() => plan.cancel()}>
        Stop
      </button>
    </div>
  )
}
