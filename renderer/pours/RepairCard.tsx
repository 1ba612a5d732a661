import { useEffect, useMemo, useState } from 'react'
import { pourGround } from '../../core/document/commands/pourGround'
import { capsOf } from '../../core/plan/capsOf'
import { dayHolds } from '../../core/plan/dayHolds'
import { cutPart } from '../../core/pours/editing/editPart'
import { type Repair, type RepairDeed, repairableCodes, repairPours } from '../../core/pours/replan/repairPours'
import type { Measures } from '../../core/units/measures'
import { printMeasures } from '../../core/units/printMeasures'
import type { PourPart } from '../../shared/document/pours'
import type { Site } from '../../shared/document/site'
import { applyEdit } from '../app/applyEdit'
import { usePlan, useSession } from '../app/session'
import { wordFindings } from '../app/wordFindings'
import type { LivePlan } from '../store/livePlan'
import type { TrialSplit } from '../store/viewStore'
import { offerOf } from './chooseOffer'
import { MiniPlan } from './MiniPlan'

interface Broken {
  readonly slabId: string
  readonly part: PourPart
}

/** Accepted pours that the drawing no longer fits: what mends them, shown before and after, taken as one step. */
export function RepairCards({ live }: { readonly live: LivePlan }) {
  const { problems, isOld } = usePlan(({ parts, revs, rev }) => ({
    problems: parts.problems,
    isOld: revs.problems !== rev,
  }))
  if (!problems || isOld) return null
  const broken = live.site.accepted.filter(({ slabId, joints, pours }) => {
    const wishes = live.site.wishes.filter(wish => wish.slabId === slabId)
    const ids = new Set([slabId, ...[...joints, ...pours, ...wishes].map(({ id }) => id)])
    return problems.some(({ code, at }) => repairableCodes.has(code) && at !== undefined && ids.has(at.entityId))
  })
  return broken.map(each => <RepairCard key={`${each.slabId} ${each.part}`} live={live} of={each} />)
}

/** The pours of a part as numbered shapes. */
function shapesOf(site: Site, { slabId, part }: Broken): Pick<TrialSplit, 'pours' | 'joints'> {
  const accepted = site.accepted.find(row => row.slabId === slabId && row.part === part)
  const slab = site.slabs.find(({ id }) => id === slabId)
  if (!accepted || !slab) return { pours: [], joints: [] }
  const { faces, joints } = cutPart(pourGround(slab, part), accepted)
  return {
    pours: faces.map(({ pourId, region, areaM2 }) => ({
      region,
      areaM2,
      number: accepted.pours.find(({ id }) => id === pourId)?.number ?? '–',
    })),
    joints,
  }
}

const list = (numbers: readonly string[]): string =>
  numbers.length < 2 ? (numbers[0] ?? '') : `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`

const pourWord = (numbers: readonly string[]): string => `pour${numbers.length === 1 ? '' : 's'} ${list(numbers)}`

export function deedWords(deed: RepairDeed, print: Measures): string {
  switch (deed.does) {
    case 'jointMended':
      return 'A joint is carried on to what it meets now.'
    case 'jointRemoved':
      return 'A joint that no longer divides anything is taken away.'
    case 'poursMerged':
      return `Pour ${deed.number} takes in ${pourWord(deed.gone)}: ${print.area(deed.areaM2)}.`
    case 'pourRemoved':
      return `Pour ${deed.number}, which has no place on the slab any more, is taken away.`
    case 'pourAdded':
      return `What belonged to no pour becomes pour ${deed.number}.`
    case 'pourSplit':
      return `Pour ${deed.number} is ${print.area(deed.areaM2)}; from its first truck on its day this crew takes about ${print.area(deed.dayM2)}. It is split: pour ${deed.number} keeps its day, ${pourWord(deed.others)} ${deed.others.length === 1 ? 'is' : 'are'} put in the order anew.`
    case 'restSplit':
      return [
        ...(deed.over.length === 0
          ? []
          : [`${deed.over.length === 1 ? 'Too large' : 'Too large each'}: ${pourWord(deed.over)}.`]),
        ...(deed.wishes === 0
          ? []
          : [
              deed.wishes === 1
                ? 'A joint line is kept that was not.'
                : `${deed.wishes} joint lines are kept that were not.`,
            ]),
        deed.kept.length > 0
          ? `The rest is split into ${deed.pours}; ${pourWord(deed.kept)} ${deed.kept.length === 1 ? 'stays' : 'stay'}.`
          : `The slab is split into ${deed.pours}.`,
      ].join(' ')
  }
}

function RepairCard({ live, of }: { readonly live: LivePlan; readonly of: Broken }) {
  const session = useSession()
  const { offers, capacities, dayPlans, problems, isOld } = usePlan(({ parts, revs, rev }) => ({
    offers: parts.offers,
    capacities: parts.capacities,
    dayPlans: parts.dayPlans,
    problems: parts.problems,
    isOld: revs.offers !== rev,
  }))
  const [isOpen, setOpen] = useState(false)
  const { site } = live
  const repair = useMemo((): Repair | null => {
    const rest = isOld ? null : offerOf(of, offers ?? [])
    const holds = dayHolds(problems ?? [], dayPlans ?? [], site.settings)
    const found = repairPours(site, of.slabId, of.part, rest, capsOf(site, capacities ?? []), holds)
    return found.ok ? found.value : null
  }, [site, of, offers, capacities, dayPlans, problems, isOld])
  const before = useMemo(() => shapesOf(site, of), [site, of])
  const after = useMemo(() => (repair ? shapesOf(repair.site, of) : null), [repair, of])
  const { view } = session
  // As long as the card is open its pours are those on the plan.
  useEffect(() => {
    if (!isOpen || !after) return
    view.setState({ trial: { slabId: of.slabId, part: of.part, ...after, keptPourIds: [] } })
    return () => view.setState({ trial: null })
  }, [isOpen, after, of, view])
  const slab = live.slabs.find(({ id }) => id === of.slabId)
  const region = slab?.net[0]
  if (!repair || !after || !region) return isOld ? <p className="note">Working on a repair</p> : null
  const print = printMeasures(site.units)
  const leave = () => setOpen(false)
  const left = wordFindings(site, repair.findings)
  return (
    <article className="card repair" aria-label={`Repair of the pours of ${slab.name}`}>
      <div className="note check">
        <p>
          {repair.deeds.every(({ does }) => does === 'pourSplit')
            ? `Accepted pours of ${slab.name} are more than the crew takes on their own day. They can be split by that in one step.`
            : `The accepted pours of ${slab.name} no longer fit the drawing or its joint lines. They can be mended in one step.`}
        </p>
        {isOpen ? null : (
          <button type="button" className="btn" onClick={() => setOpen(true)}>
            Show the repair
          </button>
        )}
      </div>
      {isOpen ? (
        <>
          <div className="before-after">
            <figure>
              <figcaption>Before</figcaption>
              <MiniPlan region={region} proposal={before} />
            </figure>
            <figure>
              <figcaption>After, on the plan too</figcaption>
              <MiniPlan region={region} proposal={after} />
            </figure>
          </div>
          <ul className="reasons">
            {repair.deeds.map(deed => (
              <li key={JSON.stringify(deed)}>
                <b aria-hidden="true">·</b>
                <span>{deedWords(deed, print)}</span>
              </li>
            ))}
          </ul>
          {left ? <p className="note check">Still to be seen to: {left}</p> : null}
          <div className="acts-row">
            <button
              type="button"
              className="btn main"
              disabled={isOld}
              onClick={() => {
                leave()
                applyEdit(session, 'repair of the pours', () => ({
                  ok: true,
                  value: repair.site,
                  findings: repair.findings,
                  made: [],
                }))
              }}
            >
              Accept the repair
            </button>
            <button type="button" className="btn" onClick={leave}>
              Leave it
            </button>
          </div>
        </>
      ) : null}
    </article>
  )
}
