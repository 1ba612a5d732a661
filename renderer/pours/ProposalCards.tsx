import type { OfferedSplit } from '../../core/plan/deriveScreen'
import { printMeasures } from '../../core/units/printMeasures'
import { printNumber } from '../../core/units/printNumber'
import { applyEdit } from '../app/applyEdit'
import { usePlan, useSession } from '../app/session'
import type { LivePlan } from '../store/livePlan'
import { chooseOffer, offerState } from './chooseOffer'
import { costReasons, jointOf, largestOf } from './costWords'
import { MiniPlan } from './MiniPlan'

/** Ways to split, the fewest pours first, each with what it costs. */
export function ProposalCards({ live }: { readonly live: LivePlan }) {
  const { offers, isOld, hasFailed } = usePlan(({ parts, revs, rev, failure }) => ({
    offers: parts.offers,
    isOld: revs.offers !== rev,
    hasFailed: failure !== null,
  }))
  if (!offers) return <p className="note">{hasFailed ? '' : 'Working on ways to split'}</p>
  const isSingle = offers.every(({ region }) => region === offers[0]?.region)
  return (
    <section aria-label="Proposals">
      <header>
        <h2>Proposals</h2>
        <span>{isOld ? 'being renewed' : 'fewest pours first'}</span>
      </header>
      {offers.map(offer => (
        <ProposalCard
          key={offer.id}
          live={live}
          offer={offer}
          offers={offers}
          place={isSingle ? '' : placeOf(live, offer)}
          isOld={isOld}
        />
      ))}
    </section>
  )
}

const placeOf = (live: LivePlan, offer: OfferedSplit): string => {
  const slab = live.slabs.find(({ id }) => id === offer.slabId)?.name ?? ''
  return offer.part === 'whole' ? slab : `${slab}, ${offer.part}`
}

const pourCount = (count: number): string => (count === 1 ? '1 pour' : `${count} pours`)

function ProposalCard({
  live,
  offer,
  offers,
  place,
  isOld,
}: {
  readonly live: LivePlan
  readonly offer: OfferedSplit
  readonly offers: readonly OfferedSplit[]
  readonly place: string
  readonly isOld: boolean
}) {
  const session = useSession()
  const pours = usePlan(({ parts }) => parts.pours) ?? []
  const print = printMeasures(live.site.units)
  const { proposal, region } = offer
  const fewest = offers.find(each => each.region === region)?.proposal
  const state = offerState(offer, pours)
  const reasons = costReasons(proposal, fewest, print)
  const count = pourCount(proposal.pours.length)
  const name = place === '' ? count : `${place}: ${count}`
  return (
    <article
      className={state === 'chosen' ? 'card proposal on' : 'card proposal'}
      aria-label={name}
      data-waiting={isOld || undefined}
    >
      <div className="proposal-head">
        <MiniPlan region={region} proposal={proposal} />
        <div>
          <h3>{name}</h3>
          {state === 'chosen' ? (
            <span className="chosen">Chosen</span>
          ) : (
            <button
              type="button"
              className="btn"
              disabled={isOld}
              aria-label={`Choose ${name}`}
              onClick={() => applyEdit(session, `split into ${count}`, chooseOffer(offer, offers))}
            >
              Choose
            </button>
          )}
          <dl>
            <div>
              <dt>Largest pour</dt>
              <dd>{print.area(largestOf(proposal))}</dd>
            </div>
            <div>
              <dt>Joint length</dt>
              <dd>{print.length(jointOf(proposal))}</dd>
            </div>
            <div>
              <dt>Cost, as joint</dt>
              <dd>{printNumber(proposal.totalCost, 0)} ft</dd>
            </div>
          </dl>
        </div>
      </div>
      {reasons.length > 0 ? (
        <ul className="reasons">
          {reasons.map(({ sign, words, cost }) => (
            <li key={words} data-sign={sign}>
              <b aria-hidden="true">{sign}</b>
              <span>
                <span className="visually-hidden">{sign === '+' ? 'For it: ' : 'Against it: '}</span>
                {words}
                {cost >= 2 ? <small>, {printNumber(cost, 0)} ft</small> : null}
              </span>
            </li>
          ))}
        </ul>
      ) : null}
    </article>
  )
}
