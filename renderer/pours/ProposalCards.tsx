import './pours.css'
import { useEffect } from 'react'
import type { OfferedSplit } from '../../core/plan/deriveScreen'
import { printMixedSun } from '../../core/pours/alternatives/printMixedSun'
import { heldAgainst } from '../../core/pours/alternatives/wordAlternative'
import type { Measures } from '../../core/units/measures'
import { printMeasures } from '../../core/units/printMeasures'
import { printNumber } from '../../core/units/printNumber'
import { defaults, type SettingName, settingValue } from '../../shared/settings'
import { applyEdit } from '../app/applyEdit'
import { printDate } from '../app/printDate'
import { usePlan, useSession } from '../app/session'
import type { LivePlan } from '../store/livePlan'
import type { TrialSplit } from '../store/viewStore'
import { chooseOffer, offerState } from './chooseOffer'
import { type CostTerm, costTerms } from './costTerms'
import { MiniPlan } from './MiniPlan'
import { recommendedOf } from './recommendedOf'

/** Ways to split, the fewest pours first, each with what it costs. */
export function ProposalCards({ live }: { readonly live: LivePlan }) {
  const { view } = useSession()
  const { offers, isOld, hasFailed } = usePlan(({ parts, revs, rev, failure }) => ({
    offers: parts.offers,
    isOld: revs.offers !== rev,
    hasFailed: failure !== null,
  }))
  // What was under the hand is no longer offered once the plan is another.
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever they change
  useEffect(() => () => view.setState({ trial: null }), [view, offers, isOld])
  if (!offers) return <p className="note">{hasFailed ? '' : 'Working on ways to split'}</p>
  const kept = offers.some(offer => offer.kept.pourIds.length > 0)
  if (offers.length === 0) return null
  const isSingle = offers.every(({ region }) => region === offers[0]?.region)
  return (
    <section aria-label="Proposals">
      <header>
        <h2>{kept ? 'Ways to split the rest' : 'Proposals'}</h2>
        <span>{isOld ? 'being renewed' : 'fewest pours first'}</span>
      </header>
      {kept ? <p className="note">Locked and poured pours stay as they are.</p> : null}
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

const kindCount = ({ kind, proposal }: Pick<OfferedSplit, 'kind' | 'proposal'>): string =>
  kind === 'lanes' ? `${pourCount(proposal.pours.length)} in lanes` : pourCount(proposal.pours.length)

const trialOf = ({ slabId, part, proposal, kept }: OfferedSplit): TrialSplit => ({
  slabId,
  part,
  pours: proposal.pours.map((pour, i) => ({ ...pour, number: String(i + 1) })),
  joints: proposal.joints,
  keptPourIds: kept.pourIds,
})

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
  const { view } = session
  const pours = usePlan(({ parts }) => parts.pours) ?? []
  const print = printMeasures(live.site.units)
  const { proposal, region, figures, price, sentences } = offer
  const state = offerState(offer, pours)
  const beside = offers.filter(each => each.region === region)
  const isRecommended = beside.length > 1 && recommendedOf(beside) === offer
  const count = kindCount(offer)
  const other = heldAgainst(beside, beside.indexOf(offer))
  const held = other && sentences.length > 0 ? kindCount(other) : null
  const name = place === '' ? count : `${place}: ${count}`
  const terms = costTerms(proposal)
  const heavy = heavyOf(terms, sentences.length > 0)
  const show = () => {
    if (!isOld) view.setState({ trial: trialOf(offer) })
  }
  const hide = () => view.setState({ trial: null })
  return (
    <article
      className={state === 'chosen' ? 'card proposal on' : 'card proposal'}
      aria-label={name}
      data-waiting={isOld || undefined}
      onPointerEnter={show}
      onPointerLeave={hide}
      onFocus={show}
      onBlur={hide}
    >
      <div className="proposal-head">
        <MiniPlan region={region} proposal={proposal} />
        <div>
          <h3>{name}</h3>
          {isRecommended ? <p className="recommended">Recommended</p> : null}
          {state === 'chosen' ? (
            <span className="chosen">Chosen</span>
          ) : (
            <button
              type="button"
              className="btn"
              disabled={isOld}
              aria-label={`Choose ${name}`}
              onClick={() => {
                hide()
                applyEdit(session, `split into ${count}`, chooseOffer(offer, offers))
              }}
            >
              Choose
            </button>
          )}
          <dl>
            <div>
              <dt>Price</dt>
              <dd>{printNumber(price.total, 0)}</dd>
            </div>
            <div>
              <dt>Largest pour</dt>
              <dd>{print.area(figures.largestM2)}</dd>
            </div>
            <div>
              <dt>Joint length</dt>
              <dd>{figures.jointM > 0 ? print.length(figures.jointM) : 'none'}</dd>
            </div>
            <div>
              <dt>Beyond the chute</dt>
              <dd>{figures.beyondChuteM2 > 0 ? print.area(figures.beyondChuteM2) : 'none'}</dd>
            </div>
            <div>
              <dt>Part in sun</dt>
              <dd>{printMixedSun(figures) ?? 'not known'}</dd>
            </div>
            <div>
              <dt>Last pour</dt>
              <dd>{figures.lastPourDate === null ? 'no day left' : printDate(figures.lastPourDate)}</dd>
            </div>
          </dl>
        </div>
      </div>
      {held ? <p className="reasons-head">Beside the {held}</p> : null}
      <ul className="reasons">
        {isRecommended ? <Reason sign="+" words={`Least price of the ${beside.length} ways shown`} /> : null}
        {sentences.map(({ sign, words }) => (
          <Reason key={words} sign={sign} words={words} />
        ))}
      </ul>
      {proposal.proven || heavy.length > 0 ? (
        <>
          <p className="reasons-head">By itself, weighed in feet of joint</p>
          <ul className="reasons">
            {proposal.proven ? <Reason sign="+" words="No cheaper split among all cuts that were tried" /> : null}
            {heavy.map(({ term, against, ft }) => (
              <Reason key={term} sign="−" words={against} ft={ft} />
            ))}
          </ul>
        </>
      ) : null}
      {offer.note === undefined ? null : <p className="quiet">{offer.note}</p>}
      <PriceTable live={live} offer={offer} print={print} />
      <CostTable terms={terms} total={proposal.totalCost} />
    </article>
  )
}

/** What costs under 2 ft of joint is not worth a sentence; what every split has, neither. */
const heavyOf = (terms: readonly CostTerm[], isCompared: boolean): readonly CostTerm[] =>
  terms
    .filter(({ term, ft, against }) => ft >= 2 && against !== '' && term !== 'jointLength')
    .filter(({ term }) => !(isCompared && (term === 'extraPour' || term === 'shortLoad')))
    .slice(0, 4)

function Reason({ sign, words, ft }: { readonly sign: '+' | '−'; readonly words: string; readonly ft?: number }) {
  return (
    <li data-sign={sign}>
      <b aria-hidden="true">{sign}</b>
      <span>
        <span className="visually-hidden">{sign === '+' ? 'For it: ' : 'Against it: '}</span>
        {words}
        {ft === undefined ? null : <small>, {printNumber(ft, 0)} ft</small>}
      </span>
    </li>
  )
}

function PriceTable({
  live,
  offer,
  print,
}: {
  readonly live: LivePlan
  readonly offer: OfferedSplit
  readonly print: Measures
}) {
  const { figures, price } = offer
  const rows: readonly { name: string; amount: string; setting: SettingName; per: string; value: number }[] = [
    ...(
      [
        ['Crew-days', printNumber(figures.crewDays, 1), 'crewDayPrice', 'a day', price.crewDays],
        ['Trucks', String(figures.trucks), 'truckPrice', 'each', price.trucks],
        ['Short loads', String(figures.shortLoads), 'shortLoadPrice', 'each', price.shortLoads],
      ] as const
    ).map(([name, amount, setting, per, value]) => ({ name, amount, setting, per, value })),
    {
      name: 'Joint',
      amount: print.length(figures.jointM),
      setting: 'jointPriceM',
      per: live.site.units === 'ftin' ? 'a foot' : 'a meter',
      value: price.joints,
    },
  ]
  const rate = (name: SettingName): number =>
    settingValue(live.site.settings, name) * (name === 'jointPriceM' && live.site.units === 'ftin' ? 0.3048 : 1)
  return (
    <details className="cost-table">
      <summary>Price, worked out</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">For</th>
            <th scope="col">Amount</th>
            <th scope="col">Rate</th>
            <th scope="col">Price</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, amount, setting, per, value }) => (
            <tr key={name} title={defaults[setting].source}>
              <th scope="row">{name}</th>
              <td>{amount}</td>
              <td>
                {printNumber(rate(setting), 2)} {per}
              </td>
              <td>{printNumber(value, 0)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Together</th>
            <td />
            <td />
            <td>{printNumber(price.total, 0)}</td>
          </tr>
        </tfoot>
      </table>
      <p className="note">Rates are the site’s settings: own assumptions until you put in yours.</p>
    </details>
  )
}

/** The table of the search itself: every term in feet of joint, with its weight and where that is from. */
function CostTable({ terms, total }: { readonly terms: readonly CostTerm[]; readonly total: number }) {
  return (
    <details className="cost-table">
      <summary>What the search weighed, in feet of joint</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Term</th>
            <th scope="col">Weight</th>
            <th scope="col">ft</th>
          </tr>
        </thead>
        <tbody>
          {terms.map(({ term, name, ft, weights }) => (
            <tr key={term}>
              <th scope="row">{name}</th>
              <td>
                {weights.map(({ id, value, unit, meaning, source }) => (
                  <span key={id} className="weight">
                    {printNumber(value, 2)} {unit === '1' ? '' : unit}: {meaning}. <i>{source}.</i>
                  </span>
                ))}
              </td>
              <td>{printNumber(ft, 1, 1)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Together</th>
            <td />
            <td>{printNumber(total, 1, 1)}</td>
          </tr>
        </tfoot>
      </table>
    </details>
  )
}
