import type { PourDayPlan } from '../../core/pours/day/pourDay'
import type { Site } from '../../shared/document/site'
import { printDate } from '../app/printDate'
import { useSession } from '../app/session'
import { isPoured } from './pourToday'

export interface OtherPoursOf {
  readonly days: readonly PourDayPlan[]
  readonly site: Site
  readonly pourId: string
}

/** The other pours that are still to be made. */
export function OtherPours({ days, site, pourId }: OtherPoursOf) {
  const { view } = useSession()
  const others = days.filter(
    own => own.pourId !== pourId && !isPoured(site, own.pourId) && !own.pourId.startsWith('proposed'),
  )
  if (others.length === 0) return null
  return (
    <nav className="slab-others" aria-label="Other pours">
      {others.map(own => (
        <button
          key={own.pourId}
          type="button"
          className="slab-btn"
          onClick={() => view.setState({ atSlab: own.pourId })}
        >
          Pour {own.number}, {printDate(own.date)}
        </button>
      ))}
    </nav>
  )
}
