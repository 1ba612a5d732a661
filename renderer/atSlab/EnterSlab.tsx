import { useEffect } from 'react'
import { usePlan, useSession } from '../app/session'
import { pourToday, underWay } from './pourToday'

/** The way to the screen at the slab, by button or F8. */
export function EnterSlab() {
  const { view } = useSession()
  const { live, days } = usePlan(({ live, parts }) => ({ live, days: parts.dayPlans }))
  const isChosen = live?.site.accepted.some(({ pours }) => pours.length > 0) ?? false
  if (!live || live.slabs.length === 0) return null
  const running = days && underWay(live.site, days)
  const why = !isChosen
    ? 'Choose a proposal first; then a pour can be logged at the slab.'
    : days?.length === 0
      ? 'Enter the crew and the weather first.'
      : null
  const enter = () => {
    const day = days && pourToday(live.site, days, Date.now())
    if (day) view.setState({ atSlab: day.pourId, notice: null })
  }
  return (
    <div className="acts-row">
      <button
        type="button"
        className="btn main"
        aria-keyshortcuts="F8"
        disabled={why !== null || !days}
        onClick={enter}
      >
        {running ? `At the slab: pour ${running.number} is under way` : 'At the slab'}
      </button>
      {why ? <span className="note">{why}</span> : null}
    </div>
  )
}

/** F8 from any stage. */
export function useSlabKey(): void {
  const { view, plan } = useSession()
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'F8' || event.repeat) return
      const { live, parts } = plan.getState()
      if (view.getState().clientView || !live || !parts.dayPlans) return
      const day = pourToday(live.site, parts.dayPlans, Date.now())
      if (!day) return
      event.preventDefault()
      view.setState(({ atSlab }) => ({ atSlab: atSlab === null ? day.pourId : null, notice: null }))
    }
    window.addEventListener('keydown', onKey)
    return () => window.removeEventListener('keydown', onKey)
  }, [view, plan])
}
