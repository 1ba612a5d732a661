import { useMemo } from 'react'
import { type CsvTable, csvTables } from '../../core/reports/csvTables'
import { entityNames } from '../../core/reports/nameEntities'
import { planSheetData } from '../../core/reports/planSheetData'
import { usePlan } from '../app/session'
import { wholePlan } from '../sheets/wholePlan'
import type { LivePlan } from '../store/livePlan'
import { CopyRow } from './CopyRow'
import { FigureRow } from './FigureRow'
import { figureFrom } from './figureFrom'
import { ledgerGroups } from './ledgerGroups'
import { ledgerText } from './ledgerText'
import { MaterialsForm } from './materials/MaterialsForm'
import { Problems } from './Problems'
import { BidForm } from './prices/BidForm'
import { PriceListForm } from './prices/PriceListForm'
import { UnitsSwitch } from './UnitsSwitch'

/** Everything an estimator takes off the plan, each figure open to its working and to what it was measured on. */
export function NumbersPage({ live }: { readonly live: LivePlan }) {
  const { quantities, pours, isOld, isWhole } = usePlan(state => ({
    quantities: state.parts.quantities,
    pours: state.parts.pours,
    isOld: state.revs.quantities !== state.rev,
    isWhole: !state.isRenewing,
  }))
  const { site } = live
  const names = useMemo(() => entityNames(site), [site])
  const groups = useMemo(
    () => (quantities && pours ? ledgerGroups(site, pours, quantities) : null),
    [site, pours, quantities],
  )
  const plan = usePlan(state => (isWhole ? wholePlanOf(state) : null))
  if (!groups)
    return (
      <>
        <header>
          <h2>Ledger</h2>
        </header>
        <p className="note">Working</p>
      </>
    )
  const numberOf = (id: string) => pours?.find(pour => pour.id === id)?.number
  const usable = isOld ? null : plan
  return (
    <>
      <header>
        <h2>Ledger</h2>
        <UnitsSwitch />
      </header>
      {isOld ? <p className="note">Being renewed</p> : null}
      <CopyRow
        choices={[
          {
            words: 'Copy as text',
            make: isOld ? null : () => ledgerText(site.name, groups, names, site.units),
          },
          ...(site.prices || site.bid
            ? [{ words: 'Copy the bid as CSV', make: usable && (() => tableText(usable, 'bid')) }]
            : []),
          {
            words: 'Copy as CSV',
            make: usable && (() => tableText(usable, 'quantities')),
          },
        ]}
      />
      <PriceListForm site={site} quantities={quantities ?? []} />
      <BidForm site={site} quantities={quantities ?? []} />
      <MaterialsForm site={site} />
      {groups.map(({ key, title, rows }) => (
        <section key={key} aria-label={title}>
          <h3>{title}</h3>
          {rows.map(q => (
            <FigureRow
              key={q.id}
              names={names}
              units={site.units}
              quantity={q}
              from={figureFrom(q, site, names, numberOf)}
              isWaiting={isOld}
            />
          ))}
        </section>
      ))}
      {groups.length === 0 ? <p className="note">No slab is drawn yet.</p> : null}
      <Problems />
    </>
  )
}

const tableText = (plan: Parameters<typeof planSheetData>[0], table: CsvTable['name']): string =>
  csvTables(planSheetData(plan)).find(({ name }) => name === table)?.text ?? ''

let last: ReturnType<typeof wholePlan> = null

/** The same object while its parts are the same. */
const wholePlanOf: typeof wholePlan = state => {
  const plan = wholePlan(state)
  if (plan && last && (Object.keys(plan) as (keyof typeof plan)[]).every(key => Object.is(plan[key], last?.[key])))
    return last
  last = plan
  return plan
}
