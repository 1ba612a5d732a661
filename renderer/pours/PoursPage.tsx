import { useMemo } from 'react'
import { acceptPours } from '../../core/pours/editing/acceptPours'
import { replanRest } from '../../core/pours/replan/replanRest'
import { areaUnits } from '../../core/units/areaUnits'
import { printMeasures } from '../../core/units/printMeasures'
import { defaults } from '../../shared/settings'
import { applyEdit } from '../app/applyEdit'
import { printDate } from '../app/printDate'
import { usePlan, useSession, useView } from '../app/session'
import { pourTints } from '../editor/layers/pourTints'
import { FigureRow } from '../ledger/FigureRow'
import { entityNames } from '../ledger/nameEntities'
import { Problems } from '../ledger/Problems'
import type { LivePlan } from '../store/livePlan'
import { DayList } from './DayList'
import { JointCard } from './JointCard'
import { PourActs } from './PourActs'
import { ProposalCards } from './ProposalCards'
import { TypedField } from './TypedField'

/** Sides the search for a new split may visit when the rest is planned again. */
const restBudget = 400_000

export function PoursPage({ live }: { readonly live: LivePlan }) {
  const session = useSession()
  const { notice, selection } = useView(({ notice, selection }) => ({ notice, selection }))
  const joints = usePlan(({ parts }) => parts.joints)
  const isChosen = usePlan(({ parts }) => parts.pours?.every(pour => !pour.proposed) ?? false)
  const chosenJoint = joints?.find(({ id, kind }) => id === selection.at(-1) && kind === 'construction')
  const fixed = live.site.accepted.filter(({ pours }) => pours.some(({ lock, poured }) => lock.shape || poured))
  return (
    <>
      <CapacityRow live={live} />
      {notice ? (
        <p className="note check" role="status">
          {notice}{' '}
          <button type="button" className="as-words" onClick={() => session.view.setState({ notice: null })}>
            Seen
          </button>
        </p>
      ) : null}
      {chosenJoint ? <JointCard live={live} joint={chosenJoint} /> : null}
      {isChosen ? null : <ProposalCards live={live} />}
      <PourCards live={live} />
      {fixed.length > 0 ? (
        <div className="acts-row">
          <button
            type="button"
            className="btn"
            onClick={() => {
              for (const { slabId, part } of fixed)
                applyEdit(session, 'plan the rest again', site => {
                  const rest = replanRest(site, slabId, part, { budget: restBudget })
                  return rest.ok ? acceptPours(site, rest.value.offer) : { ok: false, error: rest.error }
                })
            }}
          >
            Plan the rest again
          </button>
        </div>
      ) : null}
      <Problems />
      <DayList live={live} />
      {isChosen ? <ProposalCards live={live} /> : null}
      <JointLengths live={live} />
    </>
  )
}

/** The largest pour, where that comes from, and the box to set it. */
function CapacityRow({ live }: { readonly live: LivePlan }) {
  const session = useSession()
  const { site } = live
  const print = printMeasures(site.units)
  const own = site.capacity?.capM2
  const setting = site.settings?.capM2
  const capM2 = own ?? setting ?? defaults.capM2.value
  const unit = areaUnits[site.units]
  const rule =
    own !== undefined
      ? 'Set for this site.'
      : setting !== undefined
        ? 'Set in the site’s settings.'
        : `What rules it: ${defaults.capM2.source}.`
  return (
    <section aria-label="Capacity">
      <header>
        <h2>At most {print.area(capM2)} a pour</h2>
      </header>
      <div className="note">
        <p>{rule}</p>
        <TypedField
          label={`Largest pour, ${unit.name}`}
          text={String(Math.round(capM2 / unit.m2))}
          onText={typed => {
            const value = Number(typed.replace(/,/g, ''))
            if (!(value > 0)) return 'A largest pour is an area over zero.'
            session.site.edit('largest pour', draft => {
              draft.capacity = { capM2: value * unit.m2 }
            })
            return null
          }}
        />
      </div>
    </section>
  )
}

function PourCards({ live }: { readonly live: LivePlan }) {
  const { view } = useSession()
  const { pours, joints, quantities, isOld } = usePlan(({ parts, revs, rev }) => ({
    pours: parts.pours,
    joints: parts.joints,
    quantities: parts.quantities,
    isOld: revs.pours !== rev,
  }))
  const selection = useView(state => state.selection)
  const names = useMemo(() => entityNames(live.site), [live.site])
  const print = printMeasures(live.site.units)
  if (!pours) return <p className="note">Working</p>
  const tintOf = pourTints(pours, joints ?? [])
  const kept = new Map(live.site.accepted.flatMap(each => each.pours.map(pour => [pour.id, pour])))
  return (
    <section aria-label="Pours">
      <header>
        <h2>Pours</h2>
        <span>
          {isOld ? 'being renewed' : pours.some(pour => pour.proposed) ? 'as proposed, not chosen yet' : 'as chosen'}
        </span>
      </header>
      {pours.map(pour => {
        const isOn = selection.includes(pour.id)
        const own = kept.get(pour.id)
        const state = own?.poured ? 'poured' : own?.lock.shape ? 'locked' : own?.lock.time ? 'day locked' : null
        return (
          <article key={pour.id} className={isOn ? 'card on' : 'card'} data-waiting={isOld || undefined}>
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
                        label={q.label.replace(/^Pour [^ ,]+,? /, '').replace(/^./, c => c.toUpperCase())}
                        isWaiting={isOld}
                      />
                    ))}
                </div>
                {own ? (
                  <PourActs pour={pour} own={own} pours={pours} joints={joints ?? []} />
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
