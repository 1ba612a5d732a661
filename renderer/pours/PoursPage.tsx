import { useMemo } from 'react'
import type { PlannedPour } from '../../core/plan/plan'
import { renumberAll } from '../../core/pours/editing/changePour'
import { entityNames } from '../../core/reports/nameEntities'
import { capitalize } from '../../core/units/capitalize'
import { printMeasures } from '../../core/units/printMeasures'
import { applyEdit } from '../app/applyEdit'
import { printDate } from '../app/printDate'
import { usePlan, useSession, useView } from '../app/session'
import { EnterSlab } from '../atSlab/EnterSlab'
import { DayCard } from '../day/DayCard'
import { DayForms } from '../day/DayForms'
import { pourTints } from '../editor/layers/pourTints'
import { FigureRow } from '../ledger/FigureRow'
import { Problems } from '../ledger/Problems'
import type { LivePlan } from '../store/livePlan'
import { bringIntoView } from './bringIntoView'
import { CapacityRow } from './CapacityRow'
import { DayList } from './DayList'
import { JointCard } from './JointCard'
import { PourActs } from './PourActs'
import { ProposalCards } from './ProposalCards'
import { RepairCards } from './RepairCard'
import { useLivePours } from './useLivePours'

export function PoursPage({ live }: { readonly live: LivePlan }) {
  const session = useSession()
  const { notice, selection } = useView(({ notice, selection }) => ({ notice, selection }))
  const { joints } = useLivePours(live)
  const isChosen = usePlan(({ parts }) => parts.pours?.every(pour => !pour.proposed) ?? false)
  const chosenJoint = joints.find(({ id, kind }) => id === selection.at(-1) && kind === 'construction')
  return (
    <>
      <EnterSlab />
      <DayForms site={live.site} />
      <CapacityRow live={live} />
      {notice ? (
        <p className="note check" role="status">
          {notice}{' '}
          <button type="button" className="as-words" onClick={() => session.view.setState({ notice: null })}>
            Seen
          </button>
        </p>
      ) : null}
      <RepairCards live={live} />
      <Problems />
      {chosenJoint ? <JointCard key={chosenJoint.id} live={live} joint={chosenJoint} /> : null}
      {isChosen ? null : <ProposalCards live={live} />}
      <PourCards live={live} />
      <DayCard live={live} />
      <DayList live={live} />
      {isChosen ? <ProposalCards live={live} /> : null}
      <JointLengths live={live} />
    </>
  )
}

const isOutOfTurn = (pours: readonly PlannedPour[]): boolean =>
  pours.toSorted((a, b) => a.order - b.order).some(({ number }, i) => number !== String(i + 1))

function PourCards({ live }: { readonly live: LivePlan }) {
  const session = useSession()
  const { view } = session
  const { pours, joints } = useLivePours(live)
  const { hasPours, hasFailed, quantities, isOld } = usePlan(({ parts, revs, rev, failure }) => ({
    hasFailed: failure !== null,
    hasPours: parts.pours !== undefined,
    quantities: parts.quantities,
    isOld: revs.pours !== rev,
  }))
  const selection = useView(state => state.selection)
  const names = useMemo(() => entityNames(live.site), [live.site])
  const print = printMeasures(live.site.units)
  if (!hasPours) return hasFailed ? null : <p className="note">Working</p>
  if (pours.length === 0)
    return (
      <p className="note">
        {live.slabs.length === 0
          ? 'No slab is drawn yet. Draw it in Slab; here it is split into pours.'
          : 'Nothing can be poured as drawn.'}
      </p>
    )
  const tintOf = pourTints(pours, joints)
  const kept = new Map(live.site.accepted.flatMap(each => each.pours.map(pour => [pour.id, pour])))
  return (
    <section aria-label="Pours">
      <header>
        <h2>Pours</h2>
        <span>
          {isOld ? 'being renewed' : pours.some(pour => pour.proposed) ? 'as proposed, not chosen yet' : 'as chosen'}
        </span>
      </header>
      {kept.size > 1 && isOutOfTurn(pours) ? (
        <div className="acts-row">
          <button
            type="button"
            className="btn"
            onClick={() =>
              applyEdit(session, 'pours numbered in their order', site =>
                renumberAll(
                  site,
                  pours
                    .filter(({ id }) => kept.has(id))
                    .toSorted((a, b) => a.order - b.order)
                    .map(({ id }) => id),
                ),
              )
            }
          >
            Number the pours in their order
          </button>
        </div>
      ) : null}
      {pours.map(pour => {
        const isOn = selection.includes(pour.id)
        const own = kept.get(pour.id)
        const state = own?.poured ? 'poured' : own?.lock.shape ? 'locked' : own?.lock.time ? 'day locked' : null
        return (
          <article
            key={pour.id}
            ref={selection.at(-1) === pour.id ? bringIntoView : null}
            className={isOn ? 'card on' : 'card'}
            data-waiting={isOld || undefined}
          >
            <button
              type="button"
              className="card-head"
              aria-pressed={isOn}
              onClick={() => view.setState({ selection: isOn ? [] : [pour.id], notice: null })}
            >
              <span className={`tint tint-${tintOf.get(pour.id)}`}>{pour.number}</span>
              <b>{print.area(pour.areaM2)}</b>
              <span>
                {pour.date === null ? `day ${pour.day}` : printDate(pour.date)}
                {state ? `, ${state}` : ''}
              </span>
            </button>
            {isOn ? (
              <>
                <div className="card-rows">
                  {quantities
                    ?.filter(q => q.pourId === pour.id)
                    .map(q => (
                      <FigureRow
                        key={q.id}
                        names={names}
                        units={live.site.units}
                        quantity={q}
                        label={capitalize(q.label.replace(/^Pour [^ ,]+,? /, ''))}
                        isWaiting={isOld}
                      />
                    ))}
                </div>
                {own ? (
                  <PourActs pour={pour} own={own} pours={pours} />
                ) : (
                  <p className="note">
                    Choose a proposal first; then this pour can be split, merged, locked and dated.
                  </p>
                )}
              </>
            ) : null}
          </article>
        )
      })}
    </section>
  )
}

function JointLengths({ live }: { readonly live: LivePlan }) {
  const quantities = usePlan(({ parts }) => parts.quantities)
  const names = useMemo(() => entityNames(live.site), [live.site])
  const joints = quantities?.filter(q => /-(construction-joint|header)-length$/.test(q.id)) ?? []
  if (joints.length === 0) return null
  return (
    <section aria-label="Joint lengths">
      <h3>Joints</h3>
      {joints.map(q => (
        <FigureRow key={q.id} quantity={q} names={names} units={live.site.units} />
      ))}
    </section>
  )
}
