import type { PlannedPour } from '../../core/plan/plan'
import type { PourDayPlan } from '../../core/pours/day/pourDay'
import { printMeasures } from '../../core/units/printMeasures'
import type { Site } from '../../shared/document/site'
import { useSession, useSite, useView } from '../app/session'
import { undoName } from '../store/history'
import { OtherPours } from './OtherPours'
import { planRestAgain } from './planRestAgain'
import { endName } from './tapWords'

/** After the pour: what was built, and the rest planned again. */
export function PouredPanel({
  site,
  pour,
  days,
}: {
  readonly site: Site
  readonly pour: PlannedPour
  readonly days: readonly PourDayPlan[]
}) {
  const session = useSession()
  const notice = useView(state => state.notice)
  const built = site.accepted.flatMap(({ pours }) => pours).find(({ id }) => id === pour.id)?.poured
  const print = printMeasures(site.units)
  const last = useSite(({ history }) => (history ? undoName(history) : undefined))
  return (
    <section className="slab-other-day" aria-label="Poured">
      <p className="slab-say" role="status">
        Pour {pour.number} is poured: {print.area(built?.areaM2 ?? pour.areaM2)}, kept as built.{' '}
        {notice ?? 'Keep it damp or covered as the label of the cure says, and roped off.'}
      </p>
      <button type="button" className="slab-btn main" onClick={() => planRestAgain(session)}>
        Plan the rest again
      </button>
      <button
        type="button"
        className="slab-btn"
        onClick={() => session.view.setState({ atSlab: null, stage: 'pours' })}
      >
        See the pours
      </button>
      {last === endName(pour.number) ? (
        <button type="button" className="slab-btn" onClick={() => session.site.undo()}>
          Not ended after all
        </button>
      ) : null}
      <OtherPours days={days} site={site} pourId={pour.id} />
    </section>
  )
}
