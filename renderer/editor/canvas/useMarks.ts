import { useMemo } from 'react'
import { usePlan, useView } from '../../app/session'
import type { LivePlan } from '../../store/livePlan'
import { litFigure } from '../layers/litFigure'
import { entityGeometry, type PlanGeometry } from '../layers/planGeometry'

/** What is marked on the plan. */
export interface Marks {
  readonly chosen: readonly PlanGeometry[]
  /** What the open figure of the ledger is about. */
  readonly lit: PlanGeometry | null
}

export function useMarks(live: LivePlan): Marks {
  const parts = usePlan(state => state.parts)
  const { stage, selection, openFigure, clientView } = useView(({ stage, selection, openFigure, clientView }) => ({
    stage,
    selection,
    openFigure,
    clientView,
  }))
  const lit = useMemo(() => {
    const figure = parts.quantities?.find(q => q.id === openFigure)
    return figure ? litFigure(live, parts, figure) : null
  }, [live, parts, openFigure])
  // A client is shown the plan, not what was chosen for a change.
  const chosen = useMemo(
    () => (clientView && stage === 'slab' ? [] : selection.map(id => entityGeometry(live, parts, id))),
    [live, parts, selection, clientView, stage],
  )
  return { chosen, lit }
}
